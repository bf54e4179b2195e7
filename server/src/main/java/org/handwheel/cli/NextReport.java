package org.handwheel.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.handwheel.model.LogSection;
import org.handwheel.model.LogSection.Reading;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.sheet.NextSteps;
import org.handwheel.plan.sheet.NextSteps.Todo;
import org.handwheel.plan.sheet.Sheet;
import org.handwheel.plan.sheet.Sheet.Fact;
import org.handwheel.plan.sheet.Sheet.ToMeasure;
import org.handwheel.plan.sheet.Sheets;
import org.handwheel.shop.StandardTables;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthText;
import org.jspecify.annotations.Nullable;

/** What to do next at the machine, as text. */
final class NextReport {
  private static final String CARE =
      "Eye protection on, work clamped, spindle stopped before hands go near or a size is"
          + " measured. The machine maker's manual and local rules come first.";

  private final OnePlan read;
  private final @Nullable LogSection log;
  private final @Nullable String piece;
  private final int width;

  /**
   * A report on a plan and the log of one piece.
   *
   * @param piece the piece's title; nothing for the plan's last log
   */
  NextReport(OnePlan read, @Nullable String piece, int width) {
    List<LogSection> logs = read.run().plan().logs();
    this.read = read;
    this.piece = piece;
    this.log = piece != null ? read.log(piece) : logs.isEmpty() ? null : logs.get(logs.size() - 1);
    this.width = width;
  }

  List<String> lines() {
    Sheet sheet = new Sheets(StandardTables.builtIn(), Projection.FIRST).sheet(read.checked(), log);
    NextSteps next = NextSteps.of(sheet);
    List<String> lines = new ArrayList<>();
    sheet.warnings().forEach(warning -> wrap(lines, "", "  ", "Mind: " + warning));
    wrap(lines, "", "  ", where(next));
    String setup = "";
    for (Todo todo : next.steps()) {
      String here = "Setup " + todo.setup().number() + ": " + todo.setup().title();
      if (!here.equals(setup)) {
        setup = here;
        lines.add("");
        wrap(lines, "", "  ", here);
      }
      step(lines, todo);
    }
    lines.add("");
    lines.add(after(next));
    wrap(lines, "", "", CARE);
    return lines;
  }

  private String where(NextSteps next) {
    Todo measured = next.measured();
    String name =
        log == null || log.title().isEmpty() ? read.plan() : read.plan() + ", " + log.title();
    return measured == null
        ? name + ": from the beginning; no reading is in the log"
        : name
            + ": after step "
            + measured.step().number()
            + " of setup "
            + measured.setup().number()
            + verdict(measured.step().measure());
  }

  /** Whether what was read is what the drawing allows, where the size is finished by then. */
  private static String verdict(@Nullable ToMeasure measure) {
    Reading reading = measure == null ? null : measure.reading();
    LengthRange limits = measure == null ? null : measure.limits();
    if (reading == null || limits == null) {
      return "";
    }
    boolean within = reading.values().stream().allMatch(limits::contains);
    return ": the "
        + reading.dimension().word()
        + " is "
        + (within ? "" : "not ")
        + "within the drawing's "
        + LengthText.range(limits);
  }

  private void step(List<String> lines, Todo todo) {
    String number = String.format(Locale.ROOT, "%4d  ", todo.step().number());
    wrap(lines, number, "      ", todo.step().action());
    for (Fact fact : todo.facts()) {
      wrap(lines, "        ", "          ", fact.label() + ": " + fact.value());
    }
  }

  /** How the reading that the last of the steps asks for is written down. */
  private String after(NextSteps next) {
    if (next.steps().isEmpty()) {
      return "All steps are done; inspect the part.";
    }
    Todo last = next.steps().get(next.steps().size() - 1);
    ToMeasure measure = last.step().measure();
    String setup = last.setup().name();
    if (measure == null) {
      return "Then inspect the part.";
    }
    if (setup == null) {
      return "The setup has no name, so no reading can be written down for it.";
    }
    String command =
        String.join(
            " ",
            "Then: handwheel log",
            quoted(read.plan()),
            setup,
            measure.dimension().word(),
            "READING --with",
            measure.with());
    return piece == null ? command : command + " --piece " + quoted(piece);
  }

  private static String quoted(String word) {
    return word.matches("[\\p{L}\\p{N}_./-]+") ? word : "\"" + word + "\"";
  }

  private void wrap(List<String> lines, String first, String rest, String text) {
    lines.addAll(Wrapping.wrap(first, rest, text, width));
  }
}
