package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.handwheel.shop.StandardTables;
import org.handwheel.work.CuttingCalculator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What is told under the cursor. Numbers are checked against hand calculation, shown beside. */
final class HoverTests {
  private static final RulePages PAGES =
      rule ->
          rule.equals("heavy-pass")
              ? Optional.of("# heavy-pass\n\nA pass is deeper than\nthe machine takes.\n\n## Why\n")
              : Optional.empty();

  private static final String PART =
      """
      part
        material gunmetal-LG2
        length 56.00 +-0.10
        width 30.00 +0/-0.05
        height 21.00 +0/-0.05
        datum A top
        hole journal in top, dia 14 H7, at (28, width/2) from left front, through
        hole oilway in front, M6, thread 7, drill 12, at (28, 10.5) from left bottom
      stock
        size 60 x 33.5 x 24.5
        cast front back top bottom
        sawn left right
      """;

  private static final String SETUP =
      """
      setup one "Top, from the casting skin"
        hold in V80, up top, fixed back, on pair P6x10
        cutter FC40
        touch top with paper 0.05, zero z
        lock y z
        clean top at 0.4, at most 1.2, travel left to right, offset 2 toward front
        deburr edges of top
      """;

  private static final String HOLES =
      """
      setup two
        hold in V80, up top, fixed back, on pair P6x10
        find left from operator-left with finder F5, zero x at edge
        find front from operator-front with finder F5, zero y at edge
      """;

  @Test
  void aLineOnHolesTellsWhereTheyAreOnTheDials() {
    // 28 mm are 1102.4 thou: 11 turns of 100 and 2; 15 mm are 590.6: 5 turns and 91.
    String text = plain(Fixture.HEAD + PART + HOLES + "  [[dr$0ill]] journal 8 then 13.75\n");
    assertThat(text).contains("drill, one hole", "X from: the left edge");
    assertThat(text).contains("journal: X 28.00 mm (1.1024 in) = 11 turns + 2; Y 15.00 mm");
    assertThat(text).contains("= 5 turns + 91", "through, its end");
    // 52.5 m/min, the middle of 40 to 65, over 8 mm
    assertThat(text).contains("8 mm, speed: ", "not above 2089 rpm", "8 mm, feed: 0.14 mm");
    assertThat(text).contains("one turn of the z handle in", "s of cutting a hole");
  }

  @Test
  void theGeneralToleranceTellsTheLimitsOfEachSize() {
    String iso = plain(general("[[toler$0ance]] ISO 2768 m"));
    // ISO 2768-1 Table 1, m: 0.3 over 30 to 120, 0.2 over 6 to 30
    assertThat(iso)
        .contains("length 48.00 mm (1.8898 in): 47.70..48.30 mm", "height 19.00 mm")
        .contains("hole oil, dia 8.00 mm (0.315 in): 7.80..8.20 mm", "ISO 2768-1:1989, table 1")
        .doesNotContain("width");
    String block = plain(general("[[toler$0ance]] 0.0 +-0.2, 0.00 +-0.05"));
    assertThat(block)
        .contains("one place: +-0.20 mm (7.9 thou)", "2 places: +-0.05 mm (2 thou)")
        .contains("length 48.00 mm (1.8898 in): 47.95..48.05 mm")
        .contains("height 19.00 mm (0.748 in): 18.80..19.20 mm")
        .contains("One size is not covered");
  }

  @Test
  void aSizeNamesWhatSetsItsLimits() {
    assertThat(
            plain(
                general("tolerance 0.0 +-0.2, 0.00 +-0.05").replace("  length", "  [[len$0gth]]")))
        .contains("Limits: 47.95..48.05 mm (1.8878..1.8917 in) (general tolerance by the places");
    assertThat(plain(general("tolerance ISO 2768 c").replace("hole oil", "hole [[o$0il]]")))
        .contains("Limits: 7.50..8.50 mm (0.2953..0.3346 in) (general tolerance)");
  }

  /** 48 +-0.3 less 20 +-0.2 less half of 8 +-0.2, all class m of ISO 2768-1: 24 +-0.6 at worst. */
  @Test
  void aHoleTellsItsWallsWithTheirTolerances() {
    String text =
        plain(
            general("tolerance ISO 2768 m")
                .replace(
                    "hole oil in top, dia 8, through",
                    "hole [[o$0il]] in top, dia 8, depth 12, at (20, 15)"));
    assertThat(text)
        .contains("Wall to the right: 24.00 mm (0.9449 in), 23.40..24.60 mm (0.9213..0.9685 in)")
        .contains("at worst, 23.626..24.374 mm")
        .contains("Left below it: 7.00 mm (0.2756 in), 6.60..7.40 mm")
        .contains("root of the sum of the squares");
  }

  @Test
  void aSlotTellsTheLimitsOfItsSizes() {
    String text =
        plain(
            general("tolerance ISO 2768 m")
                .replace(
                    "hole oil in top, dia 8, through",
                    "slot [[o$0il]] in top, width 5 +0.03/-0, length 20, depth 3, at (24, 15)"));
    // ISO 2768-1 table 1, m: 0.2 over 6 to 30
    assertThat(text)
        .contains("Limits of the width: 5.00..5.03 mm (0.1969..0.198 in)")
        .contains("Limits of the length: 19.80..20.20 mm")
        .contains("(general tolerance)");
  }

  private static String general(String line) {
    return "language 1\nplan \"Oil box\"\n  units mm\npart\n  "
        + line
        + "\n  length 48.00\n  width 30 +-0.1\n  height 19.0\n  hole oil in top, dia 8, through\n";
  }

  /** (9 - 4.5)/2 at 90 deg, /(2 tan 41 deg) at 82: 2.25 and 2.588 mm. */
  @Test
  void aHoleTellsItsSeatsAndWhereThePointGoes() {
    String sunk =
        general("flat top 0.1")
            .replace(
                "hole oil in top, dia 8, through",
                "hole [[o$0il]] in top, dia 4.5, at (9, 9), through, countersink dia 9");
    assertThat(plain(sunk)).contains("Countersink: 9.00 mm", "2.25 mm", "2.588 mm");
    String bored =
        general("flat top 0.1")
            .replace(
                "hole oil in top, dia 8, through",
                "hole [[o$0il]] in top, dia 5.5, at (9, 9), depth 12, counterbore dia 10 depth 5.4");
    // 12 and 5.5/(2 tan 59 deg) = 1.652
    assertThat(plain(bored))
        .contains("Counterbore: 10.00 mm (0.3937 in), 5.40 mm", "reaches 13.652 mm");
  }

  /** 0.05 over 0.01 and 0.004: five to one, twelve and a half to one. */
  @Test
  void aMeasurementTellsHowFineItIs() {
    String head = Fixture.HEAD + PART.replaceAll("height [^\n]*", "height 21.00 +0/-0.05");
    String text = plain(head + SETUP + "  [[mea$0sure]] height with mic25\n");
    assertThat(text)
        .contains("Tolerance: 0.05 mm (2 thou) in all")
        .contains("By what it shows: 5 to one: will do")
        .contains("By what it is good to: 12.5 to one: good");
  }

  @Test
  void aDrillTellsItsPointAndWhatItTaps() {
    String head = Fixture.HEAD + PART + HOLES;
    assertThat(plain(head + "  drill oilway [[no$0 9]]\n"))
        .contains("4.978 mm (0.196 in)", "long at 118 deg", "at 135 deg");
    assertThat(plain(head + "  drill oilway [[$05]]\n"))
        .contains("Drill 5 mm: 5.00 mm (0.1969 in)", "Tapping drill of: M6", "86.00 mm");
  }

  @Test
  void aMaterialOfTheShopsOwnGoesBeforeTheTables() {
    String text =
        "language 1\nplan \"Pump rod\"\n  units mm\npart\n  material [[cop$0per]]\n"
            + "  length 20\n";
    assertThat(plain(text)).contains("copper: copper C101", "Cutting speed, drill", "kc1.1");
  }

  @Test
  void aHoleInALineTellsItsOwnRowAndItsState() {
    String text =
        plain(Fixture.HEAD + PART + HOLES + "  drill journal 13.75\n  ream [[jour$0nal]]\n");
    assertThat(text).contains("hole journal in the top", "11 turns + 2");
    assertThat(text).contains("Before this line: drilled 13.75 mm (0.5413 in), through");
  }

  private static String plain(String marked) {
    return hover(marked).text().plain();
  }

  private static Hovers.Hover hover(String marked) {
    Fixture fixture = Fixture.plan(marked);
    Hovers.Hover hover = Hovers.at(fixture.view(), fixture.cursor(), PAGES).orElseThrow();
    if (!fixture.ranges().isEmpty()) {
      assertThat(fixture.text().substring(hover.start(), hover.end()))
          .isEqualTo(
              fixture.text().substring(fixture.ranges().get(0)[0], fixture.ranges().get(0)[1]));
    }
    return hover;
  }

  private static String withSetup(String from, String to) {
    String text = Fixture.HEAD + PART + SETUP;
    assertThat(text).contains(from);
    int at = text.indexOf(from);
    return text.substring(0, at) + to + text.substring(at + from.length());
  }

  @Test
  void aLengthInBothUnitsWithTheNearestFraction() {
    // 1/64 in = 0.396875 mm, 0.003125 mm (0.123 thou) less than 0.4 mm.
    assertThat(plain(withSetup("at 0.4,", "at [[0$0.4]],")))
        .contains("0.40 mm (15.7 thou)")
        .contains("Exactly: 0.4 mm, about 0.015748 in")
        .contains("1/64 in, which is 0.003 mm (0.1 thou) less");
  }

  @Test
  void aLengthAtTheDialOfTheAxisThatIsWound() {
    // 0.4 mm is 15.748 thou; the dial has 100 divisions of 1 thou: 16, which is 0.252 thou too far.
    assertThat(plain(withSetup("at 0.4,", "at 0$0.4,")))
        .contains("On the Z dial: 16 divisions, 0.006 mm (0.3 thou) too far")
        .contains("Handle: turn the Z handle clockwise: the quill goes down")
        .contains("Z: 2.54 mm (0.100 in) a turn, 100 divisions of 0.0254 mm (1 thou)");
  }

  @Test
  void anOffsetIsWoundOnTheAxisAcross() {
    // 2 mm is 78.74 thou: 79 divisions, 0.26 thou too far. The front is toward the operator, so the
    // table goes away from the operator, which is clockwise on this machine's Y handle.
    assertThat(plain(withSetup("offset 2", "offset $02")))
        .contains("On the Y dial: 79 divisions, 0.007 mm (0.3 thou) too far")
        .contains("turn the Y handle clockwise: the table goes away from you");
  }

  @Test
  void aSumShowsItsValue() {
    assertThat(plain(withSetup("width/2)", "width/$02)")))
        .contains("width/2 = 15.00 mm (0.5906 in)");
  }

  @Test
  void aSizeOfTheStock() {
    assertThat(plain(withSetup("size 60 x 33.5", "size 60 x [[33.$05]]")))
        .contains("33.50 mm (1.3189 in)");
  }

  @Test
  void aCutTellsSizesWaysSpeedAndFeed() {
    String text = plain(withSetup("  clean top at", "  [[cle$0an]] top at"));
    // Stock 24.5 +-0.3; 0.4 to 1.2 comes off: 23.7 +-0.7.
    assertThat(text)
        .contains("The height before: 24.50 mm (0.9646 in), give or take 0.30 mm (11.8 thou)")
        .contains("The height after: 23.70 mm (0.9331 in), give or take 0.70 mm (27.6 thou)")
        .contains("The cutter goes: right along the work")
        .contains("turn the X handle clockwise: the table goes left")
        .contains("Lock: Y and Z")
        .contains("mixed, mostly")
        .containsPattern("Wind in: .*; turn the Z handle clockwise: the quill goes down")
        .contains("starting points")
        .contains("the machine maker's manual and local rules come first")
        .contains("speed in rpm = 1000 v");
  }

  @Test
  void theSpindleStepIsTheNearestNotAbove() {
    // Carbide in gunmetal at the middle of the table's range on a 40 mm cutter: n = 1000 v/(pi 40).
    var material = StandardTables.builtIn().materials().find("gunmetal-LG2").orElseThrow();
    double wanted = 1000 * material.speeds().carbide().middle() / (Math.PI * 40);
    double step =
        DoubleStream.of(95, 180, 270, 500, 930, 1420, 2100)
            .filter(speed -> speed <= wanted)
            .max()
            .orElseThrow();
    assertThat(plain(withSetup("  clean top", "  cle$0an top")))
        .contains("Spindle speed: " + Math.round(step) + " rpm");
  }

  @Test
  void theShopsOwnMaterialGoesBeforeTheTables() {
    // The middle of 20 to 30 m/min on a 40 mm cutter: 1000 x 25 / (pi 40) = 199, the step below
    // 180.
    String shop =
        """
        language 1
        shop "Own"
          units mm

        own material sea-bronze
          like: gunmetal-LG2
          speed-carbide: 20, 30 m/min
        """;
    String marked =
        withSetup("  clean top", "  cle$0an top")
            .replace("material gunmetal-LG2", "material sea-bronze")
            .replace(
                "use \"" + Fixture.SHOP + "\"", "use \"own.shop\"\n  use \"" + Fixture.SHOP + "\"");
    Fixture fixture = Fixture.of("keep.plan", marked, Map.of("own.shop", shop));
    assertThat(Hovers.at(fixture.view(), fixture.cursor(), PAGES).orElseThrow().text().plain())
        .contains("Spindle speed: 180 rpm");
  }

  @Test
  void theHandFeedIsSecondsForOneTurnAndDivisionsASecond() {
    // 0.1 x 4 teeth x 500 rpm = 200 mm/min; a turn is 2.54 mm in 100 divisions: 60 x 2.54 / 200 =
    // 0.762 s, and 100 / 0.762 = 131.2 divisions a second.
    assertThat(
            plain(
                withSetup(
                    "  clean top at 0.4, at most 1.2,",
                    "  cle$0an top at 0.4, at most 1.2, speed 500 rpm, feed 0.1 mm/tooth,")))
        .contains("as planned 500 rpm")
        .contains("one turn of the X handle in 0.8 s, 131.2 divisions a second");
  }

  @Test
  void aUsualFeedIsNoFasterThanAHandCanWind() {
    // 60 x 2.54 / 0.7 s = 217.7 mm/min; over 4 teeth and 500 rpm that is 0.109 mm.
    assertThat(
            plain(
                withSetup(
                    "  clean top at 0.4, at most 1.2,",
                    "  cle$0an top at 0.4, at most 1.2, speed 500 rpm,")))
        .contains("0.109 mm (4.3 thou) a tooth (as fast as a hand keeps up; usual is 0.18 mm")
        .contains("one turn of the X handle in 0.7 s");
  }

  /** Hover and {@code handwheel speeds} are two views of one calculation. */
  @Test
  void aCutsSpeedAndFeedAreThoseOfTheCalculator() {
    Fixture fixture = Fixture.plan(withSetup("  clean top", "  cle$0an top"));
    var run = fixture.view().run();
    var step =
        run.setups().stream()
            .flatMap(setup -> setup.steps().stream())
            .filter(each -> each.cut() != null)
            .findFirst()
            .orElseThrow();
    var conditions = CuttingCalculator.of(run, step).orElseThrow();
    String text = Hovers.at(fixture.view(), fixture.cursor(), PAGES).orElseThrow().text().plain();
    assertThat(text)
        .contains(
            "Spindle speed: "
                + QuantityText.number(conditions.spindle().turnsPerMinute(), 0)
                + " rpm")
        .contains(QuantityText.perMinute(conditions.table().millimetresPerMinute()) + " for ")
        .contains(
            QuantityText.number(conditions.table().hand().divisionsPerSecond(), 1)
                + " divisions a second");
  }

  @Test
  void aFaceTellsItsStateAndWhatItIsSquareTo() {
    assertThat(plain(withSetup("up top,", "up [[t$0op]],")))
        .contains("top, before this line: as cast");
    String plan =
        Fixture.example("bearing-block.plan").replace("rough left to", "rough [[le$0ft]] to");
    assertThat(plain(plan)).contains("left, before this line: as sawn");
    String end =
        Fixture.example("bearing-block.plan").replace("square C to A", "square C to [[$0A]]");
    assertThat(plain(end))
        .contains("datum A: the top")
        .contains("Square to the back: within ")
        .contains("Parallel to the bottom: within ");
  }

  @Test
  void aHeaderAndAHoldTellJawsAndGrip() {
    // Width 33.5 +-0.3 between the jaws; 24.5 high on 10 mm parallels in 25 mm jaws: 9.5 stands
    // out.
    String text = plain(withSetup("setup one", "set$0up one"));
    assertThat(text)
        .contains("setup one: Top, from the casting skin")
        .contains("Jaws open: 33.80 mm (1.3307 in) of 70.00 mm (2.7559 in)")
        .contains("Stands above the jaws: 9.20..9.80 mm (0.3622..0.3858 in)")
        .contains("Fixed jaw: bears on the back")
        .contains("Sits: on the bottom, 10.00 mm (0.3937 in) above the bed")
        .contains("Front to back ruled by: nothing: ")
        .contains("wear eye protection");
    assertThat(plain(withSetup("  hold in", "  ho$0ld in"))).contains("Form: hold in VISE");
  }

  @Test
  void aThreadHasItsTappingDrillAndClearanceHoles() {
    // ISO 261: M6 has pitch 1; tapping drill 5.0; ISO 273 clearance 6.4 close, 6.6 normal, 7 free.
    assertThat(plain(withSetup("M6,", "$0M6,")))
        .contains("Tapping drill: 5 mm, which is 5.00 mm (0.1969 in)")
        .contains("Clearance hole, close: 6.40 mm")
        .contains("Clearance hole, normal: 6.60 mm")
        .contains("Clearance hole, free: 7.00 mm");
  }

  @Test
  void aFitHasItsLimits() {
    // ISO 286-2: 14 H7 is 14.000 to 14.018.
    assertThat(plain(withSetup("14 H7", "14 [[H$07]]"))).contains("Limits: 14.00..14.018 mm");
  }

  @Test
  void aDrillInBothUnits() {
    // ASME B94.11M: no 7 is 0.201 in = 5.1054 mm.
    String plan =
        withSetup("  deburr edges", "  cutter FC40\n  drill oilway, [[n$0o 7]]\n  deburr edges");
    assertThat(plain(plan)).contains("Drill no 7: 5.105 mm (0.201 in)");
  }

  @Test
  void aMaterialHasSpeedsDensityAndGroup() {
    assertThat(plain(withSetup("gunmetal-LG2", "[[gunm$0etal-LG2]]")))
        .contains("gunmetal-LG2: ")
        .contains("Cutting speed, high-speed steel: ")
        .contains("kg/m3")
        .contains("ISO 513 N");
  }

  @Test
  void anOwnedThingHasItsProperties() {
    assertThat(plain(withSetup("in V80", "in [[V8$00]]")))
        .contains("vise V80: Screw vise, 80 mm jaws")
        .contains("jaw-width: 80.00 mm (3.1496 in)")
        .contains("Owned in shop/inch-mill.shop.");
    assertThat(plain(withSetup("cutter FC40", "cutter FC4$00"))).contains("teeth: 4");
  }

  @Test
  void aNamedValueInBothUnits() {
    String plan =
        Fixture.HEAD
            + "  let rib = 1/4 in + 1 mm\n"
            + PART.replace("(28, 10.5)", "(28, [[ri$0b]])")
            + SETUP;
    // 6.35 + 1 = 7.35 mm.
    assertThat(plain(plan))
        .contains("rib = 7.35 mm (0.2894 in)")
        .contains("Written: let rib = 1/4 in + 1 mm");
  }

  @Test
  void aHoleHasItsSizes() {
    assertThat(plain(withSetup("hole journal", "hole jour$0nal")))
        .contains("hole journal in the top")
        .contains("Diameter: 14.00 mm (0.5512 in)")
        .contains("14.00..14.018 mm")
        .contains("Depth: through");
  }

  @Test
  void aSizeOfTheDrawingHasAimAndLimits() {
    // 21 +0/-0.05: aim 20.975.
    assertThat(plain(withSetup("  height 21", "  heig$0ht 21")))
        .contains("Aim: 20.975 mm (0.8258 in), the middle of the limits")
        .contains("Limits: 20.95..21.00 mm")
        .contains("Stock: 24.50 mm (0.9646 in), 3.50 mm (0.1378 in) more than the part");
    String plan =
        Fixture.example("bearing-block.plan")
            .replace("finish bottom to height", "finish bottom to [[hei$0ght]]");
    assertThat(plain(plan)).contains("to height: this cut goes to 20.975 mm");
  }

  @Test
  void aWordHasItsFormAndMeaning() {
    assertThat(plain(withSetup("at most", "at m$0ost")))
        .contains("at most DEPTH")
        .contains("The most that may come off");
    assertThat(plain(withSetup("  touch top", "  to$0uch top"))).contains("until it just touches");
  }

  @Test
  void aLineAtTheDialsTellsHowTheyStandAfterIt() {
    String touched = plain(withSetup("  touch top", "  to$0uch top"));
    assertThat(touched)
        .contains("until it just touches")
        .contains("X after this line: no zero")
        .containsPattern("Z after this line: zero at the top from line [0-9]+\n")
        .contains("In the spindle: FC40, 40.00 mm")
        .contains("At zero the cutter stands 0.05 mm (2 thou) off the face");
    assertThat(plain(withSetup("  lock y z", "  lo$0ck y z")))
        .contains("X after this line: no zero")
        .containsPattern("Y after this line: no zero; locked in line [0-9]+\n")
        .containsPattern("Z after this line: zero at the top .*; locked in line");
    String changed =
        plain(
            Fixture.HEAD
                + PART
                + HOLES
                + "  cutter EM16\n  touch top, zero z\n  cutter EM10\n  [[lo$0ck]] x y\n");
    // A finder's zero is the spindle's axis, whatever is in the spindle; a touch was the cutter's.
    assertThat(changed)
        .containsPattern("X after this line: zero from line [0-9]+; locked")
        .containsPattern(
            "Z after this line: no zero: the one at the top from line [0-9]+ is lost, ")
        .contains("the cutter was changed in line");
  }

  @Test
  void anAxisHasItsDial() {
    assertThat(plain(withSetup("lock y z", "lock $0y z")))
        .contains("Y, across the table")
        .contains("Backlash");
  }

  @Test
  void aSilencedRuleHasItsPage() {
    String plan = withSetup("lock y z", "lock y z   # ignore heavy-p$0ass: soft metal");
    assertThat(plain(plan))
        .contains("A pass is deeper than the machine takes.")
        .doesNotContain("Why");
  }

  @Test
  void markdownCannotBeMadeByThePlan() {
    String plan =
        withSetup("Top, from the casting skin", "Top *bold* <b>[x](y)")
            .replace("setup one", "set$0up one");
    assertThat(hover(plan).text().markdown())
        .startsWith("**setup one: Top \\*bold\\* \\<b\\>\\[x\\](y)**")
        .contains("- Jaws open: ")
        .contains("*How it is worked out*");
  }

  @Tag("long")
  @Test
  void everyPlaceOfTheExamplesCanBeAsked() {
    String text = Fixture.example("bearing-block.plan");
    Fixture fixture = Fixture.plan(text);
    int told = 0;
    for (int offset = 0; offset <= text.length(); offset++) {
      Optional<Hovers.Hover> hover = Hovers.at(fixture.view(), offset, PAGES);
      if (hover.isPresent()) {
        told++;
        assertThat(hover.get().start()).isLessThanOrEqualTo(offset);
        assertThat(hover.get().end()).isGreaterThanOrEqualTo(offset);
        assertThat(hover.get().text().markdown()).doesNotContain("null");
      }
    }
    assertThat(told).isGreaterThan(text.length() / 2);
  }

  @Test
  void aShopFileTellsItsValuesToo() {
    Fixture fixture =
        Fixture.shop("language 1\nshop \"Shed\"\n  units in\nown vise V\n  jaw-width: 80 m$0m\n");
    assertThat(Hovers.at(fixture.view(), fixture.cursor(), PAGES).orElseThrow().text().plain())
        .contains("80.00 mm (3.1496 in)");
    Fixture name =
        Fixture.of(
            "mine.shop", "shop \"S\"\n  units in\nown vise V$0V\n  jaw-width: 3\n", Map.of());
    assertThat(Hovers.at(name.view(), name.cursor(), PAGES).orElseThrow().text().plain())
        .contains("jaw-width: 76.20 mm (3.000 in)");
  }
}
