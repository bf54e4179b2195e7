package org.handwheel.rules.cut;

import java.util.HashSet;
import java.util.Set;
import java.util.function.Consumer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.CutRun.Thing;

/** The cutter reaches a parallel. */
public final class CutterMeetsParallel extends SimpleRule implements EachSetup {
  public CutterMeetsParallel() {
    super("cutter-meets-parallel", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Set<Origin> reported = new HashSet<>();
    Meetings.forEach(
        checkup,
        Thing.PARALLEL,
        meeting -> {
          if (meeting.clearance().isNegative() && reported.add(meeting.line())) {
            out.accept(
                finding(
                    meeting.line(),
                    meeting.into(),
                    new Related(meeting.support(), "it lies under the work here")));
          }
        });
  }
}
