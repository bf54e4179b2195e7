package org.handwheel.work.chain;

import java.util.List;
import org.handwheel.model.PartDimension;
import org.handwheel.shop.fit.SizeChain;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.DrawnLimits.Source;

/**
 * The sizes of the drawing that lie between two of its points.
 *
 * @param along the direction it runs in
 * @param links the sizes, each once; empty between a point and itself
 */
public record DrawnChain(PartDimension along, List<Link> links) {
  public DrawnChain {
    links = List.copyOf(links);
  }

  /**
   * A size of the drawing.
   *
   * @param words what it is: {@code length}, {@code hole shaft from the left}
   * @param nominal as drawn
   * @param limits what it may be
   * @param source what sets the limits
   * @param origin where it is written
   */
  public record Size(
      String words, Length nominal, LengthRange limits, Source source, Origin origin) {}

  /**
   * A size in a chain.
   *
   * @param halves how often half of it counts: 2 for all of it, 1 for a radius, negative going back
   */
  public record Link(Size size, int halves) {
    public Length nominal() {
      return size.nominal().times(halves).half();
    }

    /** What it adds to the chain. */
    public LengthRange limits() {
      Length one = size.limits().low().times(halves).half();
      Length other = size.limits().high().times(halves).half();
      return new LengthRange(Length.min(one, other), Length.max(one, other));
    }

    Link reversed() {
      return new Link(size, -halves);
    }
  }

  /** The distance as drawn, zero or more. */
  public Length nominal() {
    return links.stream().map(Link::nominal).reduce(Length.ZERO, Length::plus);
  }

  /** The limits at worst, and by the root of the sum of the squares. */
  public SizeChain sizes() {
    return new SizeChain(
        links.isEmpty()
            ? List.of(LengthRange.exactly(Length.ZERO))
            : links.stream().map(Link::limits).toList());
  }

  /** The same distance the other way. */
  DrawnChain reversed() {
    return new DrawnChain(along, links.stream().map(Link::reversed).toList());
  }
}
