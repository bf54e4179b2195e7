package org.handwheel.cli;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Predicate;
import org.handwheel.cli.CheckCommand.Format;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.hole.CoordinateTable;
import org.handwheel.work.hole.Coordinates;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

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

  @Mixin private PlanArguments arguments = new PlanArguments();

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
    OnePlan read = arguments.read(surroundings);
    Predicate<SetupRun> asked = arguments.asked(read);
    List<CoordinateTable> tables =
        Coordinates.all(read.run()).stream().filter(table -> asked.test(table.setup())).toList();
    CoordinatesReport report = new CoordinatesReport(arguments.plan(), tables);
    if (format == Format.JSON) {
      output.line(report.json());
    } else {
      report.lines(output.width()).forEach(line -> output.line(output.glyphs().show(line)));
    }
    return Handwheel.EXIT_CLEAN;
  }
}
