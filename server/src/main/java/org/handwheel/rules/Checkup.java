package org.handwheel.rules;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.stream.Stream;
import org.handwheel.model.Face;
import org.handwheel.model.Inspection;
import org.handwheel.model.Limits;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.model.Setup;
import org.handwheel.model.Step;
import org.handwheel.rules.EachSetup.Reach;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
import org.handwheel.work.CutRun;
import org.handwheel.work.Drawing;
import org.handwheel.work.Obstacle;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.FeatureHits;
import org.handwheel.work.feature.FeatureRun;
import org.handwheel.work.hole.DrawnHole;
import org.handwheel.work.hole.DrawnHoles;
import org.handwheel.work.hole.HoleWork;
import org.jspecify.annotations.Nullable;

/**
 * What rules look at: a plan, the plan worked through as planned or with one log's readings, and
 * the tables.
 */
public final class Checkup {
  private final Plan plan;
  private final PlanRun run;
  private final StandardTables tables;
  private final boolean whole;
  private final List<SetupLines> lines;
  private final List<CutRun> cuts;
  private final List<PlanRun.SetupRun> wholeSetups;
  private final Map<String, Rule> rules;
  private final SetupFindings inSetups;

  /** What each rule found, worked out once, by whoever asks first: a rule may ask for another's. */
  private final Map<String, List<Finding>> found = new HashMap<>();

  private boolean setupsChecked;
  private @Nullable Set<Face> facesToCut;
  private @Nullable List<CutRun> skims;
  private @Nullable List<CutRun> counted;
  private @Nullable List<SetupLines.Line> onHoles;
  private @Nullable List<SetupLines.Line> onFeatures;
  private @Nullable List<DrawnHole> drawnHoles;
  private final IdentityHashMap<StepRun, List<FeatureHits.Hit>> featureHits =
      new IdentityHashMap<>();

  /**
   * @param rules by their ids, in the order of their findings
   * @param inSetups what is known of setups; what is found out is added
   */
  Checkup(
      Plan plan,
      PlanRun run,
      StandardTables tables,
      Map<String, Rule> rules,
      SetupFindings inSetups) {
    this.rules = rules;
    this.inSetups = inSetups;
    this.wholeSetups = run.knownSetups().toList();
    this.plan = plan;
    this.run = run;
    this.tables = tables;
    this.lines = gathered(wholeSetups);
    this.cuts = cuts(lines);
    this.whole =
        wholeSetups.size() == run.setups().size()
            && lines.stream().allMatch(of -> of.unknownCuts() == 0);
  }

  /** One setup of a plan, as if it were the only one. */
  private Checkup(Checkup plan, PlanRun.SetupRun setup) {
    this.rules = Map.of();
    this.inSetups = plan.inSetups;
    this.plan = plan.plan;
    this.run = plan.run.only(setup);
    this.tables = plan.tables;
    this.whole = false;
    this.wholeSetups = isRead(setup.setup()) ? List.of(setup) : List.of();
    this.lines = gathered(wholeSetups);
    this.cuts = cuts(lines);
  }

  private List<SetupLines> gathered(List<PlanRun.SetupRun> setups) {
    return inSetups.gathered(setups, SetupLines.class, SetupLines::of);
  }

  private static List<CutRun> cuts(List<SetupLines> lines) {
    List<CutRun> cuts = new ArrayList<>();
    lines.forEach(of -> cuts.addAll(of.cuts()));
    return cuts;
  }

  public Plan plan() {
    return plan;
  }

  public PlanRun run() {
    return run;
  }

  /** The cuts of the setups whose start is known, in order. */
  public Stream<CutRun> cuts() {
    return cuts.stream();
  }

  /** Those of the cuts that only clean a face, in order. */
  public List<CutRun> skims() {
    List<CutRun> known = skims;
    if (known == null) {
      known = cuts().filter(cut -> cut.cut().purpose() instanceof Step.Purpose.Clean).toList();
      skims = known;
    }
    return known;
  }

  /** Those of the cuts for which a number of passes is stated, in order. */
  public List<CutRun> countedCuts() {
    List<CutRun> known = counted;
    if (known == null) {
      known = cuts().filter(cut -> cut.countedPasses() != null).toList();
      counted = known;
    }
    return known;
  }

  /** The last of the cuts along a dimension. */
  public Optional<CutRun> lastCut(PartDimension dimension) {
    for (int i = cuts.size() - 1; i >= 0; i--) {
      if (cuts.get(i).face().dimension() == dimension) {
        return Optional.of(cuts.get(i));
      }
    }
    return Optional.empty();
  }

  /** Every line on holes that was worked out, in the setups that could be read, in order. */
  public void forEachHoleLine(BiConsumer<PlanRun.SetupRun, StepRun> action) {
    List<SetupLines.Line> known = onHoles;
    if (known == null) {
      known = lines.stream().flatMap(of -> of.onHoles().stream()).toList();
      onHoles = known;
    }
    known.forEach(line -> action.accept(line.setup(), line.step()));
  }

  /** Every line on a feature, in the setups that could be read, in order. */
  public void forEachFeatureLine(BiConsumer<PlanRun.SetupRun, StepRun> action) {
    List<SetupLines.Line> known = onFeatures;
    if (known == null) {
      known = lines.stream().flatMap(of -> of.onFeatures().stream()).toList();
      onFeatures = known;
    }
    known.forEach(line -> action.accept(line.setup(), line.step()));
  }

  public StandardTables tables() {
    return tables;
  }

  public Limits limits() {
    return plan.shop().limits();
  }

  /**
   * The setups at whose start the state of the work is known: up to and with the first in which a
   * line could not be read.
   */
  public List<PlanRun.SetupRun> setups() {
    List<PlanRun.SetupRun> setups = run.setups();
    return setups.subList(0, Math.min(setups.size(), wholeSetups.size() + 1));
  }

  /**
   * Whether every line of every setup could be read and every cut be worked out: only then does
   * what seems to be missing at the end of the plan really miss.
   */
  public boolean isWhole() {
    return whole;
  }

  /**
   * Where the plan says that the finished part is inspected, if it cuts anything at all: by that it
   * claims to make the whole part.
   */
  public Optional<Origin> inspected() {
    boolean cuts =
        run.steps()
            .anyMatch(
                step ->
                    step.step() instanceof Step.Cut
                        || step.step() instanceof Step.HoleCut
                        || step.step() instanceof Step.FeatureCut);
    return cuts
        ? plan.inspections().stream().map(Inspection::origin).findFirst()
        : Optional.empty();
  }

  /**
   * The setups in which what seems to be missing really misses: those before the first with a line
   * that could not be read, for what that line does to the work is not known after it.
   */
  public List<PlanRun.SetupRun> wholeSetups() {
    return wholeSetups;
  }

  /** The faces that any line of the plan cuts, worked out or not. */
  public Set<Face> facesToCut() {
    Set<Face> known = facesToCut;
    if (known == null) {
      known = EnumSet.noneOf(Face.class);
      for (SetupLines of : gathered(run.setups())) {
        known.addAll(of.facesToCut());
      }
      facesToCut = known;
    }
    return known;
  }

  /** The drawing's holes at their places; none if the part's sizes are not known. */
  public List<DrawnHole> drawnHoles() {
    List<DrawnHole> known = drawnHoles;
    if (known == null) {
      DrawnHoles drawn = HoleWork.drawn(plan, run.drawing(), run.end(), tables);
      known = drawn == null ? List.of() : drawn.all();
      drawnHoles = known;
    }
    return known;
  }

  /** What the tool of a line on a feature passes over; worked out once for all rules. */
  public List<FeatureHits.Hit> featureHits(PlanRun.SetupRun setup, StepRun step) {
    return featureHits.computeIfAbsent(step, one -> FeatureHits.of(run, setup, one));
  }

  /** The faces that a finishing cut of the plan brings to size. */
  public Set<Face> finishedFaces() {
    return inSetups.finishedFaces();
  }

  private static boolean isRead(Setup setup) {
    return setup.damage() == Setup.Damage.NONE;
  }

  /**
   * Whether a rule of its own reports what kept two faces from becoming square or parallel; then it
   * need not be said a second time.
   */
  public boolean isReported(@Nullable Obstacle obstacle) {
    return obstacle != null
        && obstacle.kind().rules().stream().anyMatch(id -> !findings(id).isEmpty());
  }

  /** What all rules find. */
  List<Finding> findings() {
    return rules.keySet().stream().flatMap(id -> findings(id).stream()).toList();
  }

  private List<Finding> findings(String id) {
    List<Finding> known = found.get(id);
    if (known != null) {
      return known;
    }
    Rule rule = rules.get(id);
    if (rule == null) {
      return List.of();
    }
    if (rule instanceof EachSetup) {
      checkSetups();
      return found.getOrDefault(id, List.of());
    }
    List<Finding> findings = new ArrayList<>();
    rule.check(this, findings::add);
    found.put(id, findings);
    return findings;
  }

  /** Runs all rules that look at one setup at a time over the setups where they are not known. */
  private void checkSetups() {
    if (setupsChecked) {
      return;
    }
    setupsChecked = true;
    int known = setups().size();
    for (PlanRun.SetupRun setup : run.setups()) {
      Reach reach = known-- > 0 ? Reach.KNOWN : Reach.ALL;
      inSetups
          .of(setup, reach, alone -> checkSetup(alone, reach))
          .forEach(
              (id, findings) ->
                  found.computeIfAbsent(id, key -> new ArrayList<>()).addAll(findings));
    }
    for (Rule rule : rules.values()) {
      if (rule instanceof EachSetup each) {
        each.checkPlan(
            this,
            finding -> found.computeIfAbsent(rule.id(), key -> new ArrayList<>()).add(finding));
      }
    }
  }

  /**
   * What is taken from the run of each setup, in order, by a function that looks at nothing else;
   * kept as long as the run is.
   */
  public <T> List<T> gathered(Class<T> type, Function<PlanRun.SetupRun, T> gather) {
    return inSetups.gathered(run.setups(), type, gather);
  }

  private List<Finding> checkSetup(PlanRun.SetupRun setup, Reach reach) {
    Checkup alone = new Checkup(this, setup);
    List<Finding> findings = new ArrayList<>();
    for (Rule rule : rules.values()) {
      if (rule instanceof EachSetup each && (reach == Reach.KNOWN || each.reach() == Reach.ALL)) {
        rule.check(alone, findings::add);
      }
    }
    return findings;
  }

  /** Something to do with a line on a slot, pocket or outline. */
  public interface FeatureAction {
    void accept(PlanRun.SetupRun setup, PlanRun.StepRun step, FeatureRun feature);
  }

  /** Every line on a feature in the setups that could be read, in order. */
  public void forEachKnownFeature(FeatureAction action) {
    forEachFeatureLine(
        (setup, step) -> {
          FeatureRun feature = step.feature();
          if (feature != null) {
            action.accept(setup, step, feature);
          }
        });
  }

  /** The size the drawing asks for along a dimension, if it can be relied on. */
  public Drawing.@Nullable Demand demand(PartDimension dimension) {
    return run.drawing().demand(dimension);
  }
}
