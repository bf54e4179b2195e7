package org.handwheel.shop.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.handwheel.units.Length;
import org.junit.jupiter.api.Test;

class BarCuttingTests {
  @Property
  void asManyPiecesFitAndNotOneMore(
      @ForAll @LongRange(min = 0, max = 3_000_000_000_000L) long bar,
      @ForAll @LongRange(min = 1_000_000_000L, max = 500_000_000_000L) long piece,
      @ForAll @LongRange(min = 0, max = 4_000_000_000L) long kerf) {
    Length stock = new Length(bar);
    Length length = new Length(piece);
    Length cut = new Length(kerf);
    long pieces = BarCutting.pieces(stock, length, cut);
    if (pieces > 0) {
      assertThat(BarCutting.barFor(pieces, length, cut)).isLessThanOrEqualTo(stock);
      assertThat(BarCutting.leftWithOneCutLess(stock, length, cut))
          .isEqualTo(stock.minus(BarCutting.barFor(pieces, length, cut)));
    }
    assertThat(BarCutting.barFor(pieces + 1, length, cut)).isGreaterThan(stock);
    assertThat(BarCutting.leftWhenLastIsCut(stock, length, cut))
        .isGreaterThanOrEqualTo(Length.ZERO);
  }

  @Test
  void refusesImpossibleBars() {
    assertThatThrownBy(() -> BarCutting.pieces(Length.mm("100"), Length.ZERO, Length.mm("1")))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> BarCutting.barFor(0, Length.mm("10"), Length.mm("1")))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Geometry: a round bar is pi/4 of the square one. */
  @Test
  void aRoundBarIsLighterThanTheSquareByPiOverFour() {
    Length side = Length.mm("30");
    Length length = Length.mm("200");
    assertThat(StockMass.round(side, length, 7850) / StockMass.block(length, side, side, 7850))
        .isCloseTo(Math.PI / 4, within(1e-12));
  }
}
