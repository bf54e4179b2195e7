package org.handwheel.rules.feature;

import java.util.function.Consumer;
import org.handwheel.model.Part;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.work.outline.FreeOutline;

/** A free outline whose lines and arcs do not make a form. */
public final class OutlineForm extends SimpleRule {
  public OutlineForm() {
    super("outline-form", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Part part = checkup.plan().part();
    if (part == null) {
      return;
    }
    for (Part.FeatureSpec spec : part.features()) {
      if (!spec.vertices().isEmpty()) {
        for (FreeOutline.Problem problem : FreeOutline.of(spec).problems()) {
          out.accept(
              finding(
                  problem.origin(),
                  "`" + spec.name() + "`: " + problem.message(),
                  new Finding.Related(spec.origin(), "the outline")));
        }
      }
    }
  }
}
