package org.handwheel.shop.drill;

import java.util.List;
import java.util.Optional;
import org.handwheel.shop.table.Provenance;
import org.handwheel.shop.table.Row;
import org.handwheel.shop.table.Table;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;

/** Feeds of twist drills, deep holes and pecking. */
public final class Drilling {
  private final List<FeedStep> feeds;
  private final List<JobberStep> jobbers;

  private Drilling(List<FeedStep> feeds, List<JobberStep> jobbers) {
    this.feeds = List.copyOf(feeds);
    this.jobbers = List.copyOf(jobbers);
  }

  /** Reads the tables kept beside this class. */
  public static Drilling load() {
    return new Drilling(
        Table.read(Drilling.class, "drill-feeds.csv").map(FeedStep::of),
        Table.read(Drilling.class, "jobber-lengths.csv").map(JobberStep::of));
  }

  /**
   * The usual feed per turn of the spindle for a drill of this diameter, in ordinary materials.
   *
   * <p>Common practice; nothing above 1-1/2 in (38.1 mm) or for a diameter not above zero.
   */
  public Optional<FeedPerTurn> feedPerTurn(Length diameter) {
    return feeds.stream()
        .filter(step -> step.diameters.contains(diameter))
        .filter(step -> diameter.isMoreThan(step.diameters.low()))
        .findFirst()
        .map(step -> new FeedPerTurn(step.feed, step.provenance));
  }

  /**
   * The length over all of a jobber drill, the usual straight-shank series (DIN 338); nothing below
   * 1 mm or above 16 mm.
   */
  public Optional<Length> jobberLength(Length diameter) {
    return jobbers.stream()
        .filter(step -> step.diameters.contains(diameter))
        .filter(step -> diameter.isMoreThan(step.diameters.low()))
        .findFirst()
        .map(step -> step.length);
  }

  /**
   * The share of the drilling speed to keep in a deep hole.
   *
   * <p>A tenth less from 3 diameters, a fifth from 4, three tenths from 5, and from 6 diameters two
   * fifths (the cautious end of the 35 to 40 per cent printed). Source: a drilling guide, read at
   * https://studylib.net/doc/18232362/metal-drilling-reference-guide.
   */
  public static double deepHoleSpeedFactor(Length depth, Length diameter) {
    return switch (wholeDiameters(depth, diameter)) {
      case 0, 1, 2 -> 1;
      case 3 -> 0.9;
      case 4 -> 0.8;
      case 5 -> 0.7;
      default -> 0.6;
    };
  }

  /** The share of the feed to keep in a deep hole; source as for the speed. */
  public static double deepHoleFeedFactor(Length depth, Length diameter) {
    return switch (wholeDiameters(depth, diameter)) {
      case 0, 1, 2 -> 1;
      case 3, 4 -> 0.9;
      default -> 0.8;
    };
  }

  private static int wholeDiameters(Length depth, Length diameter) {
    if (!diameter.isPositive() || depth.isNegative()) {
      throw new IllegalArgumentException("a hole has a diameter and a depth");
    }
    return depth.over(diameter).intValue();
  }

  /**
   * How many pecks a hole takes: one where it is not deeper than three diameters, else one for each
   * diameter begun.
   *
   * <p>Common practice; the limit of three diameters as in {@link #deepHoleSpeedFactor}.
   */
  public static long pecks(Length depth, Length diameter) {
    return depth.isMoreThan(diameter.times(3)) ? depth.stepsOf(diameter) : 1;
  }

  /**
   * The usual feed of a drill.
   *
   * @param perTurn advance for one turn of the spindle
   * @param provenance where it comes from
   */
  public record FeedPerTurn(LengthRange perTurn, Provenance provenance) {}

  private record JobberStep(LengthRange diameters, Length length) {
    static JobberStep of(Row row) {
      return new JobberStep(
          new LengthRange(row.length("over", LengthUnit.MM), row.length("to", LengthUnit.MM)),
          row.length("length", LengthUnit.MM));
    }
  }

  private record FeedStep(LengthRange diameters, LengthRange feed, Provenance provenance) {
    static FeedStep of(Row row) {
      return new FeedStep(
          inches(row, "over_in", "to_in"), inches(row, "least_in", "most_in"), row.provenance());
    }

    private static LengthRange inches(Row row, String low, String high) {
      return new LengthRange(row.length(low, LengthUnit.IN), row.length(high, LengthUnit.IN));
    }
  }
}
