package org.handwheel.rules.cut;

import java.util.function.Consumer;
import org.handwheel.model.Owned;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.rules.size.UnitSuspect;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.work.CutRun;
import org.handwheel.work.feature.DrawnFeature;
import org.handwheel.work.feature.FeatureRun;

/** A cut deeper than the cutter's flutes are long. */
public final class DepthOverFlutes extends SimpleRule implements EachSetup {
  public DepthOverFlutes() {
    super("depth-over-flutes", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup
        .cuts()
        .filter(cut -> !UnitSuspect.isSuspectDepth(checkup, cut))
        .forEach(cut -> check(cut, out));
    checkup.forEachKnownFeature((setup, step, feature) -> check(feature, out));
  }

  /** Between walls the shank follows the flutes down, and what holds it stays above the work. */
  private void check(FeatureRun feature, Consumer<Finding> out) {
    Owned.Cutter cutter = feature.cutter();
    DrawnFeature drawn = feature.drawn();
    if (cutter == null || drawn == null || feature.refusal().isPresent()) {
      return;
    }
    boolean rubs = cutter.shank() == null || !cutter.shank().isLessThan(cutter.dia());
    String deep = "`" + drawn.name() + "` is " + drawn.depth() + " deep; ";
    String why = "";
    if (rubs && drawn.depth().isMoreThan(cutter.flute())) {
      why =
          "the flutes of `"
              + cutter.name()
              + "` are "
              + cutter.flute()
              + " long and the shank would rub";
    } else if (cutter.reach() != null && drawn.depth().isMoreThan(cutter.reach())) {
      why =
          "`"
              + cutter.name()
              + "` reaches "
              + cutter.reach()
              + ", then what holds it comes down on the work";
    }
    if (!why.isEmpty()) {
      out.accept(
          finding(
              feature.cut().origin(),
              deep + why,
              new Related(cutter.origin(), "the cutter is described here"),
              new Related(feature.spec().origin(), "it is drawn here")));
    }
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
