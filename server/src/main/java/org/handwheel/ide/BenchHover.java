package org.handwheel.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Owned;
import org.handwheel.model.Step;
import org.handwheel.syntax.Origin;
import org.handwheel.work.Bench;
import org.handwheel.work.PlanRun.StepRun;
import org.jspecify.annotations.Nullable;

/** How dials, locks and spindle stand after a line that sets one of them. */
final class BenchHover {
  private final View view;

  BenchHover(View view) {
    this.view = view;
  }

  /** Nothing for lines that set none of them. */
  Optional<HoverText> text(WrittenForms.Form form, StepRun run) {
    Step step = run.step();
    boolean sets =
        step instanceof Step.Touch
            || step instanceof Step.Find
            || step instanceof Step.Zero
            || step instanceof Step.SetDepth
            || step instanceof Step.Lock
            || step instanceof Step.Unlock
            || step instanceof Step.MoveHead;
    if (!sets) {
      return Optional.empty();
    }
    HoverText.Builder text = HoverText.titled(form.shown()).note(form.meaning());
    Bench bench = run.benchAfter();
    for (Axis axis : Axis.values()) {
      text.fact(axis.name() + " after this line", words(axis, bench));
    }
    Bench.DepthSet depth = bench.depthSet();
    if (depth != null) {
      text.fact("Z is set", depth.depth() + " below the " + depth.face().word());
    }
    text.fact("In the spindle", spindle(bench));
    if (step instanceof Step.Touch touch && touch.paper().isPositive()) {
      text.note("At zero the cutter stands " + touch.paper() + " off the face: the paper.");
    }
    return Optional.of(text.build());
  }

  private String words(Axis axis, Bench bench) {
    List<String> words = new ArrayList<>();
    Bench.Zero zero = bench.zeros().get(axis);
    words.add(zero == null ? "no zero" : zero(zero));
    Origin lock = bench.locks().get(axis);
    if (lock != null) {
      words.add("locked in line " + line(lock));
    }
    return String.join("; ", words);
  }

  private String zero(Bench.Zero zero) {
    String face = zero.face() == null ? "" : " at the " + zero.face().word();
    String from = face + " from line " + line(zero.origin());
    Bench.@Nullable Loss loss = zero.loss();
    return loss == null
        ? "zero" + from
        : "no zero: the one"
            + from
            + " is lost, "
            + switch (loss.cause()) {
              case CUTTER_CHANGED -> "the cutter was changed in line " + line(loss.origin());
              case HEAD_MOVED -> "the head was moved in line " + line(loss.origin());
            };
  }

  private static String spindle(Bench bench) {
    Bench.Tool tool = bench.cutter();
    if (tool == null) {
      return "no cutter yet";
    }
    Owned.Cutter cutter = tool.cutter();
    return cutter.name() + ", " + cutter.dia();
  }

  private int line(Origin origin) {
    return view.tree().line(origin) + 1;
  }
}
