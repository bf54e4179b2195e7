package org.handwheel.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.handwheel.model.LogSection;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.sheet.NextSteps;
import org.handwheel.plan.sheet.NextSteps.Todo;
import org.handwheel.plan.sheet.Sheet;
import org.handwheel.plan.sheet.Sheet.Fact;
import org.handwheel.plan.sheet.Sheet.ToMeasure;
import org.handwheel.plan.sheet.Sheets;
import org.handwheel.shop.StandardTables;
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
  private static final String CARE =
      "Eye protection on, work clamped, spindle stopped before hands go near or a size is"
          + " measured. The machine maker's manual and local rules come first.";

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
    List<LogSection> logs = read.run().plan().logs();
    LogSection log =
        piece != null ? read.log(piece) : logs.isEmpty() ? null : logs.get(logs.size() - 1);
    Sheet sheet = new Sheets(StandardTables.builtIn(), Projection.FIRST).sheet(read.checked(), log);
    NextSteps next = NextSteps.of(sheet);
    List<String> lines = new ArrayList<>();
    sheet.warnings().forEach(warning -> wrapped(lines, "", "  ", "Mind: " + warning));
    lines.add(where(next, log));
    String setup = "";
    for (Todo todo : next.steps()) {
      String here = "Setup " + todo.setup().number() + ": " + todo.setup().title();
      if (!here.equals(setup)) {
        setup = here;
        lines.add("");
        wrapped(lines, "", "  ", here);
      }
      step(lines, todo);
    }
    lines.add("");
    lines.addAll(after(next));
    wrapped(lines, "", "", CARE);
    lines.forEach(line -> output.line(output.glyphs().show(line)));
    return Handwheel.EXIT_CLEAN;
  }

  private String where(NextSteps next, @Nullable LogSection log) {
    Todo measured = next.measured();
    String name = log == null || log.title().isEmpty() ? plan : plan + ", " + log.title();
    return measured == null
        ? name + ": from the beginning; no reading is in the log"
        : name
            + ": after step "
            + measured.step().number()
            + " of setup "
            + measured.setup().number();
  }

  private void step(List<String> lines, Todo todo) {
    String number = String.format(Locale.ROOT, "%4d  ", todo.step().number());
    wrapped(lines, number, "      ", todo.step().action());
    for (Fact fact : todo.facts()) {
      wrapped(lines, "        ", "          ", fact.label() + ": " + fact.value());
    }
  }

  /** How the reading that the last of the steps asks for is written down. */
  private List<String> after(NextSteps next) {
    if (next.steps().isEmpty()) {
      return List.of("All steps are done; inspect the part.");
    }
    Todo last = next.steps().get(next.steps().size() - 1);
    ToMeasure measure = last.step().measure();
    String setup = last.setup().name();
    if (measure == null) {
      return List.of("Then inspect the part.");
    }
    if (setup == null) {
      return List.of("The setup has no name, so no reading can be written down for it.");
    }
    String command =
        String.join(
            " ",
            "Then: handwheel log",
            quoted(plan),
            setup,
            measure.dimension().word(),
            "READING --with",
            measure.with());
    return List.of(piece == null ? command : command + " --piece " + quoted(piece));
  }

  private static String quoted(String word) {
    return word.matches("[\\p{L}\\p{N}_./-]+") ? word : "\"" + word + "\"";
  }

  private void wrapped(List<String> lines, String first, String rest, String text) {
    lines.addAll(Wrapping.wrap(first, rest, text, output.width()));
  }
}
