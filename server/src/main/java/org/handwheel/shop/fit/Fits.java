package org.handwheel.shop.fit;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.handwheel.shop.table.Provenance;
import org.handwheel.shop.table.Row;
import org.handwheel.shop.table.Table;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;

/**
 * ISO 286 limits and fits for nominal sizes over 0 to 315 mm.
 *
 * <p>Holes D E F G H JS K M N P and shafts d e f g h js k m n p r s in grades 5 to 11, and H, h, JS
 * and js to 14. The fundamental deviation is taken from the standard's table, the other limit lies
 * one standard tolerance away; JS and js lie evenly about zero, an odd tolerance exactly halved
 * (the 1988 edition rounds those of grades 7 to 11 to whole micrometres).
 */
public final class Fits {
  private final StandardTolerances tolerances;
  private final List<DeviationRow> deviations;
  private final Map<Integer, SizeSteps> corrections;

  private Fits(
      StandardTolerances tolerances,
      List<DeviationRow> deviations,
      Map<Integer, SizeSteps> corrections) {
    this.tolerances = tolerances;
    this.deviations = List.copyOf(deviations);
    this.corrections = Map.copyOf(corrections);
  }

  /** Reads the tables kept beside this class. */
  public static Fits load() {
    Map<Integer, SizeSteps> corrections = new HashMap<>();
    Table.read(Fits.class, "hole-corrections.csv")
        .rows()
        .forEach(row -> corrections.put(row.whole("grade"), SizeSteps.read(row, "3")));
    return new Fits(
        StandardTolerances.load(),
        Table.read(Fits.class, "fundamental-deviations.csv").map(DeviationRow::read),
        corrections);
  }

  /** The standard tolerances themselves. */
  public StandardTolerances tolerances() {
    return tolerances;
  }

  /**
   * The limits of size.
   *
   * @param nominal over 0 to 315 mm
   * @param code a tolerance class such as {@code H7} or {@code g6}; capital and small letters
   *     differ
   * @return nothing for a class or a size the tables do not hold
   */
  public Optional<LengthRange> limits(Length nominal, String code) {
    return deviations(nominal, code).map(range -> range.plus(nominal));
  }

  /** The limit deviations from the nominal size: EI to ES, or ei to es. */
  public Optional<LengthRange> deviations(Length nominal, String code) {
    return ToleranceClass.parse(code).flatMap(wanted -> deviations(nominal, wanted));
  }

  private Optional<LengthRange> deviations(Length nominal, ToleranceClass wanted) {
    Optional<Length> width = tolerances.tolerance(wanted.grade(), nominal);
    if (width.isEmpty()) {
      return Optional.empty();
    }
    Length tolerance = width.get();
    if (wanted.isSymmetrical()) {
      return Optional.of(LengthRange.around(Length.ZERO, tolerance.half()));
    }
    return row(wanted)
        .flatMap(
            row -> limit(row, wanted.grade(), nominal).map(limit -> row.range(limit, tolerance)));
  }

  private Optional<Length> limit(DeviationRow row, int grade, Length nominal) {
    Optional<Length> tabled = row.steps.at(nominal);
    if (!row.corrected) {
      return tabled;
    }
    Optional<Length> correction =
        Optional.ofNullable(corrections.get(grade)).flatMap(steps -> steps.at(nominal));
    return tabled.flatMap(limit -> correction.map(limit::plus));
  }

  private Optional<DeviationRow> row(ToleranceClass wanted) {
    return deviations.stream().filter(row -> row.holds(wanted)).findFirst();
  }

  /** A hole and a shaft together; nothing unless the first is a hole and the second a shaft. */
  public Optional<Fit> fit(Length nominal, String hole, String shaft) {
    boolean pair =
        ToleranceClass.parse(hole).filter(ToleranceClass::isHole).isPresent()
            && ToleranceClass.parse(shaft).filter(code -> !code.isHole()).isPresent();
    return pair
        ? limits(nominal, hole)
            .flatMap(bore -> limits(nominal, shaft).map(pin -> new Fit(bore, pin)))
        : Optional.empty();
  }

  /** Where the fundamental deviation of a class comes from. */
  public Optional<Provenance> provenance(String code) {
    return ToleranceClass.parse(code).flatMap(this::row).map(row -> row.provenance);
  }

  private record DeviationRow(
      String letters,
      int from,
      int to,
      boolean upper,
      boolean corrected,
      SizeSteps steps,
      Provenance provenance) {
    static DeviationRow read(Row row) {
      return new DeviationRow(
          row.text("letter"),
          row.whole("from"),
          row.whole("to"),
          row.text("end").equals("upper"),
          row.text("delta").equals("yes"),
          SizeSteps.read(row, "3"),
          row.provenance());
    }

    boolean holds(ToleranceClass wanted) {
      return letters.equals(wanted.letters()) && from <= wanted.grade() && wanted.grade() <= to;
    }

    LengthRange range(Length limit, Length tolerance) {
      return upper
          ? new LengthRange(limit.minus(tolerance), limit)
          : new LengthRange(limit, limit.plus(tolerance));
    }
  }
}
