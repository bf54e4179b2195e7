package org.handwheel.rules.size;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.model.Step;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.work.PlanRun.StepRun;

/** Measuring over burrs: the instrument reads the burr. */
public final class MeasureBeforeDeburr extends SimpleRule implements EachSetup {
  public MeasureBeforeDeburr() {
    super("measure-before-deburr", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.wholeSetups().forEach(setup -> setup.steps().forEach(step -> check(step, out)));
  }

  private void check(StepRun step, Consumer<Finding> out) {
    if (!(step.step() instanceof Step.Measure measure)) {
      return;
    }
    List<Related> burrs = new ArrayList<>();
    List<String> faces = new ArrayList<>();
    for (Face face : Face.all()) {
      Origin burr = step.before().face(face).burr();
      if (face.dimension() == measure.dimension() && burr != null) {
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
