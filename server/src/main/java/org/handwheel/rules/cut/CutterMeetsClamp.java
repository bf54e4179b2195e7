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

/** The cutter runs into a clamp. */
public final class CutterMeetsClamp extends SimpleRule implements EachSetup {
  public CutterMeetsClamp() {
    super("cutter-meets-clamp", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Set<Origin> reported = new HashSet<>();
    Meetings.forEach(
        checkup,
        Thing.CLAMP,
        meeting -> {
          if (!meeting.clearance().isPositive() && reported.add(meeting.line())) {
            out.accept(
                finding(
                    meeting.line(), meeting.into(), new Related(clamp(meeting), "it stands here")));
          }
        });
  }

  private static Origin clamp(Meeting meeting) {
    Hold hold = meeting.setup().setup().hold();
    return hold == null
        ? meeting.line()
        : hold.clamps().stream()
            .filter(clamping -> meeting.name().endsWith(" " + clamping.clamp().name()))
            .map(Hold.Clamping::origin)
            .findFirst()
            .orElse(hold.origin());
  }
}
