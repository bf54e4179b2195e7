package org.handwheel.rules.cut;

import java.util.function.Consumer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.CutRun;

/** A strip of the face that the cutter never reaches. */
public final class FaceNotCovered extends SimpleRule {
  public FaceNotCovered() {
    super("face-not-covered", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.run().cuts().forEach(cut -> check(cut, out));
  }

  private void check(CutRun cut, Consumer<Finding> out) {
    if (!cut.uncovered().isPositive()) {
      return;
    }
    boolean stepped = cut.cut().stepOver() != null;
    Origin origin = cut.cut().offset() == null ? cut.cut().origin() : cut.cut().offset().origin();
    out.accept(
        finding(
            origin,
            "a strip "
                + cut.uncovered()
                + " wide of the "
                + cut.face().word()
                + " is not covered: `"
                + cut.cutter().name()
                + "` is "
                + cut.cutter().dia()
                + " across"
                + (stepped
                    ? ""
                    : "; take a wider cutter, less offset or several lanes: `step over`")));
  }
}
