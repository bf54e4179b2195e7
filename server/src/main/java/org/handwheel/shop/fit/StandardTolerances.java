package org.handwheel.shop.fit;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.handwheel.shop.table.Table;
import org.handwheel.units.Length;

/**
 * The standard tolerance grades IT5 to IT14 of ISO 286-1 for nominal sizes to 315 mm.
 *
 * <p>The printed table is kept: its rounding differs from the formula (i = 0.45 D^(1/3) + 0.001 D,
 * IT7 = 16 i) by up to 15 per cent in the smallest step.
 */
public final class StandardTolerances {
  private final Map<Integer, SizeSteps> byGrade;

  private StandardTolerances(Map<Integer, SizeSteps> byGrade) {
    this.byGrade = Map.copyOf(byGrade);
  }

  static StandardTolerances load() {
    Map<Integer, SizeSteps> grades = new HashMap<>();
    Table.read(StandardTolerances.class, "it-grades.csv")
        .rows()
        .forEach(row -> grades.put(row.whole("grade"), SizeSteps.read(row, "3")));
    return new StandardTolerances(grades);
  }

  /**
   * The width of the tolerance zone.
   *
   * @param grade 5 to 14; others give nothing
   * @param nominal over 0 to 315 mm; others give nothing
   */
  public Optional<Length> tolerance(int grade, Length nominal) {
    return Optional.ofNullable(byGrade.get(grade)).flatMap(steps -> steps.at(nominal));
  }
}
