package org.handwheel.rules;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.model.Plan;
import org.handwheel.model.Shop;
import org.handwheel.model.Stock;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.work.Drawing;
import org.handwheel.work.KnownMaterial;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.jspecify.annotations.Nullable;

/**
 * What the rules that look at one setup at a time found, by setup; taken over from an earlier check
 * for setups that were not worked through again.
 */
final class SetupFindings {
  private final Ground ground;
  private final IdentityHashMap<SetupRun, Map<String, List<Finding>>> earlier;
  private final IdentityHashMap<SetupRun, Map<String, List<Finding>>> found =
      new IdentityHashMap<>();

  /** What such a rule may look at besides the setup. */
  private record Ground(
      @Nullable Part part,
      @Nullable Stock stock,
      Owned.@Nullable Machine machine,
      Shop shop,
      Drawing drawing,
      @Nullable KnownMaterial material,
      StandardTables tables) {}

  private SetupFindings(
      Ground ground, IdentityHashMap<SetupRun, Map<String, List<Finding>>> earlier) {
    this.ground = ground;
    this.earlier = earlier;
  }

  /**
   * For a plan worked through.
   *
   * @param before of an earlier check by the same rules, or nothing
   */
  static SetupFindings of(
      Plan plan, PlanRun run, StandardTables tables, @Nullable SetupFindings before) {
    Ground ground =
        new Ground(
            plan.part(),
            plan.stock(),
            plan.machine(),
            plan.shop(),
            run.drawing(),
            run.material(),
            tables);
    return before != null && before.ground.equals(ground)
        ? new SetupFindings(ground, before.found)
        : new SetupFindings(ground, new IdentityHashMap<>());
  }

  /** What was found in a setup, by rule; worked out if it is not known. */
  Map<String, List<Finding>> of(SetupRun setup, Function<SetupRun, List<Finding>> check) {
    Map<String, List<Finding>> known = found.get(setup);
    if (known != null) {
      return known;
    }
    Map<String, List<Finding>> before = earlier.get(setup);
    Map<String, List<Finding>> findings = before == null ? byRule(check.apply(setup)) : before;
    found.put(setup, findings);
    return findings;
  }

  private static Map<String, List<Finding>> byRule(List<Finding> findings) {
    if (findings.isEmpty()) {
      return Map.of();
    }
    Map<String, List<Finding>> byRule = new LinkedHashMap<>();
    findings.forEach(
        finding -> byRule.computeIfAbsent(finding.rule(), id -> new ArrayList<>()).add(finding));
    return byRule;
  }
}
