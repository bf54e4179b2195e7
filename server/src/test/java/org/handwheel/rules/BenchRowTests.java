package org.handwheel.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.handwheel.model.Direction;
import org.handwheel.model.Owned.Hand;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.reference.CheckRow;
import org.handwheel.reference.RowChecks;
import org.handwheel.units.Length;
import org.handwheel.work.Engagement;
import org.handwheel.work.Grip;

/**
 * The check values of holding and cutting, each named with its source and how that is known.
 *
 * <p>Not here: how much wider than the face a face mill is, slotting depth and stick-out, for which
 * there are no rules, and drilling through above a parallel.
 */
class BenchRowTests implements RowChecks {
  private static final String CAST = "cast front back top bottom";
  private static final String SAWN = "sawn left right";

  @Override
  public Map<String, Consumer<CheckRow>> checks() {
    return new Builder()
        .row("B28", BenchRowTests::bar)
        .row("B30", BenchRowTests::seat)
        .row("B32", BenchRowTests::solidJaw)
        .row("B37", BenchRowTests::entry)
        .row("B38", BenchRowTests::direction)
        .row("B40", BenchRowTests::finishing)
        .row("B44", BenchRowTests::slotting)
        .row("B45", BenchRowTests::parallels)
        .row("B46", BenchRowTests::leastGrip)
        .build();
  }

  private static void bar(CheckRow row) {
    BenchPlan top =
        BenchPlan.of("60 x 33.5 x 24.5", CAST, SAWN)
            .face("up top, fixed back, on pair P6x10", "top", "clean top at 0.4, at most 1.2");
    String hold = "up back, fixed top, on soft-strip 1.6";
    assertThat(top.face(hold, "back", "clean back at 0.4, at most 1.2").found())
        .as(row.toString())
        .contains("warning bar-missing");
    BenchPlan parallel =
        top.face(
            "up bottom, fixed back, on pair P6x10",
            "bottom",
            "clean bottom at 0.4, at most 1.2",
            "seat tapped, both parallels tight");
    assertThat(parallel.face(hold, "back", "clean back at 0.4, at most 1.2").found())
        .as(row.toString())
        .doesNotContain("warning bar-missing");
  }

  private static void seat(CheckRow row) {
    assertThat(row.expected()).contains("both");
    BenchPlan stock = BenchPlan.of("60 x 30 x 22", "milled bottom", "cast front back top", SAWN);
    String hold = "up top, fixed back, on pair P6x10";
    String cut = "clean top at 0.4, at most 1.2";
    assertThat(stock.face(hold, "top", cut).found()).containsExactly("warning seat-not-proved");
    assertThat(stock.face(hold, "top", cut, "seat tapped").found())
        .containsExactly("warning seat-not-proved");
    assertThat(stock.face(hold, "top", cut, "seat tapped, both parallels tight").found()).isEmpty();
  }

  /** Half the diameter of a cutter of 6 at full width is 3. */
  private static void slotting(CheckRow row) {
    assertThat(row.expected()).contains("warn above");
    BenchPlan stock = BenchPlan.of("56 x 30 x 20", "milled top bottom front back left right");
    String hold = "hold in V80, up top, fixed back, on pair P6x10";
    for (String pass : List.of("3", "3.1")) {
      BenchPlan plan =
          stock
              .part("slot key in top, width 6, length 30, depth 4, at (28, 15)")
              .setup(
                  hold,
                  "seat tapped, both parallels tight",
                  "cutter SD6",
                  "touch top with paper 0.05, zero z",
                  "slot key with SD6, pass " + pass);
      assertThat(plan.found().contains("warning heavy-pass"))
          .as(row + ": " + pass)
          .isEqualTo(pass.equals("3.1"));
    }
  }

  private static void solidJaw(CheckRow row) {
    BenchPlan bar = BenchPlan.of("100 x 30 x 21", "drawn front back top bottom", SAWN);
    String hold = "up top, fixed back, on pair P6x10";
    assertThat(
            bar.end(hold, "right", "set z 23 below top", "clean right at 0.5, at most 1.5").found())
        .as(row.toString())
        .isEmpty();
    assertThat(
            bar.end(hold, "left", "set z 23 below top", "clean left at 0.5, at most 1.5").found())
        .as(row.toString())
        .containsExactly("info force-to-moving-jaw");
  }

  /** Turning clockwise a tooth goes from the left of the travel to the right: geometry. */
  private static void entry(CheckRow row) {
    Engagement climb = side(CutDirection.CLIMB);
    Engagement conventional = side(CutDirection.CONVENTIONAL);
    assertThat(chip(climb.left())).as(row.toString()).isGreaterThan(chip(climb.right()) + 0.5);
    assertThat(chip(conventional.left())).isLessThan(chip(conventional.right()) - 0.5);
  }

  private static Engagement side(CutDirection direction) {
    boolean climb = direction == CutDirection.CLIMB;
    BenchPlan plan =
        BenchPlan.of("100 x 30 x 21", "drawn front back top bottom", SAWN)
            .end(
                "up top, fixed back, on pair P6x10",
                "right",
                "set z 23 below top",
                "clean right at 1.6, " + (climb ? "climb" : "conventional"));
    return plan.check().run().cuts().findFirst().orElseThrow().engagement();
  }

  /** The chip's thickness where a tooth is this far across, over the feed of a tooth. */
  private static double chip(double across) {
    return Math.sqrt(1 - across * across);
  }

  private static void direction(CheckRow row) {
    // Clockwise seen from above: along the back to the right, down the right side to the front.
    List<Direction> walls =
        List.of(
            Direction.OPERATOR_BACK,
            Direction.OPERATOR_RIGHT,
            Direction.OPERATOR_FRONT,
            Direction.OPERATOR_LEFT);
    List<Direction> clockwise =
        List.of(
            Direction.OPERATOR_RIGHT,
            Direction.OPERATOR_FRONT,
            Direction.OPERATOR_LEFT,
            Direction.OPERATOR_BACK);
    for (int i = 0; i < 4; i++) {
      assertThat(Engagement.alongWall(walls.get(i), clockwise.get(i), Hand.RIGHT))
          .as(row.toString())
          .isEqualTo(CutDirection.CLIMB);
      // Inside, the wall at that side looks the other way, and counter-clockwise is walked back.
      assertThat(
              Engagement.alongWall(
                  walls.get(i).opposite(), clockwise.get(i).opposite(), Hand.RIGHT))
          .as(row.toString())
          .isEqualTo(CutDirection.CLIMB);
    }
  }

  private static void finishing(CheckRow row) {
    for (BigDecimal inches : row.numbers().subList(0, 2)) {
      BenchPlan plan =
          BenchPlan.of("100 x 30 x 21", "drawn front back top bottom", "milled left right")
              .in("aluminium-6082")
              .end(
                  "up top, fixed back, on pair P6x10",
                  "right",
                  "set z 23 below top",
                  "clean right at " + inches.abs() + " in, climb");
      assertThat(plan.found()).as(row.toString()).isEmpty();
    }
  }

  private static void parallels(CheckRow row) {
    String things =
        "\nown vise W\n  jaw-width: 100\n  jaw-depth: 38\n  opening: 80\n"
            + "\nown parallels P31\n  thickness: 6\n  height: 31\n  length: 90\n";
    BenchPlan plan =
        BenchPlan.of("60 x 30 x 12", CAST, SAWN)
            .with(things)
            .setup(
                "hold in W, up top, fixed back, on pair P31",
                "cutter FC40",
                "touch top with paper 0.05, zero z",
                "lock y z",
                "clean top at 0.4, at most 1.2");
    Grip grip = plan.check().run().setups().get(0).grip();
    assertThat(row.expected()).contains("38 - 7 = 31");
    assertThat(grip.depth().middle()).as(row.toString()).isEqualTo(Length.mm("7"));
    assertThat(grip.proud().middle()).as(row.toString()).isEqualTo(Length.mm("5"));
    assertThat(plan.found()).isEmpty();
  }

  /** The third of the height; of a low grip of thin stock the rule asks less than this row. */
  private static void leastGrip(CheckRow row) {
    assertThat(row.expected()).contains("one third of the height");
    for (String height : List.of("44.5", "46")) {
      // The jaws grip 15 above the parallels; the stock may be 0.3 less.
      BenchPlan plan =
          BenchPlan.of("60 x 30 x " + height, CAST, SAWN)
              .face("up top, fixed back, on pair P6x10", "top", "clean top at 0.4, at most 1.2");
      assertThat(plan.found())
          .as(row.toString())
          .isEqualTo(height.equals("46") ? List.of("warning too-low-grip") : List.of());
    }
  }
}
