package org.handwheel.ide.actions;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.tree.ParseTree;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.grammar.HandwheelParser.BarHeightContext;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.DrillSizeContext;
import org.handwheel.grammar.HandwheelParser.ExprContext;
import org.handwheel.grammar.HandwheelParser.LengthValueContext;
import org.handwheel.grammar.HandwheelParser.LimitToleranceContext;
import org.handwheel.grammar.HandwheelParser.NominalContext;
import org.handwheel.grammar.HandwheelParser.PlusMinusContext;
import org.handwheel.grammar.HandwheelParser.PointContext;
import org.handwheel.grammar.HandwheelParser.QuantityContext;
import org.handwheel.grammar.HandwheelParser.ReadLineContext;
import org.handwheel.grammar.HandwheelParser.SignedContext;
import org.handwheel.grammar.HandwheelParser.SizeTargetContext;
import org.handwheel.grammar.HandwheelParser.SizeToleranceContext;
import org.handwheel.grammar.HandwheelParser.UnitsLineContext;
import org.handwheel.ide.View;
import org.handwheel.ide.actions.Action.Kind;
import org.handwheel.ide.complete.Situation;
import org.handwheel.model.build.LengthParser;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.TextEdit;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;

/** Lengths written in the other unit, only where that is exact in the decimals people write. */
final class UnitRewriting {
  private static final int MOST_MM_PLACES = 6;
  private static final int MOST_INCH_PLACES = 5;

  private final View view;
  private final FileText text;

  UnitRewriting(View view, FileText text) {
    this.view = view;
    this.text = text;
  }

  /** The line's lengths in millimetres or inches, whichever they are not in yet. */
  Optional<List<Action>> line(Section section, ContentContext line) {
    List<QuantityContext> lengths = new ArrayList<>();
    collect(line, lengths);
    if (lengths.isEmpty() || line.statement() instanceof UnitsLineContext) {
      return Optional.empty();
    }
    List<Action> actions = new ArrayList<>();
    for (LengthUnit target : List.of(LengthUnit.MM, LengthUnit.IN)) {
      String title = "Write these lengths in " + Rewritings.unitWords(target);
      List<TextEdit> edits = new ArrayList<>();
      String obstacle = "";
      for (QuantityContext quantity : lengths) {
        if (unit(quantity) == target) {
          continue;
        }
        Origin origin = section.origin(quantity);
        Optional<String> number = exact(origin.text(), unit(quantity), target);
        if (number.isEmpty()) {
          obstacle = noDecimal(origin.text(), target);
          break;
        }
        edits.add(text.replace(origin, number.get() + " " + target.symbol()));
      }
      finish(title, edits, obstacle).ifPresent(actions::add);
    }
    return Optional.of(actions);
  }

  /** The whole plan in the other unit: its {@code units} line and every bare length. */
  List<Action> file(Section section, UnitsLineContext units) {
    LengthUnit target = Situation.units(view) == LengthUnit.MM ? LengthUnit.IN : LengthUnit.MM;
    String title = "Write the whole plan in " + Rewritings.unitWords(target);
    List<TextEdit> edits = new ArrayList<>();
    edits.add(text.replace(section.origin(units.lengthUnit()), target.symbol()));
    String obstacle = "";
    for (Section each : view.tree().sections()) {
      List<QuantityContext> lengths = new ArrayList<>();
      collect(each.tree(), lengths);
      for (QuantityContext quantity : lengths) {
        if (quantity.unit() != null || !obstacle.isEmpty()) {
          continue;
        }
        Origin origin = each.origin(quantity);
        Optional<String> number = exact(origin.text(), unit(quantity), target);
        if (number.isEmpty()) {
          obstacle = noDecimal(origin.text(), target);
        } else {
          edits.add(text.replace(origin, number.get()));
        }
      }
    }
    return finish(title, edits, obstacle).stream().toList();
  }

  /**
   * Edits that write every length of the file as a bare number of millimetres without needless
   * zeros. A length that is no exact decimal keeps its form, and its unit is written behind it.
   */
  List<TextEdit> allInMillimetres() {
    List<TextEdit> edits = new ArrayList<>();
    for (Section section : view.tree().sections()) {
      List<QuantityContext> lengths = new ArrayList<>();
      for (ContentContext line : section.lines()) {
        if (section.isBroken(line)) {
          continue; // where a number in it belongs is a guess
        }
        if (line.statement() instanceof UnitsLineContext units && units.lengthUnit() != null) {
          edits.add(text.replace(section.origin(units.lengthUnit()), LengthUnit.MM.symbol()));
        }
        collect(line, lengths);
      }
      for (QuantityContext quantity : lengths) {
        Origin origin = section.origin(quantity);
        Optional<String> number = exact(origin.text(), unit(quantity), LengthUnit.MM);
        if (number.isPresent()) {
          edits.add(text.replace(origin, number.get()));
        } else if (quantity.unit() == null) {
          edits.add(text.replace(origin, origin.text() + " " + unit(quantity).symbol()));
        }
      }
    }
    return edits;
  }

  private Optional<Action> finish(String title, List<TextEdit> edits, String obstacle) {
    if (!obstacle.isEmpty()) {
      return Optional.of(Action.impossible(title, Kind.REWRITE, obstacle));
    }
    if (edits.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        Trial.keepsMeaning(view, edits)
            ? Action.rewriting(title, Kind.REWRITE, edits)
            : Action.impossible(
                title, Kind.REWRITE, "a number beside these takes its unit from them"));
  }

  private static String noDecimal(String written, LengthUnit target) {
    return written + " is no exact decimal number of " + Rewritings.unitWords(target);
  }

  /** The unit a length counts in, its own or the file's. */
  private LengthUnit unit(QuantityContext quantity) {
    if (quantity.unit() == null) {
      return ofNominal(quantity).map(this::unit).orElseGet(() -> Situation.units(view));
    }
    return switch (quantity.unit().getStart().getType()) {
      case HandwheelParser.MM -> LengthUnit.MM;
      case HandwheelParser.IN -> LengthUnit.IN;
      case HandwheelParser.THOU -> LengthUnit.THOU;
      case HandwheelParser.UM -> LengthUnit.UM;
      case HandwheelParser.UIN -> LengthUnit.UIN;
      default -> LengthUnit.TENTH;
    };
  }

  /** The size that a bare tolerance belongs to and takes its unit from. */
  private static Optional<QuantityContext> ofNominal(QuantityContext quantity) {
    ParserRuleContext at = quantity.getParent();
    while (at instanceof PlusMinusContext
        || at instanceof SignedContext
        || at instanceof SizeToleranceContext) {
      at = at.getParent();
    }
    NominalContext nominal =
        at == quantity.getParent() ? null : at.getRuleContext(NominalContext.class, 0);
    return nominal == null ? Optional.empty() : Optional.ofNullable(nominal.quantity());
  }

  /** All single numbers of a line that are lengths; a number in a sum or product may be none. */
  private static void collect(ParseTree node, List<QuantityContext> lengths) {
    if (node instanceof QuantityContext quantity) {
      if (isLength(quantity)) {
        lengths.add(quantity);
      }
      return;
    }
    for (int i = 0; i < node.getChildCount(); i++) {
      collect(node.getChild(i), lengths);
    }
  }

  private static boolean isLength(QuantityContext quantity) {
    if (quantity.unit() != null && quantity.unit().lengthUnit() != null) {
      return true;
    }
    if (quantity.unit() != null) {
      return false;
    }
    ParserRuleContext at = quantity;
    while (at.getParent() != null && at.getParent().getChildCount() == 1) {
      at = at.getParent();
      if (isLengthPlace(at)) {
        return true;
      }
    }
    ParserRuleContext parent = at.getParent();
    return isLengthPlace(parent)
        && (!(parent instanceof PointContext) || at instanceof ExprContext);
  }

  private static boolean isLengthPlace(ParserRuleContext node) {
    return node instanceof LengthValueContext
        || node instanceof SizeTargetContext
        || node instanceof PointContext
        || node instanceof NominalContext
        || node instanceof PlusMinusContext
        || node instanceof SignedContext
        || node instanceof LimitToleranceContext
        || node instanceof DrillSizeContext
        || node instanceof BarHeightContext
        || node instanceof ReadLineContext;
  }

  /** The number in a unit, if its decimals end where people write them. */
  private static Optional<String> exact(String written, LengthUnit bare, LengthUnit target) {
    LengthParser.Result result = LengthParser.parse(written, bare);
    if (!(result instanceof LengthParser.Parsed parsed)) {
      return Optional.empty();
    }
    Length length = parsed.length();
    int places = target == LengthUnit.MM ? MOST_MM_PLACES : MOST_INCH_PLACES;
    try {
      BigDecimal number =
          BigDecimal.valueOf(length.picometres())
              .divide(BigDecimal.valueOf(target.picometres()), places, RoundingMode.UNNECESSARY)
              .stripTrailingZeros();
      return Optional.of(
          (number.scale() < 0 ? number.setScale(0, RoundingMode.UNNECESSARY) : number)
              .toPlainString());
    } catch (ArithmeticException e) {
      return Optional.empty();
    }
  }
}
