package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.Screw;
import org.handwheel.model.Workspace;
import org.handwheel.reference.CheckRow;
import org.handwheel.reference.RowChecks;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.Dial.Rounding;
import org.handwheel.work.Dial.Setting;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Dials against the check values of rows B16 to B26 (each test names its row's source), and the
 * laws a dial keeps.
 */
class DialTests implements RowChecks {
  private static final Screw INCH = screw(Length.inches("0.1"), 100);
  private static final Screw METRIC = screw(Length.mm("2"), 100);

  private static Screw screw(Length lead, int divisions) {
    return screw(lead, BigFraction.of(divisions));
  }

  private static Screw screw(Length lead, BigFraction divisions) {
    return new Screw(Axis.X, lead, divisions, Length.ZERO, null, null, null, BigFraction.of(1, 2));
  }

  private static Setting nearest(Length distance, Screw screw) {
    return Dial.setting(distance, screw, Rounding.NEAREST);
  }

  private static Length input(CheckRow row, LengthUnit unit) {
    return Length.of(row.inputNumbers().get(0).toPlainString(), unit);
  }

  @Override
  public Map<String, Consumer<CheckRow>> checks() {
    return new RowChecks.Builder()
        .row("B16", row -> wholeDivisions(row, METRIC))
        .row("B17", DialTests::metricSizeOnAnInchDial)
        .row("B18", DialTests::inchSizeOnAMetricDial)
        .row("B19", row -> assertThat(Dial.worstRounding(METRIC)).isEqualTo(mm(row, 0)))
        .row("B20", row -> wholeDivisions(row, screw(Length.mm("1.5"), 30)))
        .row("B21", row -> wholeDivisions(row, screw(Length.mm("1.25"), 50)))
        .row("B23", DialTests::millDialIsDirect)
        .row("B24", DialTests::turningBackLosesTheBacklash)
        .row("B25", DialTests::everyPositionFromTheSameSide)
        .row("B26", DialTests::fromOneZeroAndNotStepByStep)
        .build();
  }

  private static Length mm(CheckRow row, int index) {
    return Length.mm(row.numbers().get(index).abs().toPlainString());
  }

  private static void wholeDivisions(CheckRow row, Screw screw) {
    Setting setting = nearest(input(row, LengthUnit.MM), screw);
    assertThat(setting.turns()).isEqualTo(row.numbers().get(0).longValueExact());
    assertThat(setting.reading()).isEqualByComparingTo(row.numbers().get(1));
    assertThat(setting.error()).isEqualTo(Length.ZERO);
  }

  /** 312.5 divisions: the collar shows whole ones, half a division is left either way. */
  private static void metricSizeOnAnInchDial(CheckRow row) {
    Length size = input(row, LengthUnit.MM);
    List<BigDecimal> expected = row.numbers();
    assertThat(size).isEqualTo(Length.inches(expected.get(0).toPlainString()));
    Setting whole = nearest(size, INCH);
    assertThat(whole.turns()).isEqualTo(expected.get(1).longValueExact());
    assertThat(whole.reading().subtract(expected.get(2)).abs()).isEqualByComparingTo("0.5");
    assertThat(whole.error().abs()).isEqualTo(Dial.worstRounding(INCH));
    Setting halves = nearest(size, screw(Length.inches("0.1"), 200));
    assertThat(halves.turns()).isEqualTo(expected.get(1).longValueExact());
    assertThat(halves.reading().divide(BigDecimal.valueOf(2)))
        .isEqualByComparingTo(expected.get(2));
    assertThat(halves.error()).isEqualTo(Length.ZERO);
  }

  private static void inchSizeOnAMetricDial(CheckRow row) {
    Length size = input(row, LengthUnit.IN);
    Setting nearest = nearest(size, METRIC);
    assertThat(nearest.turns()).isEqualTo(row.numbers().get(0).longValueExact());
    assertThat(nearest.reading()).isEqualByComparingTo(row.numbers().get(2));
    assertThat(nearest.error()).isEqualTo(Length.mm("0.005"));
    assertThat(row.expected()).contains("leaves +0.005 mm");
    Setting hundredths = nearest(size, screw(Length.mm("2"), 10_000));
    assertThat(hundredths.reading().movePointLeft(2)).isEqualByComparingTo(row.numbers().get(1));
    Setting metalLeftOn = Dial.setting(size, METRIC, Rounding.SHORT);
    assertThat(metalLeftOn.reading()).isEqualByComparingTo("58");
    assertThat(metalLeftOn.error()).isEqualTo(Length.mm("-0.015"));
  }

  /** 0.010 on a mill's dial removes 0.010: ten divisions of a thou. */
  private static void millDialIsDirect(CheckRow row) {
    assertThat(row.expected()).contains("0.010 on the dial removes 0.010");
    Setting setting = nearest(Length.inches("0.010"), INCH);
    assertThat(setting.reading()).isEqualByComparingTo("10");
    assertThat(setting.turns()).isZero();
    assertThat(setting.error()).isEqualTo(Length.ZERO);
  }

  /** A plan whose X zero is taken on one end and whose cut is set on another. */
  private static Checked end(String touched, Length backlash) {
    String inches =
        new BigDecimal(backlash.picometres())
            .divide(new BigDecimal(LengthUnit.IN.picometres()))
            .toPlainString();
    String shop =
        """
        shop "Check"
          units in
        own machine m
          lead-x: 0.1
          divisions-x: 100
          backlash-x: %s
        own vise v
          jaw-width: 4
          jaw-depth: 1
          opening: 3
          trued: 0.001 over 4
        own cutter c
          dia: 1/2
          teeth: 4
          flute: 2
        """
            .formatted(inches);
    String plan =
        """
        plan "Check"
          units in
          use "a.shop"
        part
          length 5 +-0.1
        stock
          size 5.1 x 1 x 1
          milled left right front back top bottom
        setup a
          hold in v, up top, fixed back, on bed
          seat tapped
          cutter c
          touch %s, zero x
          finish right to length
        """
            .formatted(touched);
    return new Checker(StandardTables.load())
        .check(
            Workspace.of(SyntaxTree.parse("a.plan", plan), SyntaxTree.parse("a.shop", shop)),
            "a.plan");
  }

  private static List<String> backlashMessages(Checked checked) {
    return checked.findings().stream()
        .filter(finding -> finding.rule().equals("backlash-side"))
        .map(finding -> finding.message())
        .toList();
  }

  /**
   * What is said to be lost is just what the table does not move: 0.050 on the dial, 0.038 moved.
   */
  private static void turningBackLosesTheBacklash(CheckRow row) {
    BigDecimal backlash = row.inputNumbers().get(0);
    BigDecimal turnedBack = row.inputNumbers().get(1);
    BigDecimal moved = row.numbers().get(0);
    Length lost = Length.inches(turnedBack.subtract(moved).toPlainString());
    assertThat(lost).isEqualTo(Length.inches(backlash.toPlainString()));
    assertThat(backlashMessages(end("left", Length.inches(backlash.toPlainString()))))
        .singleElement()
        .asString()
        .contains("off by the backlash of " + lost);
  }

  private static void everyPositionFromTheSameSide(CheckRow row) {
    Length backlash = Length.inches(row.inputNumbers().get(0).toPlainString());
    assertThat(backlashMessages(end("right", backlash))).isEmpty();
    assertThat(backlashMessages(end("left", backlash))).hasSize(1);
    assertThat(backlashMessages(end("left", Length.ZERO))).isEmpty();
  }

  private static void fromOneZeroAndNotStepByStep(CheckRow row) {
    Length step = Length.mm("3.175");
    assertThat(row.inputs()).contains("10 steps of 3.175 mm on 0.02 dial");
    Length most = mm(row, 0);
    Length summed = Length.ZERO;
    for (int i = 1; i <= 10; i++) {
      assertThat(nearest(step.times(i), METRIC).error().abs().isMoreThan(most)).isFalse();
      summed = summed.plus(nearest(step, METRIC).error());
    }
    assertThat(row.expected()).contains("step by step (59 div each): +0.05 mm");
    assertThat(summed).isEqualTo(Length.mm("0.05"));
  }

  // ---- Laws
  // ---------------------------------------------------------------------------------------------

  @Property
  void nearestIsWithinHalfADivisionAndShortNeverGoesPast(
      @ForAll @LongRange(min = -500_000_000_000L, max = 500_000_000_000L) long picometres,
      @ForAll @IntRange(min = 10, max = 250) int divisions) {
    Screw screw = screw(Length.inches("0.1"), divisions);
    Length distance = new Length(picometres);
    // A division need not be a whole count of picometres, so half of it may be half a picometre
    // off.
    Length half = Dial.worstRounding(screw).plus(new Length(1));
    assertThat(nearest(distance, screw).error().abs().isMoreThan(half)).isFalse();
    Length past = Dial.setting(distance, screw, Rounding.SHORT).error();
    assertThat(picometres >= 0 ? past.isPositive() : past.isNegative()).isFalse();
    assertThat(past.abs().isMoreThan(half.times(2))).isFalse();
  }

  @Property
  void turnsAndReadingGiveTheDivisionsBack(
      @ForAll @LongRange(min = -500_000_000_000L, max = 500_000_000_000L) long picometres,
      @ForAll @IntRange(min = 10, max = 250) int divisions) {
    Setting setting = nearest(new Length(picometres), screw(Length.mm("2"), divisions));
    assertThat(setting.reading())
        .isBetween(BigDecimal.ZERO, BigDecimal.valueOf(divisions).subtract(BigDecimal.ONE));
    assertThat(
            BigDecimal.valueOf(setting.turns() * divisions)
                .add(setting.reading())
                .compareTo(BigDecimal.valueOf(setting.divisions())))
        .isZero();
  }

  /** A collar of 62.5 divisions does not come back to the same mark after a turn. */
  @Test
  void aTurnNeedNotBeAWholeNumberOfDivisions() {
    Screw screw = screw(Length.inches("0.0625"), BigFraction.of(125, 2));
    Setting setting = nearest(Length.inches("0.100"), screw);
    assertThat(setting.divisions()).isEqualTo(100);
    assertThat(setting.turns()).isEqualTo(1);
    assertThat(setting.reading()).isEqualByComparingTo("37.5");
    assertThat(setting.error()).isEqualTo(Length.ZERO);
  }

  /** Where the cutter goes one way over the work, the table goes the other; so does a knee. */
  @Property
  void theTableGoesTheOtherWay(@ForAll Direction cutter, @ForAll Owned.ZDrive drive) {
    boolean carriesTheCutter = cutter.axis() == Axis.Z && drive != Owned.ZDrive.KNEE;
    assertThat(Dial.handleDirection(cutter, drive))
        .isEqualTo(carriesTheCutter ? cutter : cutter.opposite());
  }

  @Property
  void aLongWayFromZeroIsNoLessExact(@ForAll @DoubleRange(min = 0, max = 400) double mm) {
    Length distance = Length.ofMillimetres(mm);
    Setting setting = nearest(distance, METRIC);
    assertThat(METRIC.division().times(setting.divisions()))
        .isEqualTo(distance.plus(setting.error()));
  }

  /** Counted from zero: a quarter of a turn either way, whole turns, and turns with marks. */
  @ParameterizedTest
  @CsvSource({
    "0, 0, 0",
    "25, 0, 25",
    "-25, <0, 75",
    "-100, -1, 0",
    "-125, -1, 75",
    "-99, <0, 1",
    "-200, -2, 0",
    "250, 2, 50"
  })
  void turnsAreCountedFromZero(long divisions, String turns, String mark) {
    Screw screw = screw(Length.mm("1"), 100);
    Setting setting = Dial.setting(Length.mm("0.01").times(divisions), screw, Rounding.NEAREST);
    assertThat(setting.countedTurns()).isEqualTo(turns);
    assertThat(setting.reading().toPlainString()).isEqualTo(mark);
    DialMove.Stop stop =
        DialMoves.stop(Length.mm("0.01").times(divisions), screw, Rounding.NEAREST);
    assertThat(stop.countedTurns()).isEqualTo(turns);
  }

  /** Ten divisions a tenth of an inch: 2.45 turns, 1.05, less than one, and below zero. */
  @Test
  void inWords() {
    assertThat(Dial.words(nearest(Length.inches("0.245"), INCH)))
        .isEqualTo("2 turns + 45 divisions");
    assertThat(Dial.words(nearest(Length.inches("0.105"), INCH))).isEqualTo("1 turn + 5 divisions");
    assertThat(Dial.words(nearest(Length.inches("0.005"), INCH)))
        .isEqualTo("0 turns + 5 divisions");
    assertThat(Dial.words(nearest(Length.ZERO, INCH))).isEqualTo("0 turns + 0 divisions");
    // From zero back past one turn to where the collar shows 95: two whole turns down, 95 up.
    assertThat(Dial.words(nearest(Length.inches("-0.105"), INCH)))
        .isEqualTo("back to reading 95, 2 turns down");
  }

  /**
   * Below zero a person counts down: 1.05 turns below is -1 and 5 marks less, 0.05 is less than
   * one.
   */
  @Test
  void turnsAsAPersonCountsThem() {
    assertThat(nearest(Length.inches("0.245"), INCH).countedTurns()).isEqualTo("2");
    assertThat(nearest(Length.ZERO, INCH).countedTurns()).isEqualTo("0");
    assertThat(nearest(Length.inches("-0.005"), INCH).countedTurns()).isEqualTo("<0");
    assertThat(nearest(Length.inches("-0.105"), INCH).countedTurns()).isEqualTo("-1");
    assertThat(nearest(Length.inches("-0.2"), INCH).countedTurns()).isEqualTo("-2");
  }

  /** Clockwise drives the table left, so the cutter goes right over the work. */
  @Test
  void whichWayTheHandleTurns() {
    Screw known =
        new Screw(
            Axis.X,
            Length.mm("2"),
            BigFraction.of(100),
            Length.ZERO,
            null,
            null,
            Direction.OPERATOR_LEFT,
            BigFraction.of(1, 2));
    Owned.ZDrive quill = Owned.ZDrive.QUILL;
    assertThat(Dial.turn(known, Direction.OPERATOR_RIGHT, quill)).isEqualTo(Dial.Turn.CLOCKWISE);
    assertThat(Dial.crank(known, Direction.OPERATOR_RIGHT, quill)).isEqualTo("clockwise");
    assertThat(Dial.crank(known, Direction.OPERATOR_LEFT, quill)).isEqualTo("counter-clockwise");
    assertThat(Dial.turn(METRIC, Direction.OPERATOR_LEFT, quill)).isNull();
    assertThat(Dial.crank(METRIC, Direction.OPERATOR_LEFT, quill)).isEmpty();
  }
}
