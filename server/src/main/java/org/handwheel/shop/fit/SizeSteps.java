package org.handwheel.shop.fit;

import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import org.handwheel.shop.table.Row;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;

/**
 * Values of a row by steps of nominal size, each column headed by its upper limit in millimetres.
 */
final class SizeSteps {
  private final NavigableMap<Length, Optional<Length>> byUpperLimit;

  private SizeSteps(NavigableMap<Length, Optional<Length>> byUpperLimit) {
    this.byUpperLimit = byUpperLimit;
  }

  /** Reads the columns from {@code first} on; their values are micrometres. */
  static SizeSteps read(Row row, String first) {
    NavigableMap<Length, Optional<Length>> steps = new TreeMap<>();
    List<String> columns = row.columnsFrom(first);
    for (String column : columns) {
      steps.put(
          Length.mm(column), row.optional(column).map(value -> Length.of(value, LengthUnit.UM)));
    }
    return new SizeSteps(steps);
  }

  /** The value for a nominal size: over the limit before, up to and including its own. */
  Optional<Length> at(Length nominal) {
    if (!nominal.isPositive()) {
      return Optional.empty();
    }
    var step = byUpperLimit.ceilingEntry(nominal);
    return step == null ? Optional.empty() : step.getValue();
  }
}
