package org.handwheel.rules.cut;

import java.util.function.Consumer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.CutRun;

/** A cut deeper than the cutter's flutes are long. */
public final class DepthOverFlutes extends SimpleRule implements EachSetup {
  public DepthOverFlutes() {
    super("depth-over-flutes", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.cuts().forEach(cut -> check(cut, out));
  }

  private void check(CutRun cut, Consumer<Finding> out) {
    if (cut.axialDepth().isMoreThan(cut.cutter().flute())) {
      out.accept(
          finding(
              cut.cut().origin(),
              "this is "
                  + cut.axialDepth()
                  + " deep along the cutter; the flutes of `"
                  + cut.cutter().name()
                  + "` are "
                  + cut.cutter().flute()
                  + " long and the shank would rub",
              new Related(cut.cutter().origin(), "the flutes are given here")));
    }
  }
}
