package org.handwheel.rules.size;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.model.Step;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.PlanRun.StepRun;

/** Measuring over burrs: the instrument reads the burr. Each burr is reported once. */
public final class MeasureBeforeDeburr extends SimpleRule {
  public MeasureBeforeDeburr() {
    super("measure-before-deburr", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Set<Burr> reported = new HashSet<>();
    checkup
        .wholeSetups()
        .forEach(setup -> setup.steps().forEach(step -> check(step, reported, out)));
  }

  /** The burrs that one line leaves on a face. */
  private record Burr(Face face, Origin origin) {}

  private void check(StepRun step, Set<Burr> reported, Consumer<Finding> out) {
    if (!(step.step() instanceof Step.Measure measure)) {
      return;
    }
    List<Related> burrs = new ArrayList<>();
    List<String> faces = new ArrayList<>();
    for (Face face : Face.all()) {
      Origin burr = step.before().face(face).burr();
      if (face.dimension() == measure.dimension()
          && burr != null
          && reported.add(new Burr(face, burr))) {
        faces.add("the " + face.word());
        burrs.add(new Related(burr, "the burrs of the " + face.word() + " come from here"));
      }
    }
    if (!faces.isEmpty()) {
      out.accept(
          finding(
              measure.origin(),
              "the edges of "
                  + String.join(" and ", faces)
                  + " still have burrs; deburr them before measuring the "
                  + measure.dimension().word(),
              burrs.toArray(Related[]::new)));
    }
  }
}
