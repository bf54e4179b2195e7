package org.handwheel.rules.cut;

import java.util.HashSet;
import java.util.List;
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

/** The cutter goes through the work into the table or the bed of the vise. */
public final class CutterMeetsTable extends SimpleRule implements EachSetup {
  public CutterMeetsTable() {
    super("cutter-meets-table", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Set<Origin> reported = new HashSet<>();
    for (Thing thing : List.of(Thing.BED, Thing.TABLE)) {
      Meetings.forEach(
          checkup,
          thing,
          meeting -> {
            if (meeting.clearance().isNegative() && reported.add(meeting.line())) {
              out.accept(
                  finding(
                      meeting.line(),
                      meeting.into() + "; there is no room below the work",
                      new Related(meeting.support(), "the work lies on it here")));
            }
          });
    }
  }
}
