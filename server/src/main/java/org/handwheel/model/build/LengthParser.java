package org.handwheel.model.build;

import java.util.List;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.LetLineContext;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;
import org.jspecify.annotations.Nullable;

/** Reads a single length in the language's spelling: {@code 1-3/8 in}, {@code 25.4 + 10 thou}. */
public final class LengthParser {
  private LengthParser() {}

  /** A length, or what is wrong with the text. */
  public sealed interface Result {}

  /** The length meant. */
  public record Parsed(Length length) implements Result {}

  /**
   * No length.
   *
   * @param rule the rule broken, such as {@code no-units}
   */
  public record Refused(String rule, String problem) implements Result {}

  /**
   * Reads a length.
   *
   * @param bareUnit the unit of bare numbers; without it they are refused with {@code no-units}
   */
  public static Result parse(String text, @Nullable LengthUnit bareUnit) {
    if (text.isBlank() || text.chars().anyMatch(c -> c < ' ' || c == '\\' || c == '#')) {
      return new Refused("bad-value", "this is not a length");
    }
    SyntaxTree tree = SyntaxTree.parse("", "let it = " + text);
    Section section = tree.sections().get(tree.sections().size() - 1);
    if (!section.problems().isEmpty()) {
      return refused(section.problems());
    }
    for (ContentContext line : section.lines()) {
      if (line.statement() instanceof LetLineContext let) {
        Problems problems = new Problems();
        Values values = new Values(problems, new NameTable(problems));
        if (bareUnit != null) {
          values.setUnits(bareUnit);
        }
        Length length = values.length(section, let.expr());
        return length == null ? refused(problems.findings()) : new Parsed(length);
      }
    }
    return new Refused("bad-value", "this is not a length");
  }

  private static Refused refused(List<Finding> findings) {
    return findings.isEmpty()
        ? new Refused("bad-value", "this is not a length")
        : new Refused(findings.get(0).rule(), findings.get(0).message());
  }
}
