package org.handwheel.shop.fit;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.handwheel.shop.table.Row;
import org.handwheel.shop.table.Table;
import org.handwheel.units.Length;

/**
 * ISO 2768-1:1989 general tolerances, classes f (fine), m (medium), c (coarse) and v (very coarse).
 *
 * <p>Nothing is given for a nominal size below 0.5 mm (the standard wants it beside the size), over
 * 4000 mm, for another class, or where the table has a dash.
 */
public final class GeneralTolerances {
  private final List<Step> linear;
  private final List<Step> radii;
  private final List<Step> angles;

  private GeneralTolerances(List<Step> linear, List<Step> radii, List<Step> angles) {
    this.linear = List.copyOf(linear);
    this.radii = List.copyOf(radii);
    this.angles = List.copyOf(angles);
  }

  /** Reads the tables kept beside this class. */
  public static GeneralTolerances load() {
    return new GeneralTolerances(
        read("general-linear.csv"), read("general-radii.csv"), read("general-angles.csv"));
  }

  private static List<Step> read(String name) {
    return Table.read(GeneralTolerances.class, name).map(Step::of);
  }

  /**
   * The permissible deviation of a linear size, plus or minus.
   *
   * @param nominal 0.5 to 4000 mm
   * @param toleranceClass {@code f}, {@code m}, {@code c} or {@code v}
   */
  public Optional<Length> linear(Length nominal, char toleranceClass) {
    return value(linear, nominal, toleranceClass).map(Length::mm);
  }

  /** The permissible deviation of an external radius or a chamfer height, plus or minus. */
  public Optional<Length> radius(Length nominal, char toleranceClass) {
    return value(radii, nominal, toleranceClass).map(Length::mm);
  }

  /**
   * The permissible deviation of an angle, plus or minus, in minutes of arc.
   *
   * @param shorterLeg the length of the shorter leg of the angle, over 0
   */
  public OptionalInt angleMinutes(Length shorterLeg, char toleranceClass) {
    return value(angles, shorterLeg, toleranceClass).stream()
        .mapToInt(Integer::parseInt)
        .findFirst();
  }

  private static Optional<String> value(List<Step> steps, Length size, char toleranceClass) {
    int index = "fmcv".indexOf(toleranceClass);
    return index < 0
        ? Optional.empty()
        : steps.stream()
            .filter(step -> step.holds(size))
            .findFirst()
            .flatMap(step -> step.values.get(index));
  }

  private record Step(Length over, Length to, List<Optional<String>> values) {
    static Step of(Row row) {
      return new Step(
          Length.mm(row.text("over")),
          Length.mm(row.text("to")),
          row.columnsFrom("f").stream().map(row::optional).toList());
    }

    boolean holds(Length size) {
      boolean above = size.isMoreThan(over) || (over.equals(FIRST) && size.equals(over));
      return above && !size.isMoreThan(to);
    }

    private static final Length FIRST = Length.mm("0.5");
  }
}
