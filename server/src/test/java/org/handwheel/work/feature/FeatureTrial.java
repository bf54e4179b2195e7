package org.handwheel.work.feature;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.handwheel.examples.ExampleFolder;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;

/**
 * A plan of one setup for a milled block in the inch shop of the examples, with a material and more
 * things of its own.
 */
record FeatureTrial(String size, String drawn, String hold, String things, String lines) {
  private static final String MATERIAL =
      """
      own material trial
        speed-hss: 28 m/min
        feed-per-tooth: 0.05 mm/tooth
        speed-drill: 28 m/min
        force: 2000
        force-exponent: 0.25
      """;

  static FeatureTrial of(String size, String drawn) {
    return new FeatureTrial(size, drawn, "in V80, up top, fixed back, on pair P3x10", "", "");
  }

  FeatureTrial on(String other) {
    return new FeatureTrial(size, drawn, other, things, lines);
  }

  FeatureTrial with(String more) {
    return new FeatureTrial(size, drawn, hold, things + more, lines);
  }

  FeatureTrial lines(String... more) {
    return new FeatureTrial(size, drawn, hold, things, String.join("\n", more));
  }

  Checked check() {
    String[] sizes = size.split(" x ", -1);
    String text =
        "language 1\nplan \"Trial\"\n  units mm\n  use \"shop/inch-mill.shop\"\n"
            + "  use \"shop/more.shop\"\npart\n  material trial\n  length "
            + sizes[0]
            + "\n  width "
            + sizes[1]
            + "\n  height "
            + sizes[2]
            + "\n"
            + drawn.strip().indent(2)
            + "stock\n  size "
            + size
            + "\n  milled left right front back top bottom\n"
            + "setup one\n  hold "
            + hold
            + "\n  find left from operator-left with finder F5, zero x at edge\n"
            + "  find front from operator-front with finder F5, zero y at edge\n"
            + lines.strip().indent(2);
    String more = "language 1\nshop \"More\"\n  units mm\n" + MATERIAL + things;
    Path shop = ExampleFolder.PATH.resolve("shop").resolve("inch-mill.shop");
    try {
      return new Checker(StandardTables.builtIn())
          .check(
              new Workspace(
                  Map.of(
                      "t.plan", SyntaxTree.parse("t.plan", text),
                      "shop/more.shop", SyntaxTree.parse("shop/more.shop", more),
                      "shop/inch-mill.shop",
                          SyntaxTree.parse("shop/inch-mill.shop", Files.readString(shop))),
                  Map.of()),
              "t.plan");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  PlanRun run() {
    PlanRun run = check().run();
    if (run == null) {
      throw new IllegalStateException("the plan cannot be worked through");
    }
    return run;
  }

  static SetupRun setup(PlanRun run) {
    return run.setups().get(0);
  }

  /** The lines on features. */
  static List<StepRun> features(PlanRun run) {
    return run.steps().filter(step -> step.feature() != null).toList();
  }

  /** What the tool of the last line on a feature passes over. */
  List<FeatureHits.Hit> hits() {
    PlanRun run = run();
    List<StepRun> features = features(run);
    return FeatureHits.of(run, setup(run), features.get(features.size() - 1));
  }

  /** What the last line on a feature takes at once. */
  FeatureBite bite() {
    PlanRun run = run();
    List<StepRun> features = features(run);
    return features.get(features.size() - 1).feature().bite().orElseThrow();
  }
}
