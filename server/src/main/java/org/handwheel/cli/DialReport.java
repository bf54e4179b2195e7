package org.handwheel.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.cli.LengthArguments.Given;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Owned.Machine;
import org.handwheel.model.Owned.Screw;
import org.handwheel.model.Owned.ZDrive;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.units.SixtyFourths;
import org.handwheel.work.Dial;
import org.handwheel.work.Dial.Rounding;
import org.handwheel.work.Dial.Setting;
import org.jspecify.annotations.Nullable;

/** Lengths in both units and as turns and divisions of dials, for people and for programs. */
final class DialReport {
  /** What a length rounded for people may hide. */
  private static final Length HIDDEN = Length.mm("0.0005");

  private final List<Given> lengths;
  private final @Nullable Machine machine;
  private final Map<Dialled, List<Screw>> dials = new LinkedHashMap<>();

  /** Screws with these in common have the same settings. */
  private record Dialled(Length lead, BigFraction divisions) {}

  DialReport(List<Given> lengths, Screws screws) {
    this.lengths = List.copyOf(lengths);
    this.machine = screws.machine();
    for (Screw screw : screws.screws()) {
      dials
          .computeIfAbsent(new Dialled(screw.lead(), screw.divisions()), key -> new ArrayList<>())
          .add(screw);
    }
  }

  // ---- Text

  List<String> lines(int width) {
    List<String> lines = new ArrayList<>();
    for (Given given : lengths) {
      if (!lines.isEmpty()) {
        lines.add("");
      }
      lines.addAll(
          Wrapping.wrap("", "    ", given.text() + " = " + LengthText.both(given.length()), width));
      SixtyFourths nearest = SixtyFourths.nearest(given.length());
      lines.addAll(row("nearest 64th", nearest.text() + ", " + difference(nearest.error()), width));
      dials.forEach(
          (dial, screws) -> {
            Setting setting = setting(given, screws.get(0));
            lines.addAll(
                row(
                    label(screws),
                    Dial.words(setting) + ", " + difference(setting.error()),
                    width));
          });
    }
    dials.values().forEach(screws -> lines.addAll(handles(screws, width)));
    return lines;
  }

  private static List<String> row(String label, String text, int width) {
    String start = "  " + label + " ".repeat(Math.max(2, 15 - label.length()));
    return Wrapping.wrap(start, " ".repeat(start.length()), text, width);
  }

  private String label(List<Screw> screws) {
    if (machine == null) {
      return "dial";
    }
    return "dial " + String.join(" ", screws.stream().map(Screw::axis).map(Axis::word).toList());
  }

  /** What the handles do, once for all lengths. */
  private List<String> handles(List<Screw> screws, int width) {
    List<String> lines = new ArrayList<>();
    Screw first = screws.get(0);
    lines.add("");
    lines.addAll(
        Wrapping.wrap(
            "",
            "    ",
            label(screws)
                + ": "
                + LengthText.both(first.lead())
                + " a turn, "
                + decimal(first.divisions())
                + " divisions of "
                + LengthText.both(first.division()),
            width));
    if (machine == null) {
      return lines;
    }
    for (Screw screw : screws) {
      Direction clockwise = screw.clockwise();
      if (clockwise == null) {
        lines.addAll(
            row(screw.axis().word(), "the shop does not say which way clockwise goes", width));
        continue;
      }
      for (Direction cutter : clockwiseFirst(screw, machine.zDrive())) {
        lines.addAll(
            row(
                screw.axis().word(),
                Dial.crank(screw, cutter, machine.zDrive())
                    + ": cutter "
                    + cutter.words()
                    + moved(cutter, machine.zDrive()),
                width));
      }
      if (screw.backlash().isPositive()) {
        lines.addAll(
            row(screw.axis().word(), "backlash " + LengthText.both(screw.backlash()), width));
      }
    }
    if (screws.stream().anyMatch(screw -> screw.backlash().isPositive())) {
      lines.addAll(
          Wrapping.wrap(
              "  ",
              "  ",
              "Come to every setting turning the same way, so that the backlash is taken up.",
              width));
    }
    return lines;
  }

  /** The two ways the cutter can go along an axis, the one of a clockwise turn first. */
  private static List<Direction> clockwiseFirst(Screw screw, ZDrive zDrive) {
    Direction up = Direction.of(screw.axis(), 1);
    return Dial.crank(screw, up, zDrive).equals("clockwise")
        ? List.of(up, up.opposite())
        : List.of(up.opposite(), up);
  }

  /** What the handle moves, where it goes another way than the cutter. */
  private static String moved(Direction cutter, ZDrive zDrive) {
    Direction handle = Dial.handleDirection(cutter, zDrive);
    return handle == cutter
        ? ""
        : (cutter.axis() == Axis.Z ? " (knee " : " (table ") + handle.words() + ")";
  }

  private static String difference(Length error) {
    if (error.isZero()) {
      return "exactly";
    }
    String side = error.isNegative() ? " less" : " more";
    return error.abs().isLessThan(HIDDEN)
        ? "less than 0.001 mm" + (error.isNegative() ? " under" : " over")
        : LengthText.both(error.abs()) + side;
  }

  private static Setting setting(Given given, Screw screw) {
    try {
      return Dial.setting(given.length(), screw, Rounding.NEAREST);
    } catch (ArithmeticException e) {
      throw new UserException(given.text() + ": no dial counts that far");
    }
  }

  // ---- JSON

  /** The same as JSON; see {@link Json}. */
  String json() {
    return Json.of(
        new Root(
            1,
            lengths.stream().map(this::json).toList(),
            dials.values().stream().flatMap(List::stream).map(this::json).toList()));
  }

  private JsonLength json(Given given) {
    SixtyFourths nearest = SixtyFourths.nearest(given.length());
    List<JsonSetting> settings = new ArrayList<>();
    dials.forEach(
        (dial, screws) -> {
          Setting setting = setting(given, screws.get(0));
          settings.add(
              new JsonSetting(
                  axes(screws),
                  setting.turns(),
                  setting.reading(),
                  setting.divisions(),
                  amount(setting.error())));
        });
    return new JsonLength(
        given.text(),
        amount(given.length()),
        new JsonFraction(nearest.text(), nearest.count(), amount(nearest.error())),
        settings);
  }

  private List<String> axes(List<Screw> screws) {
    return machine != null ? screws.stream().map(Screw::axis).map(Axis::word).toList() : List.of();
  }

  private JsonDial json(Screw screw) {
    Direction clockwise = screw.clockwise();
    return new JsonDial(
        machine != null ? screw.axis().word() : null,
        amount(screw.lead()),
        new BigDecimal(decimal(screw.divisions())),
        clockwise == null ? null : clockwise.words());
  }

  private static Amount amount(Length length) {
    BigDecimal picometres = BigDecimal.valueOf(length.picometres());
    return new Amount(
        plain(picometres.movePointLeft(9)),
        plain(
            picometres.divide(
                BigDecimal.valueOf(LengthUnit.IN.picometres()), 8, RoundingMode.HALF_EVEN)));
  }

  private static BigDecimal plain(BigDecimal number) {
    BigDecimal stripped = number.stripTrailingZeros();
    return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
  }

  private static String decimal(BigFraction number) {
    return plain(
            new BigDecimal(number.getNumerator())
                .divide(new BigDecimal(number.getDenominator()), 4, RoundingMode.HALF_EVEN))
        .toPlainString();
  }

  private record Root(int version, List<JsonLength> lengths, List<JsonDial> dials) {}

  private record JsonLength(
      String text, Amount length, JsonFraction nearest64th, List<JsonSetting> settings) {}

  private record Amount(BigDecimal mm, BigDecimal in) {}

  private record JsonFraction(String text, long sixtyFourths, Amount error) {}

  private record JsonSetting(
      List<String> axes, long turns, BigDecimal reading, long divisions, Amount error) {}

  private record JsonDial(
      @Nullable String axis, Amount lead, BigDecimal divisions, @Nullable String clockwiseMoves) {}
}
