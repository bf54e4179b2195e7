package org.handwheel.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.handwheel.cli.CheckCommand.Format;
import org.handwheel.model.Located;
import org.handwheel.work.PlanRun;
import org.handwheel.work.hole.CoordinateTable;
import org.handwheel.work.hole.Coordinates;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The coordinates of the holes of a plan. */
@Command(
    name = "coordinates",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Gives the holes of a plan as they are wound with two handles: from the zero in force,"
          + " in the order that turns each handle one way as long as it can, from zero and from"
          + " hole to hole.",
      "Each setting is counted from zero and rounded once; rounded moves are never added up."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel coordinates boiler-flange.plan",
      "  handwheel coordinates boiler-flange.plan holes --format json"
    })
final class CoordinatesCommand implements Callable<Integer> {
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

  CoordinatesCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    PlanRun run = CheckedPlan.load(plan, surroundings).run();
    if (setup != null && run.setups().stream().noneMatch(one -> isAsked(one.setup().name()))) {
      throw new UserException(plan + ": it has no setup '" + setup + "'");
    }
    List<CoordinateTable> tables =
        Coordinates.all(run).stream()
            .filter(table -> setup == null || isAsked(table.setup().setup().name()))
            .toList();
    CoordinatesReport report = new CoordinatesReport(plan, tables);
    if (format == Format.JSON) {
      output.line(report.json());
    } else {
      report.lines(output.width()).forEach(line -> output.line(output.glyphs().show(line)));
    }
    return Handwheel.EXIT_CLEAN;
  }

  private boolean isAsked(@Nullable Located<String> name) {
    return name != null && name.value().equalsIgnoreCase(setup);
  }
}
