package org.handwheel.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.handwheel.plan.picture.Picture;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.picture.SetupPicture;
import org.handwheel.plan.picture.SvgPicture;
import org.handwheel.rules.Checked;
import org.handwheel.work.PlanRun.SetupRun;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code handwheel picture}: a setup drawn as SVG. */
@Command(
    name = "picture",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Draws a setup of a plan as SVG: how the work lies, what holds it, what comes off.",
      "Prints it; without a setup, the first one."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel picture bearing-block.plan four > four.svg",
      "  handwheel picture bearing-block.plan --projection third > one.svg"
    })
final class PictureCommand implements Callable<Integer> {
  private final Surroundings surroundings;
  private final Output output;

  @Parameters(index = "0", paramLabel = "PLAN", description = "The plan's file.")
  private String plan = "";

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "SETUP",
      description = "The setup's name, or its number counted from 1.")
  private @Nullable String setup;

  @Option(
      names = "--projection",
      paramLabel = "first|third",
      description = "How the views stand to one another (ISO 5456-2). Default: first.")
  private Projection projection = Projection.FIRST;

  PictureCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    CheckedPlan loaded = CheckedPlan.load(plan, surroundings);
    Checked checked = loaded.checked();
    List<SetupRun> setups = loaded.run().knownSetups().toList();
    SetupRun found = find(setups);
    Optional<Picture> picture = SetupPicture.of(checked.tree(), found, projection);
    if (picture.isEmpty()) {
      throw new UserException(
          found.setup().words() + ": it is not known how the work lies or how large it is");
    }
    output.line(SvgPicture.of(picture.get(), checked.tree()).stripTrailing());
    return Handwheel.EXIT_CLEAN;
  }

  private SetupRun find(List<SetupRun> setups) {
    String asked = setup == null ? "1" : setup;
    for (SetupRun run : setups) {
      if (run.setup().name() != null && run.setup().name().value().equals(asked)) {
        return run;
      }
    }
    for (int i = 0; i < setups.size(); i++) {
      if (asked.equals(Integer.toString(i + 1))) {
        return setups.get(i);
      }
    }
    throw new UserException(
        plan + ": it has no setup '" + asked + "' that can be read, with all before it");
  }
}
