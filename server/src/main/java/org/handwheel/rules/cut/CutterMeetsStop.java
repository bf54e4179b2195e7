package org.handwheel.rules.cut;

import java.util.HashSet;
import java.util.Set;
import java.util.function.Consumer;
import org.handwheel.model.Hold;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.rules.cut.Meetings.Meeting;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.CutRun.Thing;

/** The cutter runs out where the work stop stands. */
public final class CutterMeetsStop extends SimpleRule implements EachSetup {
  public CutterMeetsStop() {
    super("cutter-meets-stop", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Set<Origin> reported = new HashSet<>();
    Meetings.forEach(
        checkup,
        Thing.STOP,
        meeting -> {
          if (!meeting.clearance().isPositive() && reported.add(meeting.line())) {
            out.accept(
                finding(
                    meeting.line(),
                    meeting.into() + ", if that stands at the middle of the end and half as high",
                    new Related(stop(meeting), "it stands here")));
          }
        });
  }

  private static Origin stop(Meeting meeting) {
    Hold hold = meeting.setup().setup().hold();
    return hold == null || hold.stop() == null ? meeting.hold() : hold.stop().origin();
  }
}
