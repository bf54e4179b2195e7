package org.handwheel.syntax;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.syntax.Expectations.Expected;

/** The grammar's rules and tokens in the user's words; no message shows a token's name. */
public final class Vocabulary {
  private static final Map<Integer, String> RULES =
      Map.ofEntries(
          Map.entry(HandwheelParser.RULE_face, "a face (left, right, front, back, top, bottom)"),
          Map.entry(HandwheelParser.RULE_faces, "a face (left, right, front, back, top, bottom)"),
          Map.entry(HandwheelParser.RULE_faceOrDatum, "a face or a datum letter"),
          Map.entry(HandwheelParser.RULE_place, "a place (operator-left, operator-right, ...)"),
          Map.entry(
              HandwheelParser.RULE_operatorPlace, "a place (operator-left, operator-right, ...)"),
          Map.entry(HandwheelParser.RULE_side, "a face or a place"),
          Map.entry(HandwheelParser.RULE_axis, "an axis (x, y, z)"),
          Map.entry(HandwheelParser.RULE_dimension, "length, width or height"),
          Map.entry(HandwheelParser.RULE_corner, "a corner (left front, ...) or centre"),
          Map.entry(HandwheelParser.RULE_point, "a position such as (24, 16)"),
          Map.entry(HandwheelParser.RULE_lengthValue, "a length"),
          Map.entry(HandwheelParser.RULE_nominal, "a size"),
          Map.entry(HandwheelParser.RULE_sizeTarget, "a size, or length, width or height"),
          Map.entry(HandwheelParser.RULE_angleValue, "an angle"),
          Map.entry(HandwheelParser.RULE_speedValue, "a speed"),
          Map.entry(HandwheelParser.RULE_feedValue, "a feed"),
          Map.entry(HandwheelParser.RULE_roughness, "a roughness"),
          Map.entry(HandwheelParser.RULE_wholeNumber, "a whole number"),
          Map.entry(HandwheelParser.RULE_errorOver, "an error over a length (0.02 over 100)"),
          Map.entry(HandwheelParser.RULE_text, "a text in quotes"),
          Map.entry(HandwheelParser.RULE_title, "a title in quotes"),
          Map.entry(HandwheelParser.RULE_path, "a file name in quotes"),
          Map.entry(HandwheelParser.RULE_value, "a value"),
          Map.entry(HandwheelParser.RULE_expr, "a value"),
          Map.entry(HandwheelParser.RULE_factor, "a value"),
          Map.entry(HandwheelParser.RULE_divisor, "a number to divide by"),
          Map.entry(HandwheelParser.RULE_quantity, "a number"),
          Map.entry(HandwheelParser.RULE_number, "a number"),
          Map.entry(HandwheelParser.RULE_unit, "a unit"),
          Map.entry(HandwheelParser.RULE_lengthUnit, "a unit (mm, in, thou, ...)"),
          Map.entry(HandwheelParser.RULE_sizeTolerance, "a tolerance (+-0.05 or +0/-0.05)"),
          Map.entry(HandwheelParser.RULE_plusMinus, "a tolerance (+-0.05)"),
          Map.entry(HandwheelParser.RULE_fit, "a fit (H7)"),
          Map.entry(HandwheelParser.RULE_thread, "a thread (M6, UNC 1/4-20, BA 2)"),
          Map.entry(HandwheelParser.RULE_drillSize, "a drill size"),
          Map.entry(HandwheelParser.RULE_ownKind, "what it is (machine, vise, cutter, ...)"),
          Map.entry(HandwheelParser.RULE_viseRef, "the name of a vise"),
          Map.entry(HandwheelParser.RULE_parallelsRef, "the name of a set of parallels"),
          Map.entry(HandwheelParser.RULE_packingRef, "the name of a packing piece or parallels"),
          Map.entry(HandwheelParser.RULE_clampRef, "the name of a clamp"),
          Map.entry(HandwheelParser.RULE_cutterRef, "the name of a cutter"),
          Map.entry(HandwheelParser.RULE_toolRef, "the name of a tool"),
          Map.entry(HandwheelParser.RULE_instrumentRef, "the name of an instrument"),
          Map.entry(HandwheelParser.RULE_finderRef, "the name of an edge finder"),
          Map.entry(HandwheelParser.RULE_machineRef, "the name of a machine"),
          Map.entry(HandwheelParser.RULE_materialRef, "the name of a material"),
          Map.entry(HandwheelParser.RULE_holeRef, "the name of a hole or pattern"),
          Map.entry(HandwheelParser.RULE_furtherHoleRef, "the name of a hole"),
          Map.entry(HandwheelParser.RULE_checkRef, "what to check"),
          Map.entry(HandwheelParser.RULE_setupRef, "the name of a setup"),
          Map.entry(HandwheelParser.RULE_featureTarget, "a face or a feature's name"),
          Map.entry(HandwheelParser.RULE_zeroAt, "edge, touch, centre or a face"),
          Map.entry(HandwheelParser.RULE_wipeTarget, "a face, jaws, parallels or table"),
          Map.entry(HandwheelParser.RULE_rest, "table, angle-plate, v-block or subplate"),
          Map.entry(HandwheelParser.RULE_holeClause, "what the hole is (dia, at, depth, ...)"),
          Map.entry(HandwheelParser.RULE_patternClause, "how it repeats (count, about, at, by)"),
          Map.entry(HandwheelParser.RULE_holdClause, "how it is held (up, fixed, on, at, ...)"),
          Map.entry(HandwheelParser.RULE_seatClause, "how it is seated (tapped, upright, ...)"),
          Map.entry(HandwheelParser.RULE_toolClause, "`speed` or `feed`"),
          Map.entry(
              HandwheelParser.RULE_cutClause, "how to cut (at, leaving, pass, travel, speed, ...)"),
          Map.entry(
              HandwheelParser.RULE_holeCutClause, "how to cut (with, depth, peck, speed, feed)"),
          Map.entry(
              HandwheelParser.RULE_featureClause,
              "what it is or how to cut it (in, at, with, ...)"),
          Map.entry(HandwheelParser.RULE_property, "the name of a property"),
          Map.entry(HandwheelParser.RULE_name, "a name"));

  /** What may follow any number; in a message these would drown what was forgotten. */
  private static final Set<Integer> OPERATORS =
      Set.of(HandwheelLexer.PLUS, HandwheelLexer.MINUS, HandwheelLexer.STAR, HandwheelLexer.SLASH);

  private Vocabulary() {}

  /** A kind of token in words: a keyword in quotes, else what it is. */
  public static String token(int type) {
    return switch (type) {
      case Token.EOF, HandwheelLexer.NL -> "the end of the line";
      case HandwheelLexer.ID -> "a name";
      case HandwheelLexer.STRING -> "a text in quotes";
      case HandwheelLexer.INT -> "a whole number";
      case HandwheelLexer.DEC, HandwheelLexer.FRACTION, HandwheelLexer.MIXED -> "a number";
      case HandwheelLexer.PM -> "`+-`";
      case HandwheelLexer.NUMBER_DRILL, HandwheelLexer.LETTER_DRILL -> "a drill size";
      case HandwheelLexer.THREAD_M, HandwheelLexer.THREAD_NAMED -> "a thread";
      case HandwheelLexer.RATE_UNIT, HandwheelLexer.POWER_UNIT -> "a unit";
      case HandwheelLexer.IN -> "`in`";
      case HandwheelLexer.RA -> "`Ra`";
      case HandwheelLexer.DIA -> "`dia`";
      case HandwheelLexer.X -> "`x`";
      case HandwheelLexer.MINUS -> "`-`";
      case HandwheelLexer.CENTRE -> "`centre`";
      case HandwheelLexer.TENTHS -> "`tenths`";
      case HandwheelLexer.UM -> "`um`";
      case HandwheelLexer.UIN -> "`uin`";
      case HandwheelLexer.DEG -> "`deg`";
      default -> {
        String literal = HandwheelLexer.VOCABULARY.getLiteralName(type);
        yield literal == null
            ? "a word"
            : "`" + literal.substring(1, literal.length() - 1).toLowerCase(Locale.ROOT) + "`";
      }
    };
  }

  /** The keyword a token kind stands for, or nothing if it is not a word. */
  public static String keyword(int type) {
    String words = token(type);
    return words.startsWith("`") && Character.isLetter(words.charAt(1))
        ? words.substring(1, words.length() - 1)
        : "";
  }

  /**
   * What may come next, each once: `to`, a length, a face. Where anything else may come, commas and
   * colons are left out, and operators and units in any case but the last.
   */
  public static List<String> phrases(Expectations expectations) {
    Set<String> words = new LinkedHashSet<>();
    Set<String> marks = new LinkedHashSet<>();
    Set<String> operators = new LinkedHashSet<>();
    for (Expected expected : expectations.expected()) {
      int type = expected.tokenType();
      boolean operator =
          (OPERATORS.contains(type) && expected.begun().isEmpty())
              || expected.begun().contains(HandwheelParser.RULE_unit);
      boolean mark = type == HandwheelLexer.COMMA || type == HandwheelLexer.COLON;
      (operator ? operators : mark ? marks : words).add(phrase(expected));
    }
    if (expectations.mayEnd()) {
      words.add("the end of the line");
    }
    return List.copyOf(!words.isEmpty() ? words : !marks.isEmpty() ? marks : operators);
  }

  private static String phrase(Expected expected) {
    for (int rule : expected.begun()) {
      String phrase = RULES.get(rule);
      if (phrase != null) {
        return phrase;
      }
    }
    return token(expected.tokenType());
  }
}
