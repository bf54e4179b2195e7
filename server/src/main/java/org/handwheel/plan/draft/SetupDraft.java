package org.handwheel.plan.draft;

import java.util.List;
import org.handwheel.model.Face;
import org.jspecify.annotations.Nullable;

/**
 * One setup as text, with what choosing it costs.
 *
 * @param way face, vise and how the work lies: drafts of one way differ only in seat and cutter
 * @param title what it does, without quotes
 * @param why its reasons, one sentence each
 * @param beforeHold lines that come before the {@code hold} line
 * @param lines the {@code hold} line and all after it
 * @param face the face it cuts, or nothing if it makes holes or outlines
 * @param cutter the cutter in the spindle at its end, if it says one
 * @param trued the vise it sets true, if it does
 * @param cost what it takes: a setup alone counts 100
 */
record SetupDraft(
    String way,
    String title,
    List<String> why,
    List<String> beforeHold,
    List<String> lines,
    @Nullable Face face,
    @Nullable String cutter,
    @Nullable String trued,
    int cost) {
  SetupDraft {
    why = List.copyOf(why);
    beforeHold = List.copyOf(beforeHold);
    lines = List.copyOf(lines);
  }

  /** The whole section under a name; {@code first} are lines for the start of the plan's work. */
  String text(String name, List<String> first) {
    StringBuilder text = new StringBuilder("\nsetup " + name + " \"" + title + "\"\n");
    why.forEach(sentence -> text.append("  # ").append(sentence).append('\n'));
    first.forEach(line -> text.append("  ").append(line).append('\n'));
    beforeHold.forEach(line -> text.append("  ").append(line).append('\n'));
    lines.forEach(line -> text.append("  ").append(line).append('\n'));
    return text.toString();
  }
}
