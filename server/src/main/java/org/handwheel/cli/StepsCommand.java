package org.handwheel.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.handwheel.cli.CheckCommand.Format;
import org.handwheel.model.Located;
import org.handwheel.work.PlanRun;
import org.handwheel.work.feature.FeatureTable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The steps round the outlines of a plan, and the ways through its slots and pockets. */
@Command(
    name = "steps",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Gives the stations of the cutter round every outline of a plan: ellipse, obround or"
          + " circle, with both dials set from zero at the outline's middle; and the stops of the"
          + " cutter through every slot, pocket and step, from the zeros in force.",
      "Each setting is rounded to the side that leaves metal on; the table says what stands"
          + " out between the steps, for the file."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel steps hand-hole-door.plan",
      "  handwheel steps hand-hole-door.plan rim-cut --format json"
    })
final class StepsCommand implements Callable<Integer> {
  private final Surroundings surroundings;
  private final Output output;

  @Parameters(index = "0", paramLabel = "PLAN", description = "The plan.")
  private String plan = "";

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "SETUP",
      description = "Only this setup, by its name.")
  private @Nullable String setup;

  @Option(
      names = "--format",
      paramLabel = "text|json",
      description = "How to print. Default: text.")
  private Format format = Format.TEXT;

  StepsCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    PlanRun run = CheckedPlan.load(plan, surroundings).run();
    if (setup != null && run.setups().stream().noneMatch(one -> isAsked(one.setup().name()))) {
      throw new UserException(plan + ": it has no setup '" + setup + "'");
    }
    List<FeatureTable> cuts =
        FeatureTable.all(run).stream()
            .filter(cut -> setup == null || isAsked(cut.setup().setup().name()))
            .toList();
    if (format == Format.JSON) {
      output.line(StepsJson.of(plan, cuts));
    } else {
      new StepsReport(plan, cuts)
          .lines(output.width())
          .forEach(line -> output.line(output.glyphs().show(line)));
    }
    return Handwheel.EXIT_CLEAN;
  }

  private boolean isAsked(@Nullable Located<String> name) {
    return name != null && name.value().equalsIgnoreCase(setup);
  }
}
