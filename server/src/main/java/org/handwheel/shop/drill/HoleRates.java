package org.handwheel.shop.drill;

import java.util.EnumMap;
import java.util.Map;
import org.handwheel.shop.material.SpeedRange;
import org.handwheel.shop.table.Provenance;
import org.handwheel.shop.table.Row;
import org.handwheel.shop.table.Table;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;

/** Speeds and feeds of reamers, taps, counterbores and the rest, by those of a drill. */
public final class HoleRates {
  /** Tools for holes whose speed goes by that of a drill of the same diameter. */
  public enum Operation {
    SPOT,
    REAM,
    TAP,
    COUNTERBORE,
    COUNTERSINK
  }

  private final Map<Operation, Share> shares;
  private final BoringFeed boring;

  private HoleRates(Map<Operation, Share> shares, BoringFeed boring) {
    this.shares = shares;
    this.boring = boring;
  }

  /** Reads the tables kept beside this class. */
  public static HoleRates load() {
    Map<Operation, Share> shares = new EnumMap<>(Operation.class);
    for (Row row : Table.read(HoleRates.class, "hole-rates.csv").rows()) {
      shares.put(row.parse("operation", Operation::valueOf), Share.of(row));
    }
    for (Operation operation : Operation.values()) {
      if (!shares.containsKey(operation)) {
        throw new IllegalStateException("hole-rates.csv: no line for " + operation);
      }
    }
    Row row = Table.read(HoleRates.class, "boring-feeds.csv").rows().get(0);
    return new HoleRates(
        shares,
        new BoringFeed(
            new LengthRange(row.length("least", LengthUnit.MM), row.length("most", LengthUnit.MM)),
            row.provenance()));
  }

  /** What a tool takes of the drill's speed and feed. */
  public Share share(Operation operation) {
    Share share = shares.get(operation);
    if (share == null) {
      throw new IllegalStateException("no rates for " + operation);
    }
    return share;
  }

  /** The feed of a boring head; its speed is the milling speed of the same edge. */
  public BoringFeed boring() {
    return boring;
  }

  /**
   * A share of the drill's speed and feed.
   *
   * @param speedLeast share of the drilling speed, cautious; over 0
   * @param speedMost the same, brisk
   * @param feedLeast share of the drill's feed, cautious; 0 where the tool sets its own feed, as a
   *     tap does
   * @param feedMost the same, brisk
   * @param provenance where they come from
   */
  public record Share(
      double speedLeast,
      double speedMost,
      double feedLeast,
      double feedMost,
      Provenance provenance) {
    static Share of(Row row) {
      return new Share(
          row.number("speed least"),
          row.number("speed most"),
          row.optional("feed least").map(Double::parseDouble).orElse(0.0),
          row.optional("feed most").map(Double::parseDouble).orElse(0.0),
          row.provenance());
    }

    /** The speeds of the tool, from those of a drill. */
    public SpeedRange of(SpeedRange drilling) {
      return new SpeedRange(drilling.low() * speedLeast, drilling.high() * speedMost);
    }

    /** The middle of the share of the feed. */
    public double feed() {
      return (feedLeast + feedMost) / 2;
    }
  }

  /**
   * The feed of a boring head.
   *
   * @param perTurn advance for one turn of the spindle
   * @param provenance where it comes from
   */
  public record BoringFeed(LengthRange perTurn, Provenance provenance) {}
}
