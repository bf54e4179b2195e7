package org.handwheel.work;

import java.util.List;
import java.util.Optional;
import org.handwheel.model.Plan;
import org.handwheel.model.Shop.ShopFile;
import org.handwheel.model.Workspace;
import org.handwheel.model.build.PlanFiles;
import org.handwheel.model.build.ShopFiles;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;

/** Plans written as text and worked through, for the tests of the engine. */
final class Worked {
  private static final StandardTables TABLES = StandardTables.builtIn();

  /** The dials of the boat shed's mill, in thousandths. */
  static final String INCH_MILL =
      """
      own machine inch-mill
        lead-x: 0.100 in
        divisions-x: 100
        backlash-x: 8 thou
        handle-x: operator-left
        clockwise-x: operator-left
        lead-y: 0.100 in
        divisions-y: 100
        backlash-y: 8 thou
        handle-y: operator-front
        clockwise-y: operator-back
        lead-z: 0.100 in
        divisions-z: 100
        backlash-z: 6 thou
        handle-z: operator-right
        clockwise-z: down
        z-moves: quill
        column: round
      """;

  /** A mill with metric dials and a knee. */
  static final String METRIC_MILL =
      """
      own machine metric-mill
        lead-x: 2
        divisions-x: 100
        backlash-x: 0.1
        lead-y: 2
        divisions-y: 100
        backlash-y: 0.1
        lead-z: 1.25
        divisions-z: 50
        backlash-z: 0.05
        handle-z: operator-front
        clockwise-z: up
        z-moves: knee
        column: dovetail
      """;

  private static final String TOOLS =
      """
      own vise V80
        jaw-width: 80
        jaw-depth: 25
        opening: 70
        jaw-square: 0.02 over 100
        lift: 0.03
      own vise F80
        jaw-width: 80
        jaw-depth: 25
        opening: 70
        fixed-jaw: operator-front
      own parallels P6x10
        thickness: 6
        height: 10
        length: 70
        count: 2
        mismatch: 0.005
      own parallels P16x5
        thickness: 16
        height: 5
        length: 70
        count: 2
      own parallels S6x10
        thickness: 6
        height: 10
        length: 20
        count: 2
      own cutter FC40
        kind: face-mill
        dia: 40
        teeth: 4
        flute: 8
        corner: 0.4
      own cutter FC60
        kind: face-mill
        dia: 60
        teeth: 4
        flute: 8
      own cutter EM16
        kind: end-mill
        dia: 16
        teeth: 4
        flute: 32
      own instrument caliper
        kind: caliper
        range: 0, 150 mm
        resolution: 0.02 mm
        accuracy: 0.03 mm
      own instrument mic
        kind: micrometer
        range: 0, 100 mm
        resolution: 0.01 mm
        accuracy: 0.004 mm
      own instrument dti
        kind: indicator
        resolution: 0.01 mm
      own instrument square50
        kind: square
        accuracy: 0.01 mm
      own finder F5
        dia: 0.200 in
      own packing shim
        thickness: 3
      own clamp strap
        width: 20
        height: 12
      own angle-plate AP
        height: 100
      own v-block VB
        height: 40
      own subplate S1
        height: 12
      """;

  private static final String PART =
      """
      part
        material gunmetal-LG2
        length 56.00 +-0.10
        width 30.00 +0/-0.05
        height 21.00 +0/-0.05
      """;

  private static final String STOCK =
      """
      stock
        size 60 x 33.5 x 24.5
        cast front back top bottom
        sawn left right
      """;

  private final String machine;
  private final String part;
  private final String stock;
  private final String rest;

  private Worked(String machine, String part, String stock, String rest) {
    this.machine = machine;
    this.part = part;
    this.stock = stock;
    this.rest = rest;
  }

  /** A block of 56 x 30 x 21 from cast bar of 60 x 33.5 x 24.5, on the inch mill. */
  static Worked block() {
    return new Worked(INCH_MILL, PART, STOCK, "");
  }

  Worked on(String otherMachine) {
    return new Worked(otherMachine, part, stock, rest);
  }

  Worked from(String otherStock) {
    return new Worked(machine, part, "stock\n" + otherStock.indent(2), rest);
  }

  Worked toward(String otherPart) {
    return new Worked(machine, "part\n" + otherPart.indent(2), stock, rest);
  }

  Worked setup(String name, String lines) {
    return new Worked(
        machine, part, stock, rest + "setup " + name + "\n" + lines.strip().indent(2));
  }

  Worked log(String lines) {
    return new Worked(machine, part, stock, rest + "log \"a piece\"\n" + lines.strip().indent(2));
  }

  Plan plan() {
    String shop = "language 1\nshop \"Boat shed\"\n  units mm\n" + machine + TOOLS;
    String text =
        "language 1\nplan \"Trial\"\n  units mm\n  use \"s.shop\"\n" + part + stock + rest;
    Plan plan =
        PlanFiles.build(
            Workspace.of(SyntaxTree.parse("t.plan", text), SyntaxTree.parse("s.shop", shop)),
            "t.plan");
    ShopFile file = ShopFiles.build(SyntaxTree.parse("s.shop", shop));
    if (!file.findings().isEmpty()) {
      throw new IllegalArgumentException(file.findings().toString());
    }
    if (!plan.findings().isEmpty()) {
      throw new IllegalArgumentException(plan.findings().toString() + "\n" + text);
    }
    return plan;
  }

  PlanRun run() {
    return run(plan());
  }

  static PlanRun run(Plan plan) {
    return plan.logs().isEmpty()
        ? Engine.run(plan, TABLES)
        : Engine.run(plan, plan.logs().get(0), TABLES);
  }

  /** The work at the end. */
  Workpiece end() {
    return run().end();
  }

  /** The last setup worked through. */
  SetupRun last() {
    List<SetupRun> setups = run().setups();
    return setups.get(setups.size() - 1);
  }

  /** The last cut of the plan. */
  CutRun lastCut() {
    return lastCutStep().map(StepRun::cut).orElseThrow();
  }

  /** What ruled the work in the last cut of the plan. */
  Bearing lastBearing() {
    return lastCutStep().map(StepRun::bearing).orElseThrow();
  }

  private Optional<StepRun> lastCutStep() {
    return run().steps().filter(step -> step.cut() != null).reduce((first, second) -> second);
  }

  /** The grip of the last setup. */
  Grip grip() {
    return last().gripped().orElseThrow();
  }

  List<DialMove> dials() {
    return DialMoves.of(run());
  }
}
