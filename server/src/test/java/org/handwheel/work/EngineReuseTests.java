package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;

import org.handwheel.model.Plan;
import org.handwheel.model.Workspace;
import org.handwheel.model.build.PlanFiles;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Which setups of an earlier run are taken over: those on the same ground, and no others. */
class EngineReuseTests {
  private static final StandardTables TABLES = StandardTables.builtIn();

  private static final SyntaxTree PLAN =
      SyntaxTree.parse(
          "t.plan",
          """
          language 1
          plan "Trial"
            units mm
            use "t.shop"
          part
            material bronze-of-ours
            length 60
            width 40
            height 20
            hole a in top, dia 6, depth 9, at (20, 20)
          stock
            size 60 x 40 x 21
            milled left right front back top bottom
          setup one
            hold in V, up top, fixed back, on bed
            cutter FM
            touch top with paper 0.05, zero z
            finish top to height
            measure height with mic
          setup two
            hold in V, up top, fixed back, on bed
            drill a
          log "a piece"
            in one: read height 20.00 with mic
          """);

  private static final SyntaxTree SHOP =
      SyntaxTree.parse(
          "t.shop",
          """
          language 1
          shop "Ours"
            units mm
          own machine mill
            lead-z: 2
            divisions-z: 100
          own vise V
            jaw-width: 80
            jaw-depth: 15
            opening: 70
          own cutter FM
            kind: face-mill
            dia: 50
            flute: 8
          own instrument mic
            kind: micrometer
            range: 0, 25 mm
            accuracy: 0.004 mm
          own material bronze-of-ours
            like: bronze-LG2
            force: 800
          """);

  private static Plan plan(SyntaxTree shop) {
    return PlanFiles.build(Workspace.of(PLAN, shop), "t.plan");
  }

  @Test
  void theSameGroundGivesTheSameSetups() {
    PlanRun first = Engine.run(plan(SHOP), TABLES);
    PlanRun again = Engine.run(plan(SHOP), TABLES, first);
    assertThat(again.setups()).hasSize(2);
    assertThat(again.setups().get(0)).isSameAs(first.setups().get(0));
    assertThat(again.setups().get(1)).isSameAs(first.setups().get(1));
    assertThat(again.end()).isEqualTo(first.end());
    // Without an earlier run all is worked through.
    assertThat(Engine.run(plan(SHOP), TABLES, null).setups().get(0))
        .isNotSameAs(first.setups().get(0));
  }

  /** A thing that no setup uses makes no difference. */
  @Test
  void aCutterMoreIsTheSameGround() {
    SyntaxTree more = SHOP.update(SHOP.source().text() + "own cutter EM\n  dia: 6\n  flute: 9\n");
    PlanRun first = Engine.run(plan(SHOP), TABLES);
    assertThat(Engine.run(plan(more), TABLES, first).setups().get(0))
        .isSameAs(first.setups().get(0));
  }

  /** Another dial, other limits, another drill, another metal: nothing is taken over. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "divisions-z: 100 > divisions-z: 50",
        "force: 800 > force: 900",
        "own cutter FM > own limits strict;  touch: 0.02;own cutter FM",
        "own cutter FM > own drill D6;  dia: 6;  angle: 90 deg;own cutter FM",
      })
  void onOtherGroundAllIsWorkedThrough(String change) {
    int at = change.indexOf(" > ");
    SyntaxTree changed =
        SHOP.update(
            SHOP.source()
                .text()
                .replace(change.substring(0, at), change.substring(at + 3).replace(";", "\n")));
    // The setups themselves, and the vise and cutters they name, are the same.
    assertThat(plan(changed).setups()).isEqualTo(plan(SHOP).setups());
    PlanRun first = Engine.run(plan(SHOP), TABLES);
    PlanRun going = Engine.run(plan(changed), TABLES, first);
    PlanRun anew = Engine.run(plan(changed), TABLES);
    for (int i = 0; i < 2; i++) {
      assertThat(going.setups().get(i)).isNotSameAs(first.setups().get(i));
    }
    assertThat(going.end()).isEqualTo(anew.end());
  }

  /** A run with the readings of a piece says nothing of the plan as planned. */
  @Test
  void aRunWithReadingsIsNoGround() {
    Plan plan = plan(SHOP);
    PlanRun read = Engine.run(plan, plan.logs().get(0), TABLES);
    PlanRun planned = Engine.run(plan, TABLES, read);
    assertThat(planned.setups().get(0)).isNotSameAs(read.setups().get(0));
    assertThat(planned.end().size(org.handwheel.model.PartDimension.HEIGHT))
        .isNotEqualTo(read.end().size(org.handwheel.model.PartDimension.HEIGHT));
  }
}
