package org.handwheel.cli;

import java.util.concurrent.Callable;
import org.handwheel.model.LogSection;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.sheet.HtmlSheet;
import org.handwheel.plan.sheet.Sheet;
import org.handwheel.plan.sheet.Sheets;
import org.handwheel.shop.StandardTables;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code handwheel sheet}: what to take to the machine, on paper or on a telephone. */
@Command(
    name = "sheet",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Makes the sheet of a plan for the machine: tools, stock, and for each setup a picture"
          + " and steps to tick off, with turns and divisions, sizes and boxes to write in;"
          + " then the inspection.",
      "One HTML file that needs nothing else; print it from a browser."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel sheet bearing-block.plan -o block.html",
      "  handwheel sheet bearing-block.plan four > four.html",
      "  handwheel sheet bearing-block.plan --piece \"the first one\" -o first.html",
      "",
      "A sheet of a plan with findings says so on top. The machine maker's manual and",
      "local rules come first."
    })
final class SheetCommand implements Callable<Integer> {
  private final Surroundings surroundings;
  private final Output output;

  @Mixin private PlanArguments arguments = new PlanArguments();

  @Mixin private ResultFile result = new ResultFile();

  @Option(
      names = "--piece",
      paramLabel = "NAME",
      description = "Work with the readings of the log with this title.")
  private @Nullable String piece;

  SheetCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    OnePlan read = arguments.read(surroundings);
    LogSection log = piece == null ? null : read.log(piece);
    Sheet sheet = new Sheets(StandardTables.builtIn(), Projection.FIRST).sheet(read.checked(), log);
    if (arguments.setup() != null) {
      sheet = sheet.only(read.number(arguments.setup()));
    }
    result.deliver(HtmlSheet.of(sheet), output, surroundings);
    return Handwheel.EXIT_CLEAN;
  }
}
