package org.handwheel.model.build;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.model.Workspace;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers, names and tolerances of plans as values of the model. */
class ValuesTests {
  private static final String MM = "plan \"Values\"\nunits mm\n";

  private static Plan plan(String text) {
    return PlanFiles.build(Workspace.of(SyntaxTree.parse("x.plan", text)), "x.plan");
  }

  private static List<String> findings(String text) {
    return plan(text).findings().stream().map(f -> f.rule() + ": " + f.message()).toList();
  }

  /** The picometres of a length given by an expression, in a file in the units. */
  private static long picometres(String units, String lets, String expression) {
    Plan plan = plan("units " + units + "\n" + lets + "\npart\nlength (" + expression + ")");
    assertThat(plan.findings()).isEmpty();
    return requireNonNull(requireNonNull(plan.part()).dimension(PartDimension.LENGTH))
        .nominal()
        .picometres();
  }

  private static LengthRange limits(String text) {
    Plan plan = plan(text);
    assertThat(plan.findings()).isEmpty();
    return requireNonNull(
        requireNonNull(requireNonNull(plan.part()).dimension(PartDimension.LENGTH)).limits());
  }

  // ---- Units (1 in = 25.4 mm exactly: NIST SP 811, international yard agreement of 1959)
  // -------------

  @ParameterizedTest
  @CsvSource({
    "1 mm, 1000000000",
    "1 in, 25400000000",
    "1 thou, 25400000",
    "1 tenth, 2540000",
    "4 tenths, 10160000",
    "1 um, 1000000",
    "1 µm, 1000000",
    "1 uin, 25400",
    "5/16 in, 7937500000",
    "21/64 in, 8334375000",
    "1/64 in, 396875000",
    "1-3/8 in, 34925000000",
    "40.1 in, 1018540000000",
    "0.1 in + 1 mm, 3540000000",
    "50 %*2, 1000000000",
    ".5, 500000000",
    "5., 5000000000"
  })
  void unitsAreExact(String written, long picometres) {
    assertThat(picometres("mm", "", written)).isEqualTo(picometres);
  }

  @ParameterizedTest
  @CsvSource({"mm, 1000000000", "in, 25400000000", "thou, 25400000"})
  void aBareNumberTakesTheUnitsOfItsFile(String units, long picometres) {
    assertThat(picometres(units, "", "1")).isEqualTo(picometres);
    assertThat(picometres(units, "", "1 + 1 mm")).isEqualTo(picometres + 1_000_000_000);
    assertThat(picometres(units, "", "1/8*8")).isEqualTo(picometres);
  }

  @Test
  void aLetOfABareNumberStaysPlain() {
    assertThat(picometres("mm", "let n = 4", "n*3 in")).isEqualTo(4 * 3 * 25_400_000_000L);
    assertThat(picometres("mm", "let n = 4", "n + 1 in")).isEqualTo(29_400_000_000L);
  }

  @Test
  void aLengthOverALengthIsANumber() {
    assertThat(picometres("mm", "let r = 1 in/(1 mm)", "r*1 mm")).isEqualTo(25_400_000_000L);
  }

  // ---- Exactness
  // --------------------------------------------------------------------------------------

  @Test
  void expressionsAreRoundedOnceAtTheEnd() {
    assertThat(picometres("mm", "let a = 1 mm\nlet b = a/3", "b*3")).isEqualTo(1_000_000_000);
    assertThat(picometres("mm", "let a = 1 uin\nlet b = a / 7 / 11 / 13", "b*1001"))
        .isEqualTo(25_400);
    // A third of a picometre and two: 0.333... to 0, 0.666... to 1.
    assertThat(picometres("mm", "", "1 mm + 1 um/1000000 / 3")).isEqualTo(1_000_000_000);
    assertThat(picometres("mm", "", "1 mm + 2 um/1000000 / 3")).isEqualTo(1_000_000_001);
    // Halves go to the even neighbour (US Army MM4409 p. 147, the rule of rounding).
    assertThat(picometres("mm", "", "1 mm + 1 um/2000000")).isEqualTo(1_000_000_000);
    assertThat(picometres("mm", "", "1 mm + 3 um/2000000")).isEqualTo(1_000_000_002);
  }

  @Test
  void divisionGoesFromLeftToRight() {
    assertThat(picometres("mm", "let b = 24", "b / 6 / 2")).isEqualTo(2_000_000_000);
    assertThat(picometres("mm", "let b = 24", "b - 6 - 2")).isEqualTo(16_000_000_000L);
    assertThat(picometres("mm", "let b = 24", "-b + 30 - -(1)".replace("- -(1)", "+ 1")))
        .isEqualTo(7_000_000_000L);
    assertThat(picometres("mm", "", "42-6")).isEqualTo(36_000_000_000L);
  }

  // ---- Too large, too long
  // ------------------------------------------------------------------------------

  @ParameterizedTest
  @ValueSource(
      strings = {
        "9300000 m",
        "9300000000 mm",
        "9223372.1*1000 mm",
        "370000000 in",
        "-9300000000 mm"
      })
  void aLengthThatDoesNotFitIsReported(String length) {
    String text = MM + "part\nlength (" + length.replace(" m\u0000", "") + ")";
    if (length.endsWith(" m")) {
      assertThat(findings(text)).singleElement().asString().startsWith("syntax: ");
    } else {
      assertThat(findings(text)).containsExactly("overflow: this length is larger than 10 km");
    }
  }

  @Test
  void aToleranceThatDoesNotFitIsReported() {
    assertThat(findings(MM + "part\nlength 9200000000 +-9200000000"))
        .containsExactly("overflow: this length is larger than 10 km");
    assertThat(findings(MM + "part\nlength 9200000000 +9200000000/-0"))
        .containsExactly("overflow: this length is larger than 10 km");
    assertThat(findings(MM + "part\nhole a in top, dia 9200000000 +-9200000000"))
        .containsExactly("overflow: this length is larger than 10 km");
  }

  @ParameterizedTest
  @ValueSource(ints = {61, 400, 1_900})
  void aNumberOfTooManyDigitsIsReportedAtOnce(int digits) {
    assertLargeNumber(
        digits, "overflow: a number has at most 60 digits", "overflow: this count is too large");
  }

  @ParameterizedTest
  @ValueSource(ints = {2_000, 100_000, 1_000_000})
  void aNumberLongerThanALineMayBeIsNotRead(int digits) {
    String words = "syntax: a line has at most 2000 characters; from here on it is not read";
    assertLargeNumber(digits, words, words);
  }

  private static void assertLargeNumber(int digits, String asLength, String asCount) {
    String number = "9".repeat(digits);
    for (String value :
        List.of(number, "0." + number, number + "/3", "1-1/" + number, "2/(" + number + ")")) {
      List<String> found =
          Assertions.assertTimeoutPreemptively(
              Duration.ofSeconds(60), () -> findings(MM + "part\nlength (" + value + ")"));
      assertThat(found).containsExactly(asLength);
    }
    assertThat(findings(MM + "part\nstock\nmake " + number)).containsExactly(asCount);
  }

  @Test
  void aChainOfProductsStopsAtOnce() {
    String product = String.join("*", List.of("a", "a", "a", "a", "a", "a", "a", "a", "a", "a"));
    String lets =
        "let a0 = "
            + "9".repeat(59)
            + "\n"
            + IntStream.rangeClosed(1, 20)
                .mapToObj(i -> "let a" + i + " = " + product.replace("a", "a" + (i - 1)))
                .collect(Collectors.joining("\n"));
    List<String> found =
        Assertions.assertTimeoutPreemptively(Duration.ofSeconds(60), () -> findings(MM + lets));
    assertThat(found.get(0)).isEqualTo("overflow: this has grown too long to compute exactly");
  }

  // ---- Kinds of value
  // -------------------------------------------------------------------------------------

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "3 mm*2 mm | bad-value: a length times a length is an area; the language has none",
        "3/(2 - 2) | bad-value: division by zero",
        "3/0 | bad-value: division by zero",
        "3 mm/(2 deg) | bad-value: a length cannot be divided by an angle",
        "2/(3 mm) | bad-value: a plain number cannot be divided by a length",
        "3 mm + 2 deg | bad-value: a length and an angle do not add up",
        "2 deg*3 rpm | bad-value: an angle and a spindle speed cannot be multiplied",
        "30 deg | bad-value: expected a length, got an angle",
        "90 m/min | bad-value: expected a length, got a cutting speed",
        "0 | bad-value: this length must be more than zero",
        "3 - 5 | bad-value: this length must be more than zero",
        "1-9/8 in | bad-value: `1-9/8` is no mixed number; to subtract, write blanks around `-`",
        "nowhere | undefined-name: there is no value `nowhere`"
      })
  void whatMakesNoSenseIsReportedOnce(String expression, String finding) {
    assertThat(findings(MM + "part\nlength (" + expression + ")")).containsExactly(finding);
  }

  @Test
  void numbersWithoutUnitsAreReportedOnce() {
    assertThat(findings("plan\npart\nlength 3\nwidth 4\nheight 5 mm"))
        .singleElement()
        .asString()
        .startsWith("no-units: ");
    assertThat(findings("plan\npart\nlength 3 mm\nunits mm\nwidth 4")).isEmpty();
    assertThat(findings("plan\npart\nlength 3\nunits mm\nwidth 4")).hasSize(1);
  }

  @Test
  void unitsAreGivenOnceAndAreOnesAPersonThinksIn() {
    assertThat(findings("units mm\nunits mm"))
        .containsExactly("repeated-line: the units of the file are already given");
    assertThat(findings("units um")).containsExactly("bad-value: units are mm, in or thou");
  }

  // ---- Lists
  // -----------------------------------------------------------------------------------------------

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2 x 1 x 1/2 in | 50800000000 25400000000 12700000000",
        "2 in x 1 in x 1/2 in | 50800000000 25400000000 12700000000",
        "2 x 1 x 1/2 | 2000000000 1000000000 500000000",
        "2×1×0.5 in | 50800000000 25400000000 12700000000"
      })
  void aUnitOnTheLastOfAListHoldsForAll(String size, String picometres) {
    Map<PartDimension, Length> sizes =
        requireNonNull(plan(MM + "stock\nsize " + size).stock()).sizes();
    String found =
        List.of(PartDimension.LENGTH, PartDimension.WIDTH, PartDimension.HEIGHT).stream()
            .map(d -> Long.toString(requireNonNull(sizes.get(d)).picometres()))
            .collect(Collectors.joining(" "));
    assertThat(found).isEqualTo(picometres);
  }

  @Test
  void unitsOnSomeOfAListAreReported() {
    assertThat(findings(MM + "stock\nsize 2 in x 1 x 1/2 in")).hasSize(1);
    assertThat(findings(MM + "stock\nsize 2 in x 1 x 1/2")).hasSize(1);
    assertThat(findings(MM + "part\nhole a in top, dia 5, at (1 in, 2), through")).hasSize(1);
    HoleSpec hole =
        requireNonNull(plan(MM + "part\nhole a in top, dia 5, at (1, 2 in), through").part())
            .holes()
            .get(0);
    assertThat(requireNonNull(hole.position()).first()).isEqualTo(Length.inches("1"));
  }

  // ---- Tolerances
  // --------------------------------------------------------------------------------------------

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "19 +-0.05 | 18950000000 | 19050000000",
        "19 ±0.05 | 18950000000 | 19050000000",
        "19 +0/-0.05 | 18950000000 | 19000000000",
        "19 -0/+0.05 | 19000000000 | 19050000000",
        "19 +0.02/-0.01 | 18990000000 | 19020000000",
        "19 -0.02/-0.04 | 18960000000 | 18980000000",
        "19 +1/-2 thou | 18949200000 | 19025400000",
        "1 in +-0.002 | 25349200000 | 25450800000",
        "1 in +0/-0.002 | 25349200000 | 25400000000",
        "1 in +-0.05 mm | 25350000000 | 25450000000",
        "1 in +0/-2 thou | 25349200000 | 25400000000",
        "18.97 / 19.00 | 18970000000 | 19000000000",
        "19.00 / 18.97 | 18970000000 | 19000000000",
        "0.747 / 0.748 in | 18973800000 | 18999200000",
        "0.747 in / 0.748 | 18973800000 | 18999200000",
        "(17 + 2) +0/-0.05 | 18950000000 | 19000000000"
      })
  void tolerancesBecomeLimits(String size, long low, long high) {
    LengthRange limits = limits(MM + "part\nlength " + size);
    assertThat(limits.low().picometres()).isEqualTo(low);
    assertThat(limits.high().picometres()).isEqualTo(high);
  }

  /** 1.250 +-0.001 in is 31.7246 to 31.7754 mm exactly (converting limits, ISO/R 370 idea). */
  @Test
  void inchLimitsConvertExactly() {
    LengthRange limits = limits("units in\npart\nlength 1.250 +-0.001");
    assertThat(limits.low()).isEqualTo(Length.mm("31.7246"));
    assertThat(limits.high()).isEqualTo(Length.mm("31.7754"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"width/2", "(width + 2)/2", "96 / 2", "base / 3"})
  void aQuotientIsNotTakenForLimits(String size) {
    String text = MM + "let base = 4\npart\nwidth 30\nlength " + size;
    assertThat(findings(text)).singleElement().asString().startsWith("bad-value: limits are two");
  }

  @Test
  void limitsGiveTheirMiddleAsTheSize() {
    Plan plan = plan(MM + "part\nheight 18.97 / 19.00\nlength height");
    assertThat(
            requireNonNull(requireNonNull(plan.part()).dimension(PartDimension.LENGTH)).nominal())
        .isEqualTo(Length.mm("18.985"));
  }

  @Test
  void aToleranceLargerThanTheSizeIsReported() {
    assertThat(findings(MM + "part\nlength 1 +-1"))
        .containsExactly("bad-value: the tolerance is larger than the size");
  }

  // ---- Names
  // ----------------------------------------------------------------------------------------------------

  @Test
  void namesDoNotTellUpperFromLowerCase() {
    assertThat(picometres("mm", "let Edge = 3", "EDGE + edge")).isEqualTo(6_000_000_000L);
    assertThat(findings("let a = 1\nlet A = 2"))
        .containsExactly("duplicate-name: `A` is already declared");
    // The case of Turkish is not that of plans.
    assertThat(picometres("mm", "let INDEX = 3", "index")).isEqualTo(3_000_000_000L);
    assertThat(picometres("mm", "let H\u00d6HE = 3", "h\u00f6he")).isEqualTo(3_000_000_000L);
  }

  @Test
  void aDuplicateKeepsTheFirstAndPointsToIt() {
    Finding finding = plan("let a = 1\nlet a = 2").findings().get(0);
    assertThat(finding.related()).hasSize(1);
    assertThat(finding.related().get(0).origin().text()).isEqualTo("a");
    assertThat(picometres("mm", "let n = 3", "n")).isEqualTo(3_000_000_000L);
  }

  @Test
  void aValueIsKnownOnlyBelowItsLine() {
    assertThat(findings("let a = b\nlet b = 1"))
        .containsExactly("undefined-name: there is no value `b`");
    assertThat(findings("let a = a")).containsExactly("undefined-name: there is no value `a`");
  }

  /** One slip, one finding: what hangs on a line that cannot be read is not reported too. */
  @Test
  void aBrokenDeclarationIsNotReportedAgainWhereItsNameIsUsed() {
    assertThat(findings(MM + "let a = 1 3/8\nlet b = a\npart\nlength (b)")).hasSize(1);
    assertThat(findings(MM + "part\nlength = 5\nwidth (length/2)")).hasSize(1);
    assertThat(findings(MM + "part\nlength (3/0)\nwidth (length/2)")).hasSize(1);
    assertThat(
            findings(
                MM
                    + "part\n"
                    + "hole a in top, dia\n"
                    + "pattern p of a, row, count 2, at (1, 1), by (2, 0)"))
        .hasSize(1);
  }

  @Test
  void aMisspeltNameIsSuggestedAndTheFixMendsIt() {
    String text = MM + "let flange = 3\npart\nlength flagne";
    Plan plan = plan(text);
    assertThat(plan.findings()).hasSize(1);
    Finding finding = plan.findings().get(0);
    assertThat(finding.message()).isEqualTo("there is no value `flagne`; did you mean `flange`?");
    assertThat(finding.fixes().get(0).edits().get(0).text()).isEqualTo("flange");
    assertThat(findings(text.replace("flagne", "flange"))).isEmpty();
  }

  @Test
  void aNameWithADashThatMeansASubtractionIsFixed() {
    String base = MM + "let rib = 1\npart\nwidth 20\nlength ";
    for (String name : List.of("width-6", "width-rib", "WIDTH-rib")) {
      Finding finding = plan(base + name).findings().get(0);
      assertThat(finding.fixes().get(0).edits().get(0).text()).isEqualTo(name.replace("-", " - "));
    }
    assertThat(plan(base + "width-ring").findings().get(0).fixes()).isEmpty();
  }

  @Test
  void theSizesOfThePartAreValues() {
    Plan plan = plan(MM + "part\nheight 10 +0/-0.5\nwidth (height*2)\nlength (width + height)");
    assertThat(plan.findings()).isEmpty();
    assertThat(
            requireNonNull(requireNonNull(plan.part()).dimension(PartDimension.LENGTH)).nominal())
        .isEqualTo(Length.mm("30"));
    assertThat(findings("let width = 3 mm")).hasSize(1);
    assertThat(findings(MM + "let a = width\npart\nwidth 3")).hasSize(1);
  }

  // ---- Fits, threads, drills
  // ---------------------------------------------------------------------------------------

  @Test
  void fitsTellUpperFromLowerCase() {
    HoleSpec hole =
        requireNonNull(plan(MM + "part\nhole a in top, dia 12 H7, through").part()).holes().get(0);
    assertThat(hole.fit()).isEqualTo("H7");
    assertThat(hole.dia()).isEqualTo(Length.mm("12"));
    assertThat(findings(MM + "part\nhole a in top, dia 12 h7, through")).hasSize(1);
    assertThat(findings(MM + "part\nhole a in top, dia 12 JS7, through")).isEmpty();
    assertThat(findings(MM + "part\nhole a in top, dia 12 hole, through")).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "M6",
        "m6",
        "M8x1",
        "M5x0.8",
        "UNC 1/4-20",
        "UNF no 10-32",
        "BSW 1/4",
        "BA 2",
        "ME 3/16-40"
      })
  void threadsAreKeptAsWritten(String thread) {
    Plan plan = plan(MM + "part\nhole a in top, " + thread + ", thread 7, drill 12");
    assertThat(plan.findings()).isEmpty();
    HoleSpec hole = requireNonNull(plan.part()).holes().get(0);
    assertThat(hole.thread()).isEqualTo(thread);
    assertThat(hole.dia()).isNull();
    assertThat(hole.threadDepth()).isEqualTo(Length.mm("7"));
  }

  // ---- Speeds and feeds
  // -----------------------------------------------------------------------------------------------

  @Test
  void absurdSpeedsAndFeedsAreReported() {
    List<String> found = new ArrayList<>();
    for (String clause :
        List.of(
            "speed 0 rpm",
            "speed -5 rpm",
            "speed 5",
            "feed -1 thou/tooth",
            "feed 9999999999999999 mm/tooth")) {
      String text =
          MM
              + "use \"s.shop\"\n"
              + "part\n"
              + "length 9\n"
              + "width 9\n"
              + "height 9\n"
              + "stock\n"
              + "size 9 x 9 x 9\n"
              + "setup a\n"
              + "hold on table, up top\n"
              + "finish top to height, "
              + clause;
      SyntaxTree shop = SyntaxTree.parse("s.shop", "units mm");
      Plan plan = PlanFiles.build(Workspace.of(SyntaxTree.parse("x.plan", text), shop), "x.plan");
      assertThat(plan.findings()).as(clause).hasSize(1);
      found.add(plan.findings().get(0).rule());
    }
    assertThat(found)
        .containsExactly("bad-value", "bad-value", "bad-value", "bad-value", "overflow");
  }

  @Test
  void roughnessHasUnitsOfItsOwn() {
    assertThat(findings(MM + "part\nsurface top Ra 1.6")).isEmpty();
    assertThat(findings("units in\npart\nsurface top Ra 63")).isEmpty();
    assertThat(findings(MM + "part\nsurface top Ra 0.0016 mm")).isEmpty();
    assertThat(findings(MM + "part\nsurface top Ra 1.6 mm")).hasSize(1);
    assertThat(findings("plan\npart\nsurface top Ra 1.6")).hasSize(1);
    assertThat(Length.of("63", LengthUnit.UIN).isLessThan(Length.of("1.61", LengthUnit.UM)))
        .isTrue();
  }
}
