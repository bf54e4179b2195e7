package org.handwheel.model.build;

import org.handwheel.grammar.HandwheelParser;
import org.handwheel.grammar.HandwheelParser.StatementContext;

/** Where statements belong, in words. */
final class Places {
  private Places() {}

  /** The sections that may have a statement of this form: "`part`". */
  static String of(StatementContext statement) {
    return switch (statement.getStart().getType()) {
      case HandwheelParser.MACHINE -> "the lines before `part`";
      case HandwheelParser.MATERIAL -> "`part` or `stock`";
      case HandwheelParser.LENGTH,
          HandwheelParser.WIDTH,
          HandwheelParser.HEIGHT,
          HandwheelParser.DATUM,
          HandwheelParser.SQUARE,
          HandwheelParser.PARALLEL,
          HandwheelParser.FLAT,
          HandwheelParser.TOLERANCE,
          HandwheelParser.SURFACE,
          HandwheelParser.BREAK,
          HandwheelParser.HOLE,
          HandwheelParser.PATTERN ->
          "`part`";
      case HandwheelParser.SIZE,
          HandwheelParser.SAWN,
          HandwheelParser.ROLLED,
          HandwheelParser.CAST,
          HandwheelParser.DRAWN,
          HandwheelParser.MILLED,
          HandwheelParser.GROUND,
          HandwheelParser.KERF,
          HandwheelParser.WANDER,
          HandwheelParser.MAKE ->
          "`stock`";
      case HandwheelParser.SLOT,
          HandwheelParser.POCKET,
          HandwheelParser.PROFILE,
          HandwheelParser.STEP,
          HandwheelParser.CHAMFER,
          HandwheelParser.OUTLINE,
          HandwheelParser.CORNER ->
          "`part` or `setup`";
      case HandwheelParser.IN -> "`log`";
      case HandwheelParser.CHECK -> "`inspect`";
      default -> "`setup`";
    };
  }
}
