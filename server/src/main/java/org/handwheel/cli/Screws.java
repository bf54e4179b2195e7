package org.handwheel.cli;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Axis;
import org.handwheel.model.Owned.Machine;
import org.handwheel.model.Owned.Screw;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * The screws whose dials are asked for.
 *
 * @param screws in the order of their axes; none if no dial is asked for
 * @param machine whose they are, or nothing if only lead and divisions are known
 */
record Screws(List<Screw> screws, @Nullable Machine machine) {
  private static final BigFraction HALF = BigFraction.of(1, 2);

  static final Screws NONE = new Screws(List.of(), null);

  Screws {
    screws = List.copyOf(screws);
  }

  /** A screw known by its lead and its dial alone. */
  static Screws of(Length lead, BigFraction divisions) {
    return new Screws(
        List.of(new Screw(Axis.X, lead, divisions, Length.ZERO, null, null, null, HALF)), null);
  }

  /**
   * The screws of a machine.
   *
   * @param shop the shop file that owns it; without it, all shop files below the current folder
   * @param axis the only axis wanted
   * @throws UserException if there is no such machine, or no such screw
   */
  static Screws ofMachine(
      String name, @Nullable String shop, @Nullable Axis axis, Surroundings surroundings) {
    Machine machine =
        ShopThings.load(shop, surroundings).find(Machine.class, "machine", name, Machine::screws);
    List<Screw> screws =
        Arrays.stream(Axis.values())
            .filter(candidate -> axis == null || candidate == axis)
            .flatMap(candidate -> Optional.ofNullable(machine.screw(candidate)).stream())
            .toList();
    if (screws.isEmpty()) {
      throw new UserException(
          "the shop does not say the lead and the divisions of "
              + (axis == null ? "any axis" : axis.word())
              + " of '"
              + name
              + "'");
    }
    return new Screws(screws, machine);
  }

  /** An axis by its letter. */
  static Axis axis(String letter) {
    try {
      return Axis.valueOf(letter.toUpperCase(Locale.ROOT));
    } catch (IllegalArgumentException e) {
      throw new UserException("--axis: the axes are x, y and z");
    }
  }
}
