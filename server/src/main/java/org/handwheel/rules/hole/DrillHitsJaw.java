package org.handwheel.rules.hole;

import java.util.Set;
import org.handwheel.work.hole.HoleHits.What;

/** A tool for holes that reaches a jaw or a clamp. */
public final class DrillHitsJaw extends DrillHits {
  public DrillHitsJaw() {
    super("drill-hits-jaw", Set.of(What.JAW, What.CLAMP));
  }
}
