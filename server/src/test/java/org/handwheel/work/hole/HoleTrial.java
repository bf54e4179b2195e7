package org.handwheel.work.hole;

import java.util.List;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;

/** A plan of one setup with holes in a milled block of 60 x 40 x 20, in a shop of its own. */
record HoleTrial(String holes, String hold, String things, String lines) {
  private static final String HEAD = "language 1\nshop \"Holes\"\n  units mm\n";

  private static final String MACHINE =
      """
      own machine mill
        lead-x: 2
        divisions-x: 100
        backlash-x: 0.1
        lead-y: 2
        divisions-y: 100
        backlash-y: 0.1
        lead-z: 2
        divisions-z: 100
        speeds: 100, 200, 400, 800, 1600 rpm
        power: 0.5 kW
        daylight: 300
        chuck: 70
      """;

  private static final String THINGS =
      """
      own vise V
        jaw-width: 80
        jaw-depth: 25
        opening: 70
        bed-height: 45
      own parallels P
        thickness: 3
        height: 10
        length: 70
        count: 2
      own clamp C
        width: 22
        height: 18
      own finder F
        dia: 5
      """;

  /** Held in the vise, back on the fixed jaw, on a pair of parallels 3 thick and 10 high. */
  static HoleTrial of(String holes) {
    return new HoleTrial(holes, "in V, up top, fixed back, on pair P", "", "");
  }

  HoleTrial on(String other) {
    return new HoleTrial(holes, other, things, lines);
  }

  /** With more in the shop; a machine takes the place of the usual one. */
  HoleTrial with(String more) {
    return new HoleTrial(holes, hold, things + more, lines);
  }

  HoleTrial lines(String... more) {
    return new HoleTrial(holes, hold, things, String.join("\n", more));
  }

  PlanRun run() {
    String text =
        "language 1\nplan \"Trial\"\n  units mm\n  use \"t.shop\"\n"
            + "part\n  material steel-mild\n  length 60\n  width 40\n  height 20\n"
            + holes.strip().indent(2)
            + "stock\n  size 60 x 40 x 20\n  milled left right front back top bottom\n"
            + "setup one\n  hold "
            + hold
            + "\n  find left from operator-left with finder F, zero x at edge\n"
            + "  find front from operator-front with finder F, zero y at edge\n"
            + lines.strip().indent(2);
    String machine = things.contains("own machine") ? "" : MACHINE;
    String shop = HEAD + machine + THINGS + things;
    Checked checked =
        new Checker(StandardTables.builtIn())
            .check(
                Workspace.of(SyntaxTree.parse("t.plan", text), SyntaxTree.parse("t.shop", shop)),
                "t.plan");
    checked.findings().stream()
        .filter(found -> found.rule().equals("syntax") || found.rule().equals("bad-value"))
        .findAny()
        .ifPresent(
            found -> {
              throw new IllegalArgumentException(found.message() + "\n" + text);
            });
    PlanRun run = checked.run();
    if (run == null) {
      throw new IllegalStateException("the plan cannot be worked through");
    }
    return run;
  }

  static SetupRun setup(PlanRun run) {
    return run.setups().get(0);
  }

  /** The lines on holes. */
  static List<StepRun> drilled(PlanRun run) {
    return run.steps().filter(step -> step.holes() != null).toList();
  }

  /** What all lines on holes did, tool by tool. */
  List<HoleRun.Result> results() {
    return drilled(run()).stream().flatMap(step -> step.holes().results()).toList();
  }

  /** What the last tool did. */
  HoleRun.Result last() {
    List<HoleRun.Result> results = results();
    return results.get(results.size() - 1);
  }

  /** What all lines on holes run into. */
  List<HoleHits.Hit> hits() {
    PlanRun run = run();
    return drilled(run).stream()
        .flatMap(step -> HoleHits.of(run, setup(run), step).stream())
        .toList();
  }
}
