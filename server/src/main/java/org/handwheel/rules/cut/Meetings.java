package org.handwheel.rules.cut;

import java.util.function.Consumer;
import org.handwheel.model.Hold;
import org.handwheel.rules.Checkup;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun;
import org.handwheel.work.CutRun.Thing;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.FeatureHits;
import org.handwheel.work.feature.FeatureRun;

/** What cutters meet on their way over faces and along slots, pockets and outlines. */
final class Meetings {
  private Meetings() {}

  /**
   * A cutter over something.
   *
   * @param line the line that cuts
   * @param tool what of the tool it is, in words: {@code the cutter}
   * @param clearance how far it stays clear; zero or negative if it runs into it
   */
  record Meeting(
      SetupRun setup, Origin line, String tool, Thing thing, String name, Length clearance) {
    /** How deep it goes into it. */
    String into() {
      return clearance.isZero()
          ? tool + " comes down on " + name
          : tool + " goes " + clearance.abs() + " into " + name;
    }

    /** Where the work is held. */
    Origin hold() {
      Hold hold = setup.setup().hold();
      return hold == null ? line : hold.origin();
    }

    /** What lies under the work. */
    Origin support() {
      Hold hold = setup.setup().hold();
      return hold == null || hold.support() == null ? hold() : hold.support().origin();
    }
  }

  /** Everything of a kind that is passed over, line by line. */
  static void forEach(Checkup checkup, Thing thing, Consumer<Meeting> action) {
    for (SetupRun setup : checkup.wholeSetups()) {
      for (StepRun step : setup.steps()) {
        CutRun cut = step.cut();
        if (cut != null) {
          cut.hits().stream()
              .filter(hit -> hit.thing() == thing)
              .forEach(
                  hit ->
                      action.accept(
                          new Meeting(
                              setup,
                              cut.cut().origin(),
                              "the cutter",
                              thing,
                              hit.name(),
                              hit.clearance())));
        }
        FeatureRun feature = step.feature();
        if (feature != null) {
          checkup.featureHits(setup, step).stream()
              .filter(hit -> hit.thing() == thing)
              .forEach(
                  hit ->
                      action.accept(
                          new Meeting(
                              setup,
                              feature.cut().origin(),
                              words(feature, hit.part()),
                              thing,
                              hit.name(),
                              hit.clearance())));
        }
      }
    }
  }

  private static String words(FeatureRun feature, FeatureHits.ToolPart part) {
    String name = feature.cutter() == null ? "the cutter" : feature.cutter().name();
    return switch (part) {
      case EDGES -> "on its way along `" + feature.spec().name() + "` the cutter";
      case SHANK -> "on its way along `" + feature.spec().name() + "` the shank of " + name;
      case HOLDER -> "on its way along `" + feature.spec().name() + "` the holder of " + name;
    };
  }
}
