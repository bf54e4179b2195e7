package org.handwheel.rules.hole;

import java.util.Set;
import org.handwheel.work.hole.HoleHits.What;

/** A through hole with no room below the work: it goes on into the vise's bed or the table. */
public final class DrillHitsTable extends DrillHits {
  public DrillHitsTable() {
    super("drill-hits-table", Set.of(What.BED, What.TABLE));
  }
}
