package org.handwheel.rules.cut;

import java.util.HashSet;
import java.util.Set;
import java.util.function.Consumer;
import org.handwheel.model.Limit;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun.Thing;

/** The cutter cuts into a jaw or comes too near it. */
public final class CutterMeetsJaw extends SimpleRule implements EachSetup {
  public CutterMeetsJaw() {
    super("cutter-meets-jaw", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Length least = checkup.limits().length(Limit.JAW_CLEARANCE);
    Set<Origin> reported = new HashSet<>();
    Meetings.forEach(
        checkup,
        Thing.JAW,
        meeting -> {
          if (meeting.clearance().isLessThan(least) && reported.add(meeting.line())) {
            boolean isClear = meeting.clearance().isPositive();
            out.accept(
                finding(
                    isClear ? Severity.WARNING : severity(),
                    meeting.line(),
                    isClear
                        ? meeting.tool()
                            + " passes only "
                            + meeting.clearance()
                            + " above "
                            + meeting.name()
                        : meeting.into(),
                    new Related(meeting.hold(), "the work is held here")));
          }
        });
  }
}
