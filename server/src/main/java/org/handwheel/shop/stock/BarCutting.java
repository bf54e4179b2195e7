package org.handwheel.shop.stock;

import org.handwheel.units.Length;

/** Pieces sawn from one bar, exactly. */
public final class BarCutting {
  private BarCutting() {}

  /**
   * How many pieces a bar gives when the last is what remains: floor((bar + kerf)/(piece + kerf)).
   *
   * @param bar length of the bar, not negative
   * @param piece length to saw, over zero
   * @param kerf width of the cut, not negative
   */
  public static long pieces(Length bar, Length piece, Length kerf) {
    check(bar, piece, kerf);
    return Math.floorDiv(bar.plus(kerf).picometres(), piece.plus(kerf).picometres());
  }

  /** What is left of the bar when the last piece is cut off too; never below zero. */
  public static Length leftWhenLastIsCut(Length bar, Length piece, Length kerf) {
    long pieces = pieces(bar, piece, kerf);
    return Length.max(Length.ZERO, bar.minus(piece.plus(kerf).times(pieces)));
  }

  /** What is left when the last piece is not parted from it: one cut less. */
  public static Length leftWithOneCutLess(Length bar, Length piece, Length kerf) {
    long pieces = pieces(bar, piece, kerf);
    Length cuts = kerf.times(Math.max(0, pieces - 1));
    return bar.minus(piece.times(pieces)).minus(cuts);
  }

  /** The bar so many pieces need: each piece and a cut between every two. */
  public static Length barFor(long pieces, Length piece, Length kerf) {
    if (pieces < 1) {
      throw new IllegalArgumentException("a cut list has at least one piece");
    }
    check(Length.ZERO, piece, kerf);
    return piece.times(pieces).plus(kerf.times(pieces - 1));
  }

  private static void check(Length bar, Length piece, Length kerf) {
    if (bar.isNegative() || !piece.isPositive() || kerf.isNegative()) {
      throw new IllegalArgumentException("a bar and a kerf are not negative, a piece is over zero");
    }
  }
}
