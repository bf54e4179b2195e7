package org.handwheel.ide;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.model.Plan;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.CutRun;
import org.handwheel.work.Drawing;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.StepRun;

/** What follows from each cut, shown behind its line. */
public final class Hints {
  private final View view;
  private final PlanRun run;
  private final HintSettings settings;

  private Hints(View view, PlanRun run, HintSettings settings) {
    this.view = view;
    this.run = run;
    this.settings = settings;
  }

  /**
   * A hint.
   *
   * @param offset where it stands in the file, in UTF-16 units
   * @param label a few words
   * @param tooltip the whole story
   */
  public record Hint(int offset, String label, HintSettings.Kind kind, HoverText tooltip) {}

  /**
   * The hints of the cuts that end in a range.
   *
   * @param start UTF-16 units from the start of the file
   * @param end one past the last
   */
  public static List<Hint> of(View view, HintSettings settings, int start, int end) {
    Plan plan = view.plan();
    PlanRun run = view.run();
    List<Hint> hints = new ArrayList<>();
    if (plan == null || run == null) {
      return hints;
    }
    Hints source = new Hints(view, run, settings);
    SyntaxTree tree = view.tree();
    run.steps()
        .filter(step -> step.cut() != null && tree.contains(step.step().origin()))
        .filter(
            step ->
                tree.end(step.step().origin()) >= start && tree.end(step.step().origin()) <= end)
        .forEach(step -> source.add(plan, step, hints));
    return hints;
  }

  private void add(Plan plan, StepRun step, List<Hint> hints) {
    CutRun cut = step.cut();
    if (cut == null) {
      return;
    }
    int offset = view.tree().end(step.step().origin());
    HoverText tooltip = CutHover.text(view, plan, step, cut);
    if (settings.shows(HintSettings.Kind.SIZE)) {
      hints.add(new Hint(offset, size(cut), HintSettings.Kind.SIZE, tooltip));
    }
    if (settings.shows(HintSettings.Kind.DIAL)) {
      MoveText.of(run, step)
          .ifPresent(
              move -> {
                HoverText.Builder text =
                    HoverText.titled("The " + move.axis().name() + " dial of this cut");
                MoveText.add(text, move, plan.machine());
                hints.add(
                    new Hint(offset, MoveText.brief(move), HintSettings.Kind.DIAL, text.build()));
              });
    }
    if (settings.shows(HintSettings.Kind.DIRECTION)) {
      hints.add(new Hint(offset, cut.engagement().words(), HintSettings.Kind.DIRECTION, tooltip));
    }
  }

  /** For example {@code height 19.25 mm (0.7579 in) +-0.03, 0.27 mm (10.6 thou) left}. */
  private String size(CutRun cut) {
    Length spread = cut.after().range().spread();
    StringBuilder label =
        new StringBuilder(cut.face().dimension().word())
            .append(' ')
            .append(cut.after().range().middle());
    if (spread.isPositive()) {
      label.append(" +-").append(LengthText.number(spread, LengthUnit.MM, 3, 2));
    }
    Drawing.Demand demand = run.drawing().demand(cut.face().dimension());
    if (demand != null) {
      Length left = cut.after().range().middle().minus(demand.aim());
      if (left.isPositive()) {
        label.append(", ").append(left).append(" left");
      } else if (left.isNegative()) {
        label.append(", ").append(left.abs()).append(" below the aim");
      } else {
        label.append(", at the aim");
      }
    }
    return label.toString();
  }
}
