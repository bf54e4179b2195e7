package org.handwheel.rules.hole;

import java.util.Set;
import org.handwheel.work.hole.HoleHits.What;

/** A through hole over a parallel. */
public final class DrillHitsParallel extends DrillHits {
  public DrillHitsParallel() {
    super("drill-hits-parallel", Set.of(What.PARALLEL));
  }
}
