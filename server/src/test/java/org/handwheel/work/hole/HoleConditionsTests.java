package org.handwheel.work.hole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.CuttingConditions.SpeedFrom;
import org.handwheel.work.hole.HoleCalculator.Group;
import org.handwheel.work.hole.HoleConditions.TurnFrom;
import org.junit.jupiter.api.Test;

/** Speeds and feeds of tools for holes, on a plan for a steam cock's body. */
class HoleConditionsTests {
  private static final StandardTables TABLES = StandardTables.builtIn();
  private static final String SHOP =
      """
      language 1
      shop "Shed"
        units mm
      own machine mill
        lead-z: 2
        divisions-z: 100
        z-moves: quill
        speeds: 100, 200, 400, 800, 1600 rpm
        power: 0.5 kW
      own vise V
        jaw-width: 100
        jaw-depth: 30
        opening: 90
        trued: 0.01 over 100
      own parallels P
        thickness: 6
        height: 10
        length: 90
      own cutter SD
        kind: slot-drill
        dia: 12
        flute: 25
        made-of: carbide
      own drill D11
        dia: 11
        angle: 90 deg
      own material rail
        like: steel-mild
        speed-hss: 10 m/min
      own material rail-2
        like: steel-mild
        speed-hss: 10 m/min
        speed-drill: 8, 12 m/min
      """;

  private static List<Group> groups(String material, String holes, String steps) {
    String plan =
        """
        language 1
        plan "Cock body"
          units mm
          use "t.shop"
        part
          material %s
          length 60
          width 40
          height 30
        %s
        stock
          size 60 x 40 x 30
          milled left right front back top bottom
        setup one
          hold in V, up top, fixed back, on pair P
        %s
        """
            .formatted(material, holes.strip().indent(2).stripTrailing(), steps.strip().indent(2));
    Checked checked =
        new Checker(TABLES)
            .check(
                Workspace.of(SyntaxTree.parse("t.plan", plan), SyntaxTree.parse("t.shop", SHOP)),
                "t.plan");
    assertThat(checked.findings())
        .as(plan)
        .noneMatch(found -> found.rule().equals("syntax") || found.rule().equals("bad-value"));
    assertThat(checked.run()).isNotNull();
    return checked
        .run()
        .knownSteps()
        .flatMap(step -> HoleCalculator.of(checked.run(), step, TABLES).stream())
        .toList();
  }

  private static HoleConditions only(String material, String hole, String step) {
    List<Group> groups = groups(material, hole, step);
    assertThat(groups).hasSize(1);
    return groups.get(0).conditions();
  }

  /** Mild steel 24 to 33 m/min: 28.5 over 8 mm is 1134 rpm by n = 1000 v/(pi D); 800 is below. */
  @Test
  void aDrillTurnsAtTheStepBelow() {
    HoleConditions drill =
        only("steel-mild", "hole a in top, dia 8, depth 20, at (30, 20)", "drill a");
    assertThat(drill.spindle()).isNotNull();
    assertThat(drill.spindle().wanted()).isCloseTo(1133.98, within(0.01));
    assertThat(drill.spindle().turnsPerMinute()).isEqualTo(800);
    assertThat(drill.spindle().from()).isEqualTo(SpeedFrom.STEP);
    assertThat(drill.pecks()).isEqualTo(1);
  }

  /** 0.102 to 0.178 mm a turn over 1/4 in, its middle 0.1397; 800 rpm of it are 111.76 mm/min. */
  @Test
  void itsFeedIsThatOfItsDiameterAndTheHandleFollows() {
    HoleConditions drill =
        only("steel-mild", "hole a in top, dia 8, depth 20, at (30, 20)", "drill a");
    assertThat(drill.feed()).isNotNull();
    assertThat(drill.feed().from()).isEqualTo(TurnFrom.USUAL);
    assertThat(drill.feed().perTurn()).isEqualTo(Length.mm("0.1397"));
    assertThat(drill.down()).isNotNull();
    assertThat(drill.down().millimetresPerMinute()).isCloseTo(111.76, within(1e-9));
    assertThat(drill.down().hand()).isNotNull();
    assertThat(drill.down().hand().secondsPerTurn()).isCloseTo(120 / 111.76, within(1e-9));
    // 20 mm and a point of 8/(2 tan 59 deg) = 2.4034 mm
    assertThat(drill.seconds()).isCloseTo(60 * 22.4034 / 111.76, within(1e-3));
  }

  /** 21 mm into 4 mm is five diameters: 0.7 of the speed, 0.8 of the feed, and out for chips. */
  @Test
  void aDeepHoleIsDrilledSlowerAndInPecks() {
    HoleConditions drill =
        only("steel-mild", "hole a in top, dia 4, depth 21, at (30, 20)", "drill a, depth 21");
    assertThat(drill.asked().diametersDeep()).isEqualTo(5);
    assertThat(drill.spindle()).isNotNull();
    assertThat(drill.spindle().wanted()).isCloseTo(0.7 * 2267.96, within(0.01));
    assertThat(drill.feed()).isNotNull();
    assertThat(drill.feed().usual())
        .isEqualTo(new LengthRange(Length.inches("0.0016"), Length.inches("0.0032")));
    assertThat(drill.pecks()).isEqualTo(6);
  }

  @Test
  void aPeckThatIsSaidIsCounted() {
    HoleConditions drill =
        only("steel-mild", "hole a in top, dia 8, depth 20, at (30, 20)", "drill a, peck 6");
    assertThat(drill.pecks()).isEqualTo(4);
  }

  /** Half of 28.5 m/min over 10 mm: 453.6 rpm. */
  @Test
  void aReamerTurnsHalfAsFastAndIsFedTwoToThreeTimesAsMuch() {
    List<Group> groups =
        groups(
            "steel-mild",
            "hole a in top, dia 10 H7, through, at (30, 20)",
            "drill a 9.8\nream a 10 mm");
    HoleConditions reamer = groups.get(1).conditions();
    assertThat(reamer.spindle()).isNotNull();
    assertThat(reamer.spindle().wanted()).isCloseTo(453.59, within(0.01));
    assertThat(reamer.feed()).isNotNull();
    assertThat(reamer.feed().usual())
        .isEqualTo(new LengthRange(Length.inches("0.008"), Length.inches("0.021")));
  }

  @Test
  void aTapByHandHasTurnsAndNoSpeed() {
    List<Group> groups =
        groups(
            "steel-mild",
            "hole a in top, M8, thread 15, drill 20, at (30, 20)",
            "drill a 6.8\ntap a by hand");
    HoleConditions tap = groups.get(1).conditions();
    assertThat(tap.spindle()).isNull();
    assertThat(tap.seconds()).isNull();
    assertThat(tap.turns()).isEqualTo(12);
    assertThat(tap.feed()).isNotNull();
    assertThat(tap.feed().perTurn()).isEqualTo(Length.mm("1.25"));
  }

  @Test
  void aTapUnderPowerGoesInByItsPitch() {
    List<Group> groups =
        groups(
            "steel-mild",
            "hole a in top, M8, thread 15, drill 20, at (30, 20)",
            "drill a 6.8\ntap a");
    HoleConditions tap = groups.get(1).conditions();
    assertThat(tap.feed()).isNotNull();
    assertThat(tap.feed().from()).isEqualTo(TurnFrom.PITCH);
    assertThat(tap.spindle()).isNotNull();
    assertThat(tap.down()).isNotNull();
    assertThat(tap.down().millimetresPerMinute())
        .isCloseTo(1.25 * tap.spindle().turnsPerMinute(), within(1e-9));
  }

  /** As a slot drill of carbide mills: 90 to 180 m/min. */
  @Test
  void aBoringEdgeTakesTheMillingSpeedOfItsStuff() {
    List<Group> groups =
        groups(
            "steel-mild",
            "hole a in top, dia 24, through, at (30, 20)",
            "drill a 12\nbore a 24, with SD");
    HoleConditions bore = groups.get(1).conditions();
    assertThat(bore.usualSpeed()).isNotNull();
    assertThat(bore.usualSpeed().low()).isEqualTo(90);
    assertThat(bore.feed()).isNotNull();
    assertThat(bore.feed().usual())
        .isEqualTo(new LengthRange(Length.mm("0.03"), Length.mm("0.08")));
  }

  @Test
  void whatTheLineSaysGoesFirst() {
    HoleConditions drill =
        only(
            "steel-mild",
            "hole a in top, dia 8, depth 20, at (30, 20)",
            "drill a, speed 500 rpm, feed 60 mm/min");
    assertThat(drill.spindle()).isNotNull();
    assertThat(drill.spindle().turnsPerMinute()).isEqualTo(500);
    assertThat(drill.feed()).isNotNull();
    assertThat(drill.feed().from()).isEqualTo(TurnFrom.STATED);
    assertThat(drill.feed().perTurn()).isEqualTo(Length.mm("0.12"));
    assertThat(drill.seconds()).isCloseTo(22.4034, within(1e-3));
  }

  /** Opening 13 to 25 mm at once would take more than half a kilowatt; fed less it does not. */
  @Test
  void theFeedIsHeldToWhatTheMotorGives() {
    List<Group> groups =
        groups("steel-mild", "hole a in top, dia 25, through, at (30, 20)", "drill a 13 then 25");
    HoleConditions drill = groups.get(1).conditions();
    assertThat(drill.feed()).isNotNull();
    assertThat(drill.feed().from()).isEqualTo(TurnFrom.MOTOR);
    assertThat(drill.load()).isNotNull();
    assertThat(drill.load().motorKilowatts()).isCloseTo(0.5, within(1e-6));
  }

  /** A handle of 2 mm a turn, a turn in 0.7 s at the fastest: 171.43 mm/min, 0.1071 at 1600 rpm. */
  @Test
  void theFeedIsHeldToWhatAHandWinds() {
    HoleConditions drill =
        only(
            "steel-mild", "hole a in top, dia 7, depth 20, at (30, 20)", "drill a, speed 1600 rpm");
    assertThat(drill.feed()).isNotNull();
    assertThat(drill.feed().from()).isEqualTo(TurnFrom.BY_HAND);
    assertThat(drill.feed().perTurn().millimetres()).isCloseTo(60 * 2 / 0.7 / 1600, within(1e-9));
    assertThat(drill.feed().usual()).isNotNull();
  }

  /**
   * Two lips, each a chip of f/2 sin(59 deg): M = kc f (D^2 - d^2) / 8 (geometry), P = 2 pi M n /
   * 60, and a quarter is lost in the drive.
   */
  @Test
  void whatADrillTakesOfTheMotor() {
    HoleConditions drill =
        groups(
                "steel-mild",
                "hole a in top, dia 12, depth 20, at (30, 20)",
                "drill a, 6, speed 400 rpm, feed 0.1 mm/rev\n"
                    + "drill a, 12, speed 400 rpm, feed 0.1 mm/rev")
            .get(1)
            .conditions();
    var force = TABLES.materials().find("steel-mild").orElseThrow().force();
    double chip = 0.1 / 2 * Math.sin(Math.toRadians(59));
    double torque = force.kc11() * Math.pow(chip, -force.mc()) * 0.1 * (144 - 36) / 8 / 1000;
    assertThat(drill.load()).isNotNull();
    assertThat(drill.load().torque()).isCloseTo(torque, within(1e-6));
    assertThat(drill.load().motorKilowatts())
        .isCloseTo(torque * 2 * Math.PI * 400 / 60 / 1000 / 0.75, within(1e-6));
  }

  /** A drill ground to 90 degrees takes a thinner chip, f/2 sin 45, and so more of the motor. */
  @Test
  void thePointOfTheDrillCounts() {
    HoleConditions drill =
        only(
            "steel-mild",
            "hole a in top, dia 11, depth 20, at (30, 20)",
            "drill a, speed 400 rpm, feed 0.1 mm/rev");
    double chip = 0.05 * Math.sin(Math.toRadians(45));
    // kc1.1 of 1600 and mc of 0.22: the row of mild steel.
    double torque = 1600 * Math.pow(chip, -0.22) * 0.1 * 121 / 8 / 1000;
    assertThat(drill.load()).isNotNull();
    assertThat(drill.load().torque()).isCloseTo(torque, within(1e-6));
  }

  @Test
  void onlyDrillsPeckAndOnlyTheyAreLoaded() {
    List<Group> groups =
        groups(
            "steel-mild",
            "hole a in top, dia 10 H7, through, at (30, 20)",
            "drill a 9.8, peck 5\nream a 10 mm");
    // 30 mm in fives.
    assertThat(groups.get(0).conditions().pecks()).isEqualTo(6);
    HoleConditions reamer = groups.get(1).conditions();
    assertThat(reamer.pecks()).isEqualTo(1);
    assertThat(reamer.load()).isNull();
    assertThat(reamer.turns()).isNull();
    assertThat(groups.get(0).conditions().turns()).isNull();
  }

  /** A hole in a face that does not look up is not made, so nothing is said of its tool. */
  @Test
  void whatCannotBeReachedHasNoConditions() {
    assertThat(groups("steel-mild", "hole a in front, dia 8, depth 20, at (30, 10)", "drill a"))
        .isEmpty();
  }

  @Test
  void likeHolesStandTogether() {
    List<Group> groups =
        groups(
            "steel-mild",
            "hole a in top, dia 6, through, at (15, 20)\n"
                + "hole b in top, dia 6, through, at (45, 20)\n"
                + "hole c in top, dia 8, through, at (30, 20)",
            "drill a, b, c");
    assertThat(groups).extracting(Group::holes).containsExactly(List.of("a", "b"), List.of("c"));
  }

  @Test
  void theShopsOwnMaterialHasItsOwnSpeeds() {
    String hole = "hole a in top, dia 8, depth 20, at (30, 20)";
    assertThat(only("rail", hole, "drill a").usualSpeed()).isNotNull();
    assertThat(only("rail", hole, "drill a").usualSpeed().middle()).isEqualTo(10);
    assertThat(only("rail-2", hole, "drill a").usualSpeed().low()).isEqualTo(8);
  }

  @Test
  void ofAnUnknownMaterialNothingIsClaimed() {
    HoleConditions drill =
        only("moon-rock", "hole a in top, dia 8, depth 20, at (30, 20)", "drill a");
    assertThat(drill.usualSpeed()).isNull();
    assertThat(drill.spindle()).isNull();
    assertThat(drill.seconds()).isNull();
    assertThat(drill.load()).isNull();
  }
}
