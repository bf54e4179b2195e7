package org.handwheel.model.build;

import java.util.Map;
import org.handwheel.model.Plan;
import org.handwheel.model.Shop.ShopFile;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;

/** A plan as it was read, and what a reading of its next text can take over. */
public final class PlanReading {
  private final Plan plan;
  private final Map<SyntaxTree, ShopFile> shops;
  private final Map<Section, SetupRead> setups;

  /** The maps are kept, not copied: nobody changes them any more. */
  PlanReading(Plan plan, Map<SyntaxTree, ShopFile> shops, Map<Section, SetupRead> setups) {
    this.plan = plan;
    this.shops = shops;
    this.setups = setups;
  }

  public Plan plan() {
    return plan;
  }

  /** The shop files read, by their trees. */
  Map<SyntaxTree, ShopFile> shops() {
    return shops;
  }

  /** The setups that may be taken over, by their sections. */
  Map<Section, SetupRead> setups() {
    return setups;
  }
}
