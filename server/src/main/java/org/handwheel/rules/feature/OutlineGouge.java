package org.handwheel.rules.feature;

import java.util.function.Consumer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.feature.DrawnFeature;
import org.handwheel.work.feature.FeatureRun;
import org.handwheel.work.feature.Plane;
import org.locationtech.jts.geom.Geometry;

/** A cutter that passes over metal which the finished part keeps. */
public final class OutlineGouge extends SimpleRule {
  /** What the polygons of round sweeps may be off, in millimetres. */
  private static final double FACETS = 0.01;

  public OutlineGouge() {
    super("outline-gouge", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    FeatureLines.forEach(
        checkup,
        (setup, step) -> {
          FeatureRun run = step.feature();
          if (run == null || run.drawn() == null || run.sweep() == null) {
            return;
          }
          Geometry lost = run.sweep().intersection(kept(checkup, run.drawn()));
          Length into = FeatureLines.thickness(Plane.grown(lost, -FACETS));
          if (into.isPositive() && run.cutter() != null) {
            out.accept(
                finding(
                    step.step().origin(),
                    run.cutter().name()
                        + " takes "
                        + FeatureLines.thickness(lost)
                        + " off beside `"
                        + run.spec().name()
                        + "`, where the part is to keep its metal",
                    FeatureLines.drawing(run)));
          }
        });
  }

  /** What stays of the face down to the depth of a feature, by the drawing of all features. */
  private static Geometry kept(Checkup checkup, DrawnFeature cut) {
    // A cutter may be as wide as the drawing's limits let the opening be: as it is cut, so it is.
    Geometry kept = cut.faceRegion().difference(cut.gone(0));
    for (DrawnFeature other : FeatureLines.drawn(checkup)) {
      boolean sameWay =
          other.frame().face() == cut.frame().face()
              || (other.isThrough() && other.frame().face() == cut.frame().face().opposite());
      if (sameWay && !other.depth().isLessThan(cut.depth())) {
        kept = kept.difference(other.gone(0));
      }
    }
    return kept;
  }
}
