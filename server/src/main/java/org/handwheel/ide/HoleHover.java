package org.handwheel.ide;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.handwheel.model.Axis;
import org.handwheel.model.Step.HoleCut;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.AxisZero;
import org.handwheel.work.hole.CoordinateTable;
import org.handwheel.work.hole.CoordinateTable.Mark;
import org.handwheel.work.hole.CoordinateTable.Operation;
import org.handwheel.work.hole.CoordinateTable.Result;
import org.handwheel.work.hole.CoordinateTable.Row;
import org.handwheel.work.hole.Coordinates;
import org.handwheel.work.hole.DrawnHole;
import org.handwheel.work.hole.HoleRun;
import org.handwheel.work.hole.HoleState;

/** What is told of a line on holes: where each hole is on the dials, and what each tool does. */
final class HoleHover {
  /** More holes than this are told of by the command alone. */
  private static final int MOST_ROWS = 24;

  private HoleHover() {}

  /** The whole line: the table of its holes, and its tools. */
  static Optional<HoverText> text(PlanRun run, SetupRun setup, StepRun step) {
    HoleRun made = step.holes();
    if (made == null || made.holes().isEmpty()) {
      return Optional.empty();
    }
    HoleCut cut = made.cut();
    String verb = cut.verb().name().toLowerCase(Locale.ROOT);
    int count = made.holes().size();
    HoverText.Builder text =
        HoverText.titled(verb + ", " + (count == 1 ? "one hole" : count + " holes"));
    Optional<CoordinateTable> table = Coordinates.of(run, setup, cut);
    table.ifPresent(found -> add(text, found, names(made.holes())));
    table.map(CoordinateTable::operations).orElse(List.of()).stream()
        .filter(operation -> operation.cut().equals(cut))
        .forEach(operation -> text.fact(operation.bit().name(), words(operation)));
    HoleAdvice.add(text, run, step);
    return Optional.of(text.build());
  }

  /** One hole named in the line: its own row, and what was made of it before. */
  static void addOwn(
      HoverText.Builder text, PlanRun run, SetupRun setup, StepRun step, String name) {
    HoleRun made = step.holes();
    if (made == null) {
      return;
    }
    List<DrawnHole> holes = made.drawn().named(name);
    Coordinates.of(run, setup, made.cut()).ifPresent(table -> add(text, table, names(holes)));
    if (holes.size() == 1) {
      HoleState before =
          step.before().holes().getOrDefault(holes.get(0).name(), HoleState.UNTOUCHED);
      text.fact("Before this line", before.words());
    }
  }

  private static Set<String> names(List<DrawnHole> holes) {
    return holes.stream().map(DrawnHole::name).collect(Collectors.toSet());
  }

  private static void add(HoverText.Builder text, CoordinateTable table, Set<String> wanted) {
    if (table.result() instanceof Result.None none) {
      text.note("No coordinates: " + none.reason() + ".");
      return;
    }
    Result.Rows rows = (Result.Rows) table.result();
    text.fact("X from", zero(rows.x()));
    text.fact("Y from", zero(rows.y()));
    List<Row> shown =
        rows.rows().stream().filter(row -> wanted.contains(row.hole().name())).toList();
    for (Row row : shown.subList(0, Math.min(MOST_ROWS, shown.size()))) {
      text.fact(row.hole().name(), "X " + place(row.x()) + "; Y " + place(row.y()) + behind(row));
    }
    if (shown.size() > MOST_ROWS) {
      text.markup("And " + (shown.size() - MOST_ROWS) + " more: `handwheel coordinates`.");
    }
    text.formula(DialText.FORMULA + ", counted from zero; rounded moves are never added up");
  }

  private static String zero(AxisZero zero) {
    return zero.words()
        + "; grows as the table goes "
        + zero.table().words()
        + (zero.turn() == null ? "" : ", " + zero.turn().words());
  }

  /** For example {@code 8.00 mm (0.315 in) = 3 turns + 15}. */
  private static String place(Mark mark) {
    return mark.at()
        + " = "
        + mark.stop().turns()
        + (mark.stop().turns() == 1 ? " turn + " : " turns + ")
        + mark.stop().reading().toPlainString();
  }

  private static String behind(Row row) {
    String axes =
        row.turnsRound().stream().sorted().map(Axis::name).collect(Collectors.joining(" and "));
    return axes.isEmpty() ? "" : "; lies behind the hole before in " + axes + ": take up the slack";
  }

  private static String words(Operation operation) {
    String holes = String.join(", ", operation.holes());
    if (operation.depth() == null || operation.tip() == null || operation.depth().isZero()) {
      return holes;
    }
    if (operation.cut().verb() == HoleVerb.COUNTERSINK) {
      return holes + ": " + operation.depth() + " deep, from where its cone touches the rim";
    }
    return holes
        + (operation.through() ? ": through" : ": " + operation.depth() + " deep")
        + ", its end "
        + operation.tip()
        + " down";
  }
}
