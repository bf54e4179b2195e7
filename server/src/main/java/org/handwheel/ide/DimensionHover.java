package org.handwheel.ide;

import java.util.Optional;
import org.handwheel.model.Part;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun;
import org.handwheel.work.Drawing;
import org.handwheel.work.DrawnLimits;
import org.handwheel.work.SizeState;

/** A size of the part: what the drawing asks for and what the work is here. */
final class DimensionHover {
  private DimensionHover() {}

  static HoverText text(Here here, PartDimension dimension) {
    Plan plan = here.view().plan();
    HoverText.Builder text = HoverText.titled(title(here, dimension));
    Part.DimensionSpec spec =
        plan == null || plan.part() == null ? null : plan.part().dimension(dimension);
    if (spec == null) {
      text.note("The drawing gives no " + dimension.word() + ".");
      return text.build();
    }
    text.fact("On the drawing", spec.nominal().toString());
    Drawing.Demand demand =
        here.view().run() == null ? null : here.view().run().drawing().demand(dimension);
    if (demand != null) {
      String whence =
          demand.source() == DrawnLimits.Source.OWN ? "" : " (" + demand.source().words() + ")";
      text.fact("Limits", demand.limits() + whence);
      text.fact("Aim", demand.aim() + ", the middle of the limits");
    }
    if (plan != null && plan.stock() != null) {
      Length stock = plan.stock().sizes().get(dimension);
      if (stock != null) {
        text.fact("Stock", stock + ", " + stock.minus(spec.nominal()) + " more than the part");
      }
    }
    Optional<SizeState> now =
        here.work().flatMap(work -> Optional.ofNullable(work.size(dimension)));
    now.ifPresent(
        state ->
            text.fact(
                here.setup().isPresent() ? "Before this line" : "At the end",
                CutHover.size(state)));
    Optional<CutRun> cut = here.cut();
    cut.filter(run -> run.face().dimension() == dimension)
        .ifPresent(run -> text.fact("After this cut", CutHover.size(run.after())));
    text.formula("aim = middle of the limits: there both errors are equally far away");
    return text.build();
  }

  private static String title(Here here, PartDimension dimension) {
    String between =
        switch (dimension) {
          case LENGTH -> "left to right";
          case WIDTH -> "front to back";
          case HEIGHT -> "bottom to top";
        };
    Optional<CutRun> cut =
        here.cut().filter(run -> run.goal() != null && run.face().dimension() == dimension);
    return cut.map(run -> "to " + dimension.word() + ": this cut goes to " + run.goal())
        .orElse(dimension.word() + ", " + between);
  }
}
