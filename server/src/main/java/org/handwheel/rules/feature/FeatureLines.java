package org.handwheel.rules.feature;

import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.handwheel.model.Part;
import org.handwheel.rules.Checkup;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.units.Length;
import org.handwheel.work.PartBox;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.DrawnFeature;
import org.handwheel.work.feature.FeatureRun;
import org.handwheel.work.feature.Plane;
import org.locationtech.jts.geom.Geometry;

/** What several rules about slots and outlines ask for. */
final class FeatureLines {
  private FeatureLines() {}

  /** Every line on a feature, in the setups that could be read. */
  static void forEach(Checkup checkup, BiConsumer<SetupRun, StepRun> action) {
    checkup.forEachFeatureLine(action);
  }

  /** The drawing's features at their places; those it does not describe in full are left out. */
  static List<DrawnFeature> drawn(Checkup checkup) {
    Part part = checkup.plan().part();
    Optional<PartBox> box = PartBox.of(checkup.run().drawing(), checkup.run().end());
    return part == null || box.isEmpty()
        ? List.of()
        : part.features().stream()
            .flatMap(spec -> DrawnFeature.of(spec, box.get()).stream())
            .toList();
  }

  /** The line of the drawing that a cut follows. */
  static Related drawing(FeatureRun run) {
    return new Related(run.spec().origin(), "it is drawn here");
  }

  /**
   * How thick a region is where it is thickest: the diameter of the largest circle within it.
   *
   * @return zero for a region of no thickness
   */
  static Length thickness(Geometry region) {
    return Plane.thickness(region);
  }
}
