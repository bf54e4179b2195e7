package org.handwheel.work;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import org.handwheel.model.Part;
import org.handwheel.model.Part.DimensionSpec;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.model.Stock;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.jspecify.annotations.Nullable;

/**
 * The sizes the drawing asks for, with limits for each, and the size a cut should aim at.
 *
 * <p>A size without a tolerance of its own takes the general tolerance, else the shop's limit for
 * such sizes. The aim is the middle of the limits: there both errors, too much and too little, are
 * equally far away.
 */
public final class Drawing {
  private final Map<PartDimension, Demand> demands;
  private final Set<PartDimension> suspects;

  /**
   * One size of the drawing.
   *
   * @param nominal as written
   * @param limits what it may be
   * @param aim what to make it
   * @param source what sets the limits
   */
  public record Demand(
      PartDimension dimension,
      Length nominal,
      LengthRange limits,
      Length aim,
      DrawnLimits.Source source,
      Origin origin) {}

  private Drawing(Map<PartDimension, Demand> demands, Set<PartDimension> suspects) {
    this.demands = Map.copyOf(demands);
    this.suspects = Set.copyOf(suspects);
  }

  /** What the plan's part asks for; sizes that look like slips of unit are left out. */
  static Drawing of(Plan plan, StandardTables tables) {
    Map<PartDimension, Demand> demands = new EnumMap<>(PartDimension.class);
    Part part = plan.part();
    if (part == null) {
      return new Drawing(demands, Set.of());
    }
    Set<PartDimension> suspects = suspects(part, plan.stock());
    for (DimensionSpec spec : part.dimensions().values()) {
      if (!suspects.contains(spec.dimension())) {
        DrawnLimits found = DrawnLimits.of(spec, part, plan.shop().limits(), tables);
        LengthRange limits = found.limits();
        demands.put(
            spec.dimension(),
            new Demand(
                spec.dimension(),
                spec.nominal(),
                limits,
                limits.middle(),
                found.source(),
                spec.origin()));
      }
    }
    return new Drawing(demands, suspects);
  }

  /**
   * Sizes of the part that are about 25.4 times the stock's, or a 25.4th of it: a slip between
   * millimetres and inches.
   */
  public static Set<PartDimension> suspects(Part part, @Nullable Stock stock) {
    Set<PartDimension> suspects = EnumSet.noneOf(PartDimension.class);
    if (stock == null) {
      return suspects;
    }
    for (DimensionSpec spec : part.dimensions().values()) {
      Length size = stock.sizes().get(spec.dimension());
      if (size != null && isSlip(spec.nominal(), size)) {
        suspects.add(spec.dimension());
      }
    }
    return suspects;
  }

  /** Whether one is 12 to 40 times the other: about 25.4 with any usual allowance. */
  public static boolean isSlip(Length a, Length b) {
    Length large = Length.max(a, b);
    Length small = Length.min(a, b);
    return large.isMoreThan(small.times(12)) && large.isLessThan(small.times(40));
  }

  /**
   * Whether a size of the part looks like a slip of unit, so that nothing is worked out with it.
   */
  boolean isSuspect(PartDimension dimension) {
    return suspects.contains(dimension);
  }

  public @Nullable Demand demand(PartDimension dimension) {
    return demands.get(dimension);
  }

  public Iterable<Demand> demands() {
    return demands.values();
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Drawing drawing
        && demands.equals(drawing.demands)
        && suspects.equals(drawing.suspects);
  }

  @Override
  public int hashCode() {
    return 31 * demands.hashCode() + suspects.hashCode();
  }
}
