package org.handwheel.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.handwheel.model.LogSection;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.sheet.HtmlSheet;
import org.handwheel.plan.sheet.Sheet;
import org.handwheel.plan.sheet.Sheets;
import org.handwheel.shop.StandardTables;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

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

  @Parameters(index = "0", paramLabel = "PLAN", description = "The plan's file.")
  private String plan = "";

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "SETUP",
      description = "Only this setup: its name, or its number counted from 1.")
  private @Nullable String setup;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "Write to this file. Default: print it.")
  private @Nullable String file;

  @Option(names = "--overwrite", description = "Replace FILE if it is there already.")
  private boolean overwrite;

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
    CheckedPlan read = CheckedPlan.load(plan, surroundings);
    LogSection log = piece == null ? null : log(read.run(), piece);
    Sheet sheet = new Sheets(StandardTables.builtIn(), Projection.FIRST).sheet(read.checked(), log);
    if (setup != null) {
      sheet = sheet.only(number(read.run(), setup));
    }
    String html = HtmlSheet.of(sheet);
    if (file == null) {
      output.text(html);
      return Handwheel.EXIT_CLEAN;
    }
    NewText.Existing existing = overwrite ? NewText.Existing.REPLACE : NewText.Existing.KEEP;
    Optional<String> trouble = NewText.write(path(file), html, existing);
    if (trouble.isPresent()) {
      throw new UserException(
          file
              + ": "
              + trouble.get()
              + (trouble.get().equals("it is there already") ? "; --overwrite replaces it" : ""));
    }
    return Handwheel.EXIT_CLEAN;
  }

  private Path path(String name) {
    try {
      return surroundings.workingDirectory().toAbsolutePath().resolve(name).normalize();
    } catch (InvalidPathException e) {
      throw new UserException(name + ": no file can have this name here");
    }
  }

  /** The place, from 1, of a setup by its name or by its number counted from 1. */
  private int number(PlanRun run, String asked) {
    List<SetupRun> setups = run.knownSetups().toList();
    for (int i = 0; i < setups.size(); i++) {
      var name = setups.get(i).setup().name();
      if (name != null && name.value().equalsIgnoreCase(asked)) {
        return i + 1;
      }
    }
    for (int i = 1; i <= setups.size(); i++) {
      if (asked.equals(Integer.toString(i))) {
        return i;
      }
    }
    throw new UserException(
        plan + ": it has no setup '" + asked + "' that can be read, with all before it");
  }

  private LogSection log(PlanRun run, String title) {
    return run.plan().logs().stream()
        .filter(log -> log.title().equals(title))
        .findFirst()
        .orElseThrow(() -> new UserException(plan + ": it has no log \"" + title + "\""));
  }
}
