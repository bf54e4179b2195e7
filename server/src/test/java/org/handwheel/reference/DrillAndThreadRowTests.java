package org.handwheel.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.drill.Drill;
import org.handwheel.shop.drill.DrillPoint;
import org.handwheel.shop.drill.DrillSeries;
import org.handwheel.shop.drill.Drilling;
import org.handwheel.shop.drill.Reaming;
import org.handwheel.shop.thread.ScrewHoles;
import org.handwheel.shop.thread.ScrewHoles.Clearance;
import org.handwheel.shop.thread.ScrewThread;
import org.handwheel.shop.thread.Tapping;
import org.handwheel.shop.thread.ThreadSeries;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;

/** Drills, threads and screw holes against the rows of section D. */
class DrillAndThreadRowTests implements RowChecks {
  private static final StandardTables TABLES = StandardTables.builtIn();
  private static final Length ONE = Length.mm("1");
  private static final double HALF_TEN_THOUSANDTH = 0.0001;

  @Override
  public Map<String, Consumer<CheckRow>> checks() {
    return new Builder()
        .row("D01", DrillAndThreadRowTests::numberDrills)
        .row("D02", DrillAndThreadRowTests::letterDrills)
        .row("D03", DrillAndThreadRowTests::letterE)
        .row("D05", DrillAndThreadRowTests::metricDrills)
        .row("D06", row -> pointLength(row, 82))
        .row("D07", row -> pointLength(row, 90))
        .row("D08", row -> pointLength(row, 118))
        .row("D09", row -> pointLength(row, 120))
        .row("D10", row -> pointLength(row, 135))
        .row("D12", DrillAndThreadRowTests::tipDepth)
        .row("D13", DrillAndThreadRowTests::pointsErrOnTheLongSide)
        .row("D14", DrillAndThreadRowTests::percentOfOneDrill)
        .row("D15", row -> percents(row, "UNC no 4-40"))
        .row("D16", row -> percents(row, "UNC no 3-48"))
        .row("D17", row -> percents(row, "UNF no 3-56"))
        .row("D19", row -> percents(row, "UNF no 1-72"))
        .row("D20", row -> percents(row, "UNF no 0-80"))
        .row("D21", DrillAndThreadRowTests::twoFormulas)
        .rows(
            DrillAndThreadRowTests::rootAndTapDrill,
            "D22",
            "D23",
            "D24",
            "D26",
            "D27",
            "D28",
            "D29",
            "D30")
        .row("D31", DrillAndThreadRowTests::minorLimitsInch)
        .row("D33", DrillAndThreadRowTests::screwGauge)
        .row("D34", row -> threadsPerInch(row, ThreadSeries.UNC))
        .row("D35", row -> threadsPerInch(row, ThreadSeries.UNF))
        .row("D36", DrillAndThreadRowTests::coarsePitches)
        .row("D37", row -> metricMinor(row, "M3"))
        .row("D38", row -> metricMinor(row, "M5"))
        .row("D40", row -> metricMinor(row, "M8"))
        .row("D41", row -> metricMinor(row, "M10"))
        .row("D42", row -> metricMinor(row, "M12"))
        .row("D43", row -> metricMinor(row, "M16"))
        .row("D44", DrillAndThreadRowTests::majorLessPitch)
        .row("D45", DrillAndThreadRowTests::majorLessPitchInch)
        .row("D47", DrillAndThreadRowTests::minorLimitsMetric)
        .row("D48", row -> clearances(row, "M3", "M4", "M5", "M6", "M8", "M10"))
        .row("D49", row -> clearances(row, "M12", "M14", "M16"))
        .row("D50", row -> reaming(row, Reaming.machineAllowance(Length.mm("10"))))
        .row("D51", row -> reaming(row, Reaming.handAllowance()))
        .row("D52", DrillAndThreadRowTests::tradeSchoolReaming)
        .row("D54", DrillAndThreadRowTests::countersinkDepth)
        .row("D55", DrillAndThreadRowTests::countersinkAngles)
        .row("D56", DrillAndThreadRowTests::counterbores)
        .row("D57", DrillAndThreadRowTests::blindHoles)
        .row("D58", DrillAndThreadRowTests::pecking)
        .build();
  }

  private static ScrewThread thread(String designation) {
    return TABLES.threads().find(designation).orElseThrow();
  }

  private static double inches(Length length) {
    return length.millimetres() / 25.4;
  }

  private static void numberDrills(CheckRow row) {
    List<Drill> drills = TABLES.drills().of(DrillSeries.NUMBER);
    assertThat(drills).hasSize((int) row.number(0));
    for (int i = 1; i < drills.size(); i++) {
      double ratio =
          drills.get(i).diameter().millimetres() / drills.get(i - 1).diameter().millimetres();
      assertThat(ratio)
          .as("%s: %s", row, drills.get(i))
          .isBetween(row.number(1) - 0.0005, row.number(2) + 0.0005);
      assertThat(number(drills.get(i))).isEqualTo(number(drills.get(i - 1)) - 1);
    }
  }

  private static int number(Drill drill) {
    return Integer.parseInt(drill.designation().substring("no ".length()));
  }

  private static void letterDrills(CheckRow row) {
    List<Drill> drills = TABLES.drills().of(DrillSeries.LETTER);
    assertThat(drills).hasSize((int) row.number(0));
    row.isNear(inches(drills.get(0).diameter()), 1, 1e-9);
    row.isNear(inches(drills.get(25).diameter()), 2, 1e-9);
    assertThat(drills.get(0).designation()).isEqualTo("letter A");
    assertThat(drills).extracting(Drill::designation).isSorted();
    Drill one = TABLES.drills().find("no 1").orElseThrow();
    assertThat(drills.get(0).diameter()).isGreaterThan(one.diameter());
  }

  /** Trap X10: some pages call letter Q a quarter inch. */
  private static void letterE(CheckRow row) {
    Length quarter = Length.inches(row.numbers().get(0).toPlainString());
    List<Drill> on64ths =
        TABLES.drills().of(DrillSeries.LETTER).stream()
            .filter(
                drill ->
                    drill.diameter().over(Length.inches("1")).multiply(64).getDenominatorAsInt()
                        == 1)
            .toList();
    assertThat(on64ths).extracting(Drill::designation).containsExactly("letter E");
    assertThat(on64ths.get(0).diameter()).isEqualTo(quarter);
  }

  private static void metricDrills(CheckRow row) {
    List<Drill> drills = TABLES.drills().of(DrillSeries.METRIC);
    assertThat(between(drills, "0", "0.99")).hasSize((int) row.number(0));
    assertThat(between(drills, "1", "2.99")).hasSize((int) row.number(1));
    assertThat(between(drills, "3", "13.99")).hasSize((int) row.number(2));
    assertThat(between(drills, "14", "25.99")).hasSize((int) row.number(3));
    assertThat(between(drills, "0", "25.99")).hasSize((int) row.number(4));
  }

  private static List<Drill> between(List<Drill> drills, String low, String high) {
    LengthRange range = new LengthRange(Length.mm(low), Length.mm(high));
    return drills.stream().filter(drill -> range.contains(drill.diameter())).toList();
  }

  private static void pointLength(CheckRow row, double degrees) {
    assertThat(row.inputs()).startsWith((int) degrees + " deg");
    row.isNear(new DrillPoint(degrees).length(ONE).millimetres(), 0);
  }

  private static void tipDepth(CheckRow row) {
    row.isNear(inches(DrillPoint.GENERAL.tipDepth(Length.inches("0.25"), Length.inches("0.5"))), 0);
  }

  /**
   * Printed angles are for special grinds; a blunter point is shorter, so 118 is the safe guess.
   */
  private static void pointsErrOnTheLongSide(CheckRow row) {
    assertPoint(row, "aluminium", "aluminium-6082");
    assertPoint(row, "brass", "brass-free-cutting");
    assertPoint(row, "copper", "copper");
  }

  private static void assertPoint(CheckRow row, String words, String material) {
    double ours = TABLES.materials().find(material).orElseThrow().drillPointDegrees();
    double printed = row.numbersAfter(words).get(0).doubleValue();
    assertThat(new DrillPoint(ours).length(ONE))
        .as("%s: %s", row, material)
        .isGreaterThanOrEqualTo(new DrillPoint(printed).length(ONE));
  }

  private static void percentOfOneDrill(CheckRow row) {
    Drill drill = TABLES.drills().find("no 42").orElseThrow();
    double percent = thread("UNC no 4-40").percentOfThread(drill.diameter());
    row.isNear(percent, 0);
    row.isNear(percent, 1);
  }

  /** Trap X4: the printed table follows 1.29904 P. */
  private static void percents(CheckRow row, String designation) {
    List<BigDecimal> holes = row.inputNumbers();
    for (int i = 0; i < holes.size(); i++) {
      double percent =
          thread(designation).percentOfThread(Length.inches(holes.get(i).toPlainString()));
      row.isNear(percent, i);
      row.isNear(percent, holes.size() + i, 0.06);
    }
  }

  private static void twoFormulas(CheckRow row) {
    ScrewThread quarter = thread("UNC 1/4-20");
    row.isNear(inches(quarter.holeFor(75)), 1);
    Length unified =
        quarter
            .major()
            .minus(quarter.major().minus(quarter.minorDiameter()).times(BigFraction.of(3, 4)));
    row.isNear(inches(unified), 0);
  }

  private static void rootAndTapDrill(CheckRow row) {
    ScrewThread thread = thread("UNC " + row.inputs());
    row.isNear(inches(thread.fullThreadDiameter()), 0, HALF_TEN_THOUSANDTH);
    row.isNear(inches(thread.fullThreadDiameter()), 1, HALF_TEN_THOUSANDTH);
    row.isNear(inches(thread.tapDrill().diameter()), 2, HALF_TEN_THOUSANDTH);
    row.isNear(thread.percentOfThread(thread.tapDrill().diameter()), 3, 0.06);
  }

  private static void minorLimitsInch(CheckRow row) {
    List<String> names = List.of("UNF no 0-80", "UNC no 2-56", "UNC no 3-48", "UNC no 4-40");
    List<BigDecimal> printed = row.numbers();
    for (int i = 0; i < names.size(); i++) {
      LengthRange limits =
          new LengthRange(
              Length.inches(printed.get(2 * i).toPlainString()),
              Length.inches(printed.get(2 * i + 1).toPlainString()));
      ScrewThread thread = thread(names.get(i));
      assertThat(thread.minorLimits()).as(row.toString()).contains(limits);
      assertThat(limits.contains(thread.tapDrill().diameter())).as(names.get(i)).isTrue();
    }
  }

  private static void screwGauge(CheckRow row) {
    List<String> names =
        List.of("UNF no 0", "UNC no 4", "UNC no 6", "UNC no 8", "UNC no 10", "UNC no 12");
    for (int i = 0; i < names.size(); i++) {
      assertThat(thread(names.get(i)).major())
          .as("%s: %s", row, names.get(i))
          .isEqualTo(Length.inches(row.numbers().get(i).toPlainString()));
    }
  }

  /** The row lists every thread of the series: size, a dash, threads per inch. */
  private static void threadsPerInch(CheckRow row, ThreadSeries series) {
    List<String> listed = List.of(row.expected().split(" ", -1));
    List<String> designations = new ArrayList<>();
    for (int i = 0; i < listed.size(); i++) {
      boolean inch = listed.get(i).contains("/") || i == listed.size() - 1;
      designations.add(series.name() + (inch ? " " : " no ") + listed.get(i));
      int dash = listed.get(i).lastIndexOf('-');
      ScrewThread thread = thread(designations.get(i));
      assertThat(thread.threadsPerInch())
          .isEqualTo(BigFraction.of(Integer.parseInt(listed.get(i).substring(dash + 1))));
    }
    assertThat(TABLES.threads().of(series))
        .as(row.toString())
        .extracting(ScrewThread::designation)
        .containsExactlyElementsOf(designations);
  }

  private static void coarsePitches(CheckRow row) {
    for (String pair : List.of(row.expected().split(" ", -1))) {
      int dash = pair.indexOf('-');
      ScrewThread thread = thread("M" + pair.substring(0, dash));
      assertThat(thread.major()).isEqualTo(Length.mm(pair.substring(0, dash)));
      assertThat(thread.pitch())
          .as("%s: %s", row, pair)
          .isEqualTo(Length.mm(pair.substring(dash + 1)));
    }
  }

  private static void metricMinor(CheckRow row, String designation) {
    ScrewThread thread = thread(designation);
    row.isNear(thread.minorDiameter().millimetres(), 0);
    row.isNear(thread.minorDiameter().millimetres(), 1);
    Length lessPitch = Length.mm(row.numbers().get(3).toPlainString());
    assertThat(thread.major().minus(thread.pitch())).as(row.toString()).isEqualTo(lessPitch);
    row.isNear(thread.percentOfThread(lessPitch), 4, 0.005);
  }

  private static void majorLessPitch(CheckRow row) {
    for (ThreadSeries series : List.of(ThreadSeries.ISO_COARSE, ThreadSeries.ISO_FINE)) {
      for (ScrewThread thread : TABLES.threads().of(series)) {
        row.isNear(thread.percentOfThread(thread.major().minus(thread.pitch())), 0, 0.005);
      }
    }
  }

  private static void majorLessPitchInch(CheckRow row) {
    ScrewThread thread = thread("UNC 3/8-16");
    assertThat(thread.major().minus(thread.pitch()))
        .isEqualTo(Length.inches(row.numbers().get(0).toPlainString()))
        .isEqualTo(thread.tapDrill().diameter());
  }

  private static void minorLimitsMetric(CheckRow row) {
    List<String> names = List.of("M4", "M5", "M6", "M8", "M10");
    List<BigDecimal> printed = row.numbers();
    for (int i = 0; i < names.size(); i++) {
      assertThat(thread(names.get(i)).minorLimits())
          .as("%s: %s", row, names.get(i))
          .contains(
              new LengthRange(
                  Length.mm(printed.get(2 * i).toPlainString()),
                  Length.mm(printed.get(2 * i + 1).toPlainString())));
    }
  }

  /** Trap X6: 13/14/15 for M12 is printed elsewhere, and wrong. */
  private static void clearances(CheckRow row, String... names) {
    List<BigDecimal> printed = row.numbers();
    for (int i = 0; i < names.length; i++) {
      List<Clearance> columns = List.of(Clearance.CLOSE, Clearance.NORMAL, Clearance.FREE);
      for (int column = 0; column < 3; column++) {
        ScrewHoles.ClearanceHole hole =
            TABLES.screwHoles().clearance(thread(names[i]), columns.get(column)).orElseThrow();
        assertThat(hole.diameter())
            .as("%s: %s %s", row, names[i], columns.get(column))
            .isEqualTo(Length.mm(printed.get(3 * i + column).toPlainString()));
      }
    }
  }

  private static void reaming(CheckRow row, LengthRange allowance) {
    assertThat(allowance)
        .as(row.toString())
        .isEqualTo(
            new LengthRange(
                Length.inches(row.numbers().get(0).toPlainString()),
                Length.inches(row.numbers().get(1).toPlainString())));
  }

  /** A second rule of the trade: it must overlap ours in each of its steps. */
  private static void tradeSchoolReaming(CheckRow row) {
    List<String> diameters = List.of("4", "12", "30");
    for (int i = 0; i < 3; i++) {
      LengthRange printed =
          new LengthRange(
              Length.mm(row.numbers().get(2 * i).toPlainString()),
              Length.mm(row.numbers().get(2 * i + 1).toPlainString()));
      assertThat(Reaming.machineAllowance(Length.mm(diameters.get(i))).overlaps(printed))
          .as("%s at %s mm", row, diameters.get(i))
          .isTrue();
    }
  }

  private static void countersinkDepth(CheckRow row) {
    row.isNear(
        inches(new DrillPoint(82).countersinkDepth(Length.inches("0.507"), Length.inches("0.257"))),
        0);
    row.isNear(
        new DrillPoint(90).countersinkDepth(Length.mm("12"), Length.mm("6")).millimetres(), 1);
  }

  private static void countersinkAngles(CheckRow row) {
    for (ScrewThread thread : TABLES.threads().all()) {
      TABLES
          .screwHoles()
          .countersink(thread)
          .ifPresent(
              sink ->
                  assertThat(sink.includedDegrees())
                      .as("%s: %s", row, thread.designation())
                      .isEqualTo(row.number(isMetric(thread) ? 1 : 0)));
    }
    assertThat(TABLES.screwHoles().countersink(thread("M6"))).isPresent();
    assertThat(TABLES.screwHoles().countersink(thread("UNC 1/4-20"))).isPresent();
  }

  private static boolean isMetric(ScrewThread thread) {
    return thread.series() == ThreadSeries.ISO_COARSE || thread.series() == ThreadSeries.ISO_FINE;
  }

  private static void counterbores(CheckRow row) {
    ScrewHoles.Counterbore m6 = TABLES.screwHoles().counterbore(thread("M6")).orElseThrow();
    assertThat(m6.diameter()).isEqualTo(Length.mm(row.numbers().get(0).toPlainString()));
    assertThat(m6.head()).isEqualTo(Length.mm(row.numbers().get(1).toPlainString()));
    ScrewHoles.Counterbore quarter =
        TABLES.screwHoles().counterbore(thread("UNC 1/4-20")).orElseThrow();
    assertThat(inches(quarter.diameter())).isCloseTo(row.number(2) / row.number(3), within(1e-9));
    assertThat(inches(quarter.head())).isCloseTo(row.number(4) / row.number(5), within(1e-9));
  }

  private static void blindHoles(CheckRow row) {
    ScrewThread m6 = thread("M6");
    Length depth = Length.mm("7");
    Length beyond = Tapping.leastFullDepth(m6, depth).minus(depth);
    assertThat(beyond).isEqualTo(m6.pitch().times(row.numbers().get(0).longValueExact()));
    Length tip = Tapping.leastTipDepth(m6, depth, Length.mm("5"), DrillPoint.GENERAL);
    assertThat(tip.minus(depth).minus(beyond)).isEqualTo(DrillPoint.GENERAL.length(Length.mm("5")));
    assertThat(Tapping.greatestThread(m6, depth.plus(beyond))).isEqualTo(depth);
  }

  private static void pecking(CheckRow row) {
    assertThat(row.inputs()).isEqualTo("depth > 3 D");
    Length drill = Length.mm("6");
    assertThat(Drilling.pecks(Length.mm("18"), drill)).isEqualTo(1);
    assertThat(Drilling.pecks(Length.mm("18.1"), drill)).isEqualTo(4);
    assertThat(Drilling.pecks(Length.mm("30"), drill)).isEqualTo(5);
  }
}
