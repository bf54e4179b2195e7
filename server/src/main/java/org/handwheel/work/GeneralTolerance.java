package org.handwheel.work;

import java.util.List;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/** ISO 2768-1 linear sizes, as far as the block's three sizes need it. */
final class GeneralTolerance {
  /** Upper ends of the ranges in millimetres, each inclusive; the first starts above 0.5 mm. */
  private static final List<Integer> UP_TO = List.of(3, 6, 30, 120, 400, 1000, 2000);

  private static final List<String> FINE =
      List.of("0.05", "0.05", "0.1", "0.15", "0.2", "0.3", "0.5");
  private static final List<String> MEDIUM =
      List.of("0.1", "0.1", "0.2", "0.3", "0.5", "0.8", "1.2");
  private static final List<String> COARSE = List.of("0.2", "0.3", "0.5", "0.8", "1.2", "2", "3");

  private GeneralTolerance() {}

  /**
   * The plus-or-minus deviation, ISO 2768-1 table 1.
   *
   * @param grade f, m or c
   * @return nothing outside 0.5 to 2000 mm or for another grade
   */
  static @Nullable Length linear(Length nominal, String grade) {
    List<String> column =
        switch (grade) {
          case "f" -> FINE;
          case "m" -> MEDIUM;
          case "c" -> COARSE;
          default -> List.of();
        };
    if (column.isEmpty() || nominal.isLessThan(Length.mm("0.5"))) {
      return null;
    }
    for (int i = 0; i < UP_TO.size(); i++) {
      if (!nominal.isMoreThan(Length.mm(Integer.toString(UP_TO.get(i))))) {
        return Length.mm(column.get(i));
      }
    }
    return null;
  }
}
