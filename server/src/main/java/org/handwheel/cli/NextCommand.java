package org.handwheel.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code handwheel next}: what to do next at the machine. */
@Command(
    name = "next",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Says what to do next at the machine: the steps behind the last measurement whose reading is"
          + " in the plan's log, up to and with the next measurement.",
      "Turns and divisions count with what was read. `handwheel log` writes the next reading"
          + " down."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel next bearing-block.plan",
      "  handwheel next bilge-pump-link.plan --piece \"the second link\""
    })
final class NextCommand implements Callable<Integer> {
  private final Surroundings surroundings;
  private final Output output;

  @Parameters(index = "0", paramLabel = "PLAN", description = "The plan's file.")
  private String plan = "";

  @Option(
      names = "--piece",
      paramLabel = "NAME",
      description = "The piece, by the title of its log. Default: the last log of the plan.")
  private @Nullable String piece;

  NextCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    OnePlan read = OnePlan.read(plan, surroundings);
    new NextReport(read, piece, output.width())
        .lines()
        .forEach(line -> output.line(output.glyphs().show(line)));
    return Handwheel.EXIT_CLEAN;
  }
}
