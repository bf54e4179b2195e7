package org.handwheel.model;

import java.util.Map;
import org.handwheel.units.Length;
import org.handwheel.units.Quantity;

/** The thresholds in force: what the shop sets, else the defaults of {@link Limit}. */
public record Limits(Map<Limit, Quantity> set) {
  public static final Limits DEFAULTS = new Limits(Map.of());

  public Limits {
    set = Map.copyOf(set);
  }

  public Length length(Limit limit) {
    return value(limit).toLength();
  }

  /** A plain number, for thresholds that are no lengths. */
  public double number(Limit limit) {
    return value(limit).value().doubleValue();
  }

  private Quantity value(Limit limit) {
    Quantity own = set.get(limit);
    return own == null ? limit.fallback() : own;
  }
}
