package org.handwheel.rules.size;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.handwheel.model.Limit;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Step.Purpose;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun;
import org.handwheel.work.Drawing.Demand;
import org.jspecify.annotations.Nullable;

/** A roughing pass that leaves nothing, or too little, for the finishing pass. */
public final class NoFinishAllowance extends SimpleRule {
  /** About 10 thou is usual on a small mill (common practice, no source). */
  private static final String USUAL = "about 0.25 mm (10 thou) is usual on a small mill";

  public NoFinishAllowance() {
    super("no-finish-allowance", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    if (!checkup.isWhole()) {
      return;
    }
    // From the end, to know of each cut the next along the same dimension.
    Map<PartDimension, CutRun> next = new EnumMap<>(PartDimension.class);
    List<CutRun> cuts = checkup.cuts().toList();
    for (int i = cuts.size() - 1; i >= 0; i--) {
      CutRun cut = cuts.get(i);
      if (cut.cut().purpose() instanceof Purpose.Rough purpose && cut.goal() != null) {
        checkRough(checkup, cut, purpose, next.get(cut.face().dimension()), out);
      }
      next.put(cut.face().dimension(), cut);
    }
  }

  /**
   * Whether a roughing cut goes straight into the tolerance, though a finishing pass follows or the
   * tolerance is too narrow for a roughing pass.
   */
  static boolean isStraightToSize(Checkup checkup, CutRun rough, Demand demand) {
    boolean tight =
        !demand.limits().width().isMoreThan(checkup.limits().length(Limit.ROUGH_TOLERANCE));
    return rough.goal() != null
        && demand.limits().contains(rough.goal())
        && (tight || checkup.finishedFaces().contains(rough.face()));
  }

  private void checkRough(
      Checkup checkup,
      CutRun rough,
      Purpose.Rough purpose,
      @Nullable CutRun next,
      Consumer<Finding> out) {
    Demand demand = checkup.demand(rough.face().dimension());
    Length goal = rough.goal();
    if (demand == null || goal == null || goal.isLessThan(demand.limits().low())) {
      return;
    }
    Origin origin = purpose.leaving() == null ? rough.cut().origin() : purpose.leaving().origin();
    if (next == null) {
      boolean tight =
          !demand.limits().width().isMoreThan(checkup.limits().length(Limit.ROUGH_TOLERANCE));
      if (tight && !goal.isMoreThan(demand.limits().high())) {
        out.accept(
            finding(
                origin,
                "this roughs straight to size and nothing is left for a finishing pass; " + USUAL,
                new Related(
                    demand.origin(), "the " + demand.dimension().word() + " on the drawing")));
      }
      return;
    }
    boolean finishes =
        next.cut().purpose() instanceof Purpose.Finish && next.face() == rough.face();
    if (!finishes || next.goal() == null) {
      return;
    }
    Length left = goal.minus(next.goal());
    if (left.isLessThan(checkup.limits().length(Limit.FINISH_ALLOWANCE))) {
      out.accept(
          finding(
              origin,
              left.isPositive()
                  ? "this leaves only " + left + " for the finishing pass; " + USUAL
                  : "this leaves nothing for the finishing pass; " + USUAL,
              new Related(next.cut().origin(), "the finishing pass is here")));
    }
  }
}
