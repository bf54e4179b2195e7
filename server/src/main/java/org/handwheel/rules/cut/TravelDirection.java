package org.handwheel.rules.cut;

import java.util.Locale;
import java.util.function.Consumer;
import org.handwheel.model.Direction;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.work.CutRun;
import org.handwheel.work.Engagement;

/** The stated travel is not the stated kind of cut. */
public final class TravelDirection extends SimpleRule {
  public TravelDirection() {
    super("travel-direction", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.run().cuts().forEach(cut -> check(cut, out));
  }

  private void check(CutRun cut, Consumer<Finding> out) {
    if (cut.mode() == CutRun.Mode.END
        || cut.cut().travel() == null
        || cut.cut().direction() == null) {
      return;
    }
    CutDirection stated = cut.cut().direction().value();
    CutDirection real = Engagement.alongWall(cut.normal(), cut.travel(), cut.cutter().hand());
    if (stated != real) {
      Direction right = Engagement.travelFor(cut.normal(), stated, cut.cutter().hand());
      out.accept(
          finding(
              cut.cut().travel().origin(),
              "with this travel the cut is "
                  + real.name().toLowerCase(Locale.ROOT)
                  + ", not "
                  + stated.name().toLowerCase(Locale.ROOT)
                  + "; for that the cutter travels "
                  + right.words()));
    }
  }
}
