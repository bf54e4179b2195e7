package org.handwheel.ide;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.handwheel.model.Names.Kind;
import org.handwheel.model.Names.Use;
import org.handwheel.syntax.Section;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.SetupTime;

/** What a setup takes: time, and what to lay out before it. */
public final class SetupSummary {
  private static final Set<Kind> TOOLS =
      Set.of(Kind.VISE, Kind.PARALLELS, Kind.CUTTER, Kind.INSTRUMENT, Kind.FINDER, Kind.PIECE);

  private SetupSummary() {}

  /**
   * A line over a setup.
   *
   * @param start first UTF-16 unit of the setup's header
   * @param end one past the last
   */
  public record Lens(int start, int end, String label) {}

  /** The lines over all setups of a plan. */
  public static List<Lens> lenses(View view) {
    PlanRun run = view.run();
    List<Lens> lenses = new ArrayList<>();
    if (run == null) {
      return lenses;
    }
    for (SetupRun setup : run.setups()) {
      if (view.tree().contains(setup.setup().header())) {
        int start = view.tree().start(setup.setup().header());
        int end = view.tree().end(setup.setup().header());
        Set<String> tools = tools(view, setup);
        String time = time(view, setup).map(SetupSummary::words).orElse("time not known");
        lenses.add(
            new Lens(
                start,
                end,
                Shown.name(time + (tools.isEmpty() ? "" : ": " + String.join(", ", tools)))));
      }
    }
    return lenses;
  }

  /** Adds time and tools of a setup to a text about it. */
  static void add(HoverText.Builder text, View view, SetupRun setup) {
    Set<String> tools = tools(view, setup);
    if (!tools.isEmpty()) {
      text.fact("Lay out", String.join(", ", tools));
    }
    time(view, setup)
        .ifPresent(
            time -> {
              text.fact("Time", words(time));
              text.formula(
                  "cutting = passes x (work's length + cutter's diameter + 2 x 2 mm) / table feed;"
                      + " the rest allows usual times for holding, touching, measuring");
            });
  }

  /** What a line that could not be read adds is not known, so then there is no time. */
  private static Optional<SetupTime> time(View view, SetupRun setup) {
    PlanRun run = view.run();
    return run == null || run.knownSetups().noneMatch(setup::equals)
        ? Optional.empty()
        : Optional.of(SetupTime.of(run, setup));
  }

  private static String words(SetupTime time) {
    String words = "about " + minutes(time.minutes());
    if (time.cutting() > 0) {
      words += ", " + minutes(time.cutting()) + " cutting";
    }
    return time.untimed() == 0
        ? words
        : words
            + ", and "
            + (time.untimed() == 1 ? "a cut" : time.untimed() + " cuts")
            + " not counted";
  }

  private static String minutes(double minutes) {
    return minutes > 0 && minutes < 1 ? "under 1 min" : Math.round(minutes) + " min";
  }

  /** What the setup's lines name, in their order, and cutters that were in the spindle before. */
  private static Set<String> tools(View view, SetupRun setup) {
    Section section = setup.setup().header().section();
    Set<String> tools = new LinkedHashSet<>();
    for (Use use : NameIndex.namesOf(view).uses()) {
      if (use.origin().section() == section && TOOLS.contains(use.declaration().kind())) {
        tools.add(use.declaration().name());
      }
    }
    for (StepRun step : setup.steps()) {
      if (step.cut() != null) {
        tools.add(step.cut().cutter().name());
      }
    }
    return tools;
  }
}
