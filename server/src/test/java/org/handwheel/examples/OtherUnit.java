package org.handwheel.examples;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.tree.ParseTree;
import org.antlr.v4.runtime.tree.TerminalNode;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.grammar.HandwheelParser.LengthUnitContext;
import org.handwheel.grammar.HandwheelParser.QuantityContext;
import org.handwheel.grammar.HandwheelParser.RoughnessContext;
import org.handwheel.grammar.HandwheelParser.TermContext;
import org.handwheel.grammar.HandwheelParser.UnitsLineContext;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;

/**
 * Rewrites a plan number by number into the other unit: every length of a file in millimetres is
 * written as an exact fraction of an inch and the reverse, and nothing else changes.
 */
public final class OtherUnit {
  private static final BigFraction MM_IN_AN_INCH = BigFraction.of(127, 5);

  private final SyntaxTree tree;
  private final boolean toInches;
  private final List<Edit> edits = new ArrayList<>();

  private record Edit(int start, int end, String text) {}

  private OtherUnit(SyntaxTree tree, boolean toInches) {
    this.tree = tree;
    this.toInches = toInches;
  }

  public static String rewrite(String text) {
    SyntaxTree tree = SyntaxTree.parse("x.plan", text);
    OtherUnit rewriting = new OtherUnit(tree, text.contains("units mm"));
    for (Section section : tree.sections()) {
      section.lines().forEach(line -> rewriting.visit(section, line));
    }
    StringBuilder changed = new StringBuilder(text);
    rewriting.edits.stream()
        .sorted(Comparator.comparingInt(Edit::start).reversed())
        .forEach(edit -> changed.replace(edit.start, edit.end, edit.text));
    return changed.toString();
  }

  private void visit(Section section, ParseTree node) {
    if (node instanceof RoughnessContext) {
      return;
    }
    if (node instanceof UnitsLineContext units) {
      edit(section, units.lengthUnit(), toInches ? "in" : "mm");
    } else if (node instanceof QuantityContext quantity) {
      if (isLength(quantity)) {
        edit(section, quantity, converted(quantity));
      }
    } else if (!(node instanceof TerminalNode)) {
      for (int i = 0; i < node.getChildCount(); i++) {
        visit(section, node.getChild(i));
      }
    }
  }

  private void edit(Section section, ParserRuleContext node, String text) {
    int base = tree.base(section);
    edits.add(
        new Edit(base + section.origin(node).start(), base + section.origin(node).end(), text));
  }

  /** A bare number is a length unless it multiplies, or is divided by something. */
  private static boolean isLength(QuantityContext quantity) {
    if (quantity.unit() != null) {
      return quantity.unit().lengthUnit() != null;
    }
    ParseTree factor = quantity.getParent();
    return !(factor.getParent() instanceof TermContext term)
        || term.factor().size() + term.divisor().size() == 1;
  }

  private String converted(QuantityContext quantity) {
    BigFraction mm = number(quantity.number().getText()).multiply(unit(quantity));
    BigFraction value = toInches ? mm.divide(MM_IN_AN_INCH) : mm;
    String unit = toInches ? " in" : " mm";
    return value.getDenominator().equals(BigInteger.ONE)
        ? value.getNumerator() + unit
        : value.getNumerator() + "/" + value.getDenominator() + unit;
  }

  private BigFraction unit(QuantityContext quantity) {
    LengthUnitContext written = quantity.unit() == null ? null : quantity.unit().lengthUnit();
    String word = written == null ? toInches ? "mm" : "in" : written.getText();
    return switch (word) {
      case "mm" -> BigFraction.ONE;
      case "um" -> BigFraction.of(1, 1000);
      case "in" -> MM_IN_AN_INCH;
      case "thou" -> MM_IN_AN_INCH.divide(1000);
      case "tenth", "tenths" -> MM_IN_AN_INCH.divide(10_000);
      default -> throw new IllegalArgumentException(word);
    };
  }

  private static BigFraction number(String text) {
    int slash = text.indexOf('/');
    if (slash >= 0) {
      int dash = text.indexOf('-');
      BigFraction part =
          BigFraction.of(
              Integer.parseInt(text.substring(dash + 1, slash)),
              Integer.parseInt(text.substring(slash + 1)));
      return dash < 0 ? part : part.add(Integer.parseInt(text.substring(0, dash)));
    }
    int point = text.indexOf('.');
    BigInteger digits = new BigInteger(text.replace(".", ""));
    int places = point < 0 ? 0 : text.length() - point - 1;
    return BigFraction.of(digits, BigInteger.TEN.pow(places));
  }
}
