package org.handwheel.cli;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Predicate;
import org.handwheel.cli.CheckCommand.Format;
import org.handwheel.model.Limits;
import org.handwheel.shop.StandardTables;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.feature.FeatureTable;
import org.handwheel.work.feature.Remainder;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

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

  @Mixin private PlanArguments arguments = new PlanArguments();

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
    OnePlan read = arguments.read(surroundings);
    Predicate<SetupRun> asked = arguments.asked(read);
    List<FeatureTable> cuts =
        FeatureTable.all(read.run()).stream().filter(cut -> asked.test(cut.setup())).toList();
    Remainder remainder = Remainder.of(read.run(), StandardTables.builtIn());
    Limits limits = read.run().plan().shop().limits();
    if (format == Format.JSON) {
      output.line(StepsJson.of(arguments.plan(), cuts, remainder, limits));
    } else {
      new StepsReport(arguments.plan(), cuts, remainder, limits)
          .lines(output.width())
          .forEach(line -> output.line(output.glyphs().show(line)));
    }
    return Handwheel.EXIT_CLEAN;
  }
}
