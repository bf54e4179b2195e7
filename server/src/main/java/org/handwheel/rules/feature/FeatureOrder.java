package org.handwheel.rules.feature;

import java.util.List;
import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.model.Step;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.FaceFrame;
import org.handwheel.work.PartBox;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.Removed;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** An edge that is found or gripped after an outline has taken it away. */
public final class FeatureOrder extends SimpleRule implements EachSetup {
  /** How much of an edge must be gone for it to be no edge any more. */
  private static final double MOST_OF_IT = 0.7;

  /** How deep along the edge one looks, in millimetres. */
  private static final double STRIP = 0.5;

  private static final GeometryFactory FACTORY = new GeometryFactory();

  public FeatureOrder() {
    super("feature-order", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    for (SetupRun setup : checkup.wholeSetups()) {
      gripped(checkup, setup, out);
      for (StepRun step : setup.steps()) {
        Face face = sought(step.step());
        Removed gone = face == null ? null : taken(checkup, step.before(), face);
        if (gone != null && face != null) {
          report(step.step().origin(), "find the " + face.word() + " edge", gone, out);
        }
      }
    }
  }

  private void gripped(Checkup checkup, SetupRun setup, Consumer<Finding> out) {
    Hold hold = setup.setup().hold();
    if (hold == null || hold.fixed() == null || !(hold.rest() instanceof Hold.Rest.InVise)) {
      return;
    }
    for (Face face : List.of(hold.fixed().value(), hold.fixed().value().opposite())) {
      Removed gone = taken(checkup, setup.before(), face);
      if (gone != null) {
        report(hold.fixed().origin(), "grip the " + face.word(), gone, out);
        return;
      }
    }
  }

  private void report(Origin where, String what, Removed gone, Consumer<Finding> out) {
    out.accept(
        finding(
            where,
            "too late to " + what + ": `" + gone.feature() + "` has taken it away",
            new Related(gone.step(), "it is cut away here")));
  }

  private static @Nullable Face sought(Step step) {
    if (step instanceof Step.Find find) {
      return find.face();
    }
    return step instanceof Step.Touch touch ? touch.face() : null;
  }

  /** What has taken most of a face's edge away, right through, if anything has. */
  private static @Nullable Removed taken(Checkup checkup, Workpiece work, Face face) {
    PartBox box = PartBox.of(checkup.run().drawing(), work).orElse(null);
    if (box == null) {
      return null;
    }
    for (Removed removed : work.removed()) {
      if (removed.through() && removed.from().adjoins(face) && covers(removed, box, face)) {
        return removed;
      }
    }
    return null;
  }

  private static boolean covers(Removed removed, PartBox box, Face edge) {
    FaceFrame frame = new FaceFrame(removed.from(), box);
    double first = frame.firstSize().millimetres();
    double second = frame.secondSize().millimetres();
    boolean acrossFirst = edge.dimension() == frame.firstAlong();
    double reach = acrossFirst ? first : second;
    double low = edge.sign() < 0 ? 0 : reach - STRIP;
    Geometry strip =
        FACTORY.toGeometry(
            acrossFirst
                ? new Envelope(low, low + STRIP, 0, second)
                : new Envelope(0, first, low, low + STRIP));
    return removed.region().intersection(strip).getArea() > MOST_OF_IT * strip.getArea();
  }
}
