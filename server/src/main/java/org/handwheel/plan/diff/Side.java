package org.handwheel.plan.diff;

import java.util.HashSet;
import java.util.Set;
import org.handwheel.model.Plan;
import org.handwheel.model.build.FileUnits;
import org.handwheel.rules.Checked;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.jspecify.annotations.Nullable;

/** A plan on one side of a comparison. */
final class Side {
  private final Checked checked;
  private final Plan plan;
  private final LengthUnit units;
  private final Set<Section> known = new HashSet<>();

  Side(Checked checked, Plan plan) {
    this.checked = checked;
    this.plan = plan;
    this.units = FileUnits.of(checked.tree());
    PlanRun run = checked.run();
    if (run != null) {
      run.knownSetups().forEach(setup -> known.add(setup.setup().header().section()));
    }
  }

  Plan plan() {
    return plan;
  }

  LengthUnit units() {
    return units;
  }

  @Nullable PlanRun run() {
    return checked.run();
  }

  /** The run of a setup, if every line up to its end could be read. */
  @Nullable SetupRun run(Section section) {
    PlanRun run = checked.run();
    if (run == null || !known.contains(section)) {
      return null;
    }
    return run.setups().stream()
        .filter(setup -> setup.setup().header().section() == section)
        .findFirst()
        .orElse(null);
  }

  /** The line of this file a place starts on, from 1; 0 if it is in no line of it. */
  int line(@Nullable Origin origin) {
    return origin == null || !checked.tree().contains(origin) ? 0 : checked.tree().line(origin) + 1;
  }
}
