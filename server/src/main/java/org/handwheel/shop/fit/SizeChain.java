package org.handwheel.shop.fit;

import java.util.List;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;

/**
 * Sizes in a row from face to face, and what they leave between the first face and the last.
 *
 * @param links the sizes with their limits, at least one; those that go back are negative
 */
public record SizeChain(List<LengthRange> links) {
  public SizeChain {
    if (links.isEmpty()) {
      throw new IllegalArgumentException("a chain has at least one size");
    }
    links = List.copyOf(links);
  }

  /** The limits when every size lies at its worst end. */
  public LengthRange worstCase() {
    return new LengthRange(
        links.stream().map(LengthRange::low).reduce(Length.ZERO, Length::plus),
        links.stream().map(LengthRange::high).reduce(Length.ZERO, Length::plus));
  }

  /**
   * The middle give or take the root of the sum of the squares of the half tolerances: likely, not
   * sure, see {@link StackUp#rootSumSquare}.
   */
  public LengthRange likely() {
    return LengthRange.around(
        worstCase().middle(),
        StackUp.rootSumSquare(links.stream().map(LengthRange::spread).toList()));
  }
}
