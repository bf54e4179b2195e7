package org.handwheel.rules;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.model.Plan;
import org.handwheel.model.Shop;
import org.handwheel.model.Stock;
import org.handwheel.rules.EachSetup.Reach;
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
  private final Found earlier;
  private final Found found = new Found();
  private final Gathered gathered;

  /** By setup: in those with a known start, and in those after one that could not be read. */
  private static final class Found {
    private final IdentityHashMap<SetupRun, Map<String, List<Finding>>> known =
        new IdentityHashMap<>();
    private final IdentityHashMap<SetupRun, Map<String, List<Finding>>> beyond =
        new IdentityHashMap<>();

    IdentityHashMap<SetupRun, Map<String, List<Finding>>> of(Reach reach) {
      return reach == Reach.KNOWN ? known : beyond;
    }
  }

  /** What such a rule may look at besides the setup. */
  private record Ground(
      @Nullable Part part,
      @Nullable Stock stock,
      Owned.@Nullable Machine machine,
      Shop shop,
      Drawing drawing,
      @Nullable KnownMaterial material,
      Set<Face> finishedFaces,
      StandardTables tables) {}

  private SetupFindings(Ground ground, Found earlier, Gathered gathered) {
    this.ground = ground;
    this.earlier = earlier;
    this.gathered = gathered;
  }

  /**
   * For a plan worked through.
   *
   * @param before of an earlier check by the same rules, or nothing
   */
  static SetupFindings of(
      Plan plan, PlanRun run, StandardTables tables, @Nullable SetupFindings before) {
    Gathered gathered = new Gathered(before == null ? null : before.gathered);
    Ground ground =
        new Ground(
            plan.part(),
            plan.stock(),
            plan.machine(),
            plan.shop(),
            run.drawing(),
            run.material(),
            finishedFaces(run, gathered),
            tables);
    return before != null && before.ground.equals(ground)
        ? new SetupFindings(ground, before.found, gathered)
        : new SetupFindings(ground, new Found(), gathered);
  }

  private static Set<Face> finishedFaces(PlanRun run, Gathered gathered) {
    Set<Face> faces = EnumSet.noneOf(Face.class);
    List<SetupRun> known = run.knownSetups().toList();
    for (SetupLines lines : gathered.of(known, SetupLines.class, SetupLines::of)) {
      faces.addAll(lines.finished());
    }
    return faces;
  }

  /** What is taken from the run of each setup; kept as long as the run is. */
  <T> List<T> gathered(List<SetupRun> setups, Class<T> type, Function<SetupRun, T> gather) {
    return gathered.of(setups, type, gather);
  }

  /** The faces that a finishing cut brings to size. */
  Set<Face> finishedFaces() {
    return ground.finishedFaces();
  }

  /**
   * What was found in a setup, by rule; worked out if it is not known.
   *
   * @param reach whether the state of the work at its start is known
   */
  Map<String, List<Finding>> of(
      SetupRun setup, Reach reach, Function<SetupRun, List<Finding>> check) {
    Map<String, List<Finding>> known = found.of(reach).get(setup);
    if (known != null) {
      return known;
    }
    // What was found from the other start, if any, may be wanted again by the next check: a line
    // that is being typed makes all after it unknown and known in turns.
    Reach other = reach == Reach.KNOWN ? Reach.ALL : Reach.KNOWN;
    Map<String, List<Finding>> elsewhere = earlier.of(other).get(setup);
    if (elsewhere != null) {
      found.of(other).put(setup, elsewhere);
    }
    Map<String, List<Finding>> before = earlier.of(reach).get(setup);
    Map<String, List<Finding>> findings = before == null ? byRule(check.apply(setup)) : before;
    found.of(reach).put(setup, findings);
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
