package org.handwheel.plan.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.handwheel.model.Hold;
import org.handwheel.model.LogSection;
import org.handwheel.model.Owned;
import org.handwheel.model.Plan;
import org.handwheel.model.Step;
import org.handwheel.plan.picture.Drawing.Arrangement;
import org.handwheel.plan.picture.PictureLayout;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.picture.SetupPicture;
import org.handwheel.plan.sheet.Sheet.Fact;
import org.handwheel.plan.sheet.Sheet.SetupPage;
import org.handwheel.plan.sheet.Sheet.SheetStep;
import org.handwheel.plan.sheet.Sheet.ToMeasure;
import org.handwheel.rules.Checked;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.LengthRange;
import org.handwheel.work.DialMove;
import org.handwheel.work.DialMoves;
import org.handwheel.work.Drawing;
import org.handwheel.work.Engine;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.SetupTime;
import org.handwheel.work.SizeState;
import org.handwheel.work.hole.CoordinateTable;
import org.handwheel.work.hole.Coordinates;
import org.jspecify.annotations.Nullable;

/** Makes the sheet of a plan that was checked. */
public final class Sheets {
  private static final int MOST_WARNINGS = 12;

  private final StandardTables tables;
  private final Projection projection;

  /** Makes sheets whose pictures have their views arranged so. */
  public Sheets(StandardTables tables, Projection projection) {
    this.tables = tables;
    this.projection = projection;
  }

  /**
   * The sheet of a plan.
   *
   * @param checked a plan that was worked through
   * @param log the readings of one piece, or nothing for the plan as planned
   * @throws IllegalArgumentException if it was not worked through
   */
  public Sheet sheet(Checked checked, @Nullable LogSection log) {
    PlanRun planned = checked.run();
    if (planned == null) {
      throw new IllegalArgumentException("a sheet is made of a plan that was worked through");
    }
    Plan plan = planned.plan();
    PlanRun run = log == null ? planned : Engine.run(plan, log, tables);
    List<SetupRun> setups = run.knownSetups().toList();
    List<CoordinateTable> holes = Coordinates.all(run);
    List<SetupPage> pages = new ArrayList<>();
    for (int i = 0; i < setups.size(); i++) {
      pages.add(page(checked.tree(), run, setups.get(i), i + 1, holes));
    }
    return new Sheet(
        plan.title().isEmpty() ? plan.path() : plan.title(),
        plan.revision(),
        plan.path(),
        log == null ? null : log.title(),
        about(run, setups),
        StockLines.of(run),
        ToolList.of(run, setups),
        pages,
        Checks.of(run, tables),
        warnings(checked, setups.size()));
  }

  private static List<String> warnings(Checked checked, int known) {
    List<String> warnings = new ArrayList<>();
    List<Finding> findings =
        checked.findings().stream().filter(found -> found.severity() != Severity.INFO).toList();
    for (Finding found : findings.subList(0, Math.min(MOST_WARNINGS, findings.size()))) {
      String line =
          checked.tree().contains(found.origin())
              ? "line " + (checked.tree().line(found.origin()) + 1) + ", "
              : "";
      warnings.add(line + found.rule() + ": " + found.message());
    }
    if (findings.size() > MOST_WARNINGS) {
      warnings.add("and " + (findings.size() - MOST_WARNINGS) + " more");
    }
    int all = checked.plan() == null ? known : checked.plan().setups().size();
    if (known < all) {
      warnings.add(
          "only "
              + known
              + " of "
              + all
              + " setups are here: a line after them cannot be read, and sizes behind it would"
              + " mean nothing");
    }
    return warnings;
  }

  private static List<Fact> about(PlanRun run, List<SetupRun> setups) {
    List<Fact> facts = new ArrayList<>();
    Plan plan = run.plan();
    Owned.Machine machine = plan.machine();
    if (machine != null) {
      facts.add(new Fact("Machine", machine.name()));
    }
    if (run.material() != null) {
      facts.add(new Fact("Material", run.material().words()));
    } else if (plan.part() != null && plan.part().material() != null) {
      facts.add(new Fact("Material", plan.part().material().value()));
    }
    if (plan.part() != null && !plan.part().datums().isEmpty()) {
      facts.add(
          new Fact(
              "Datums",
              String.join(
                  ", ",
                  plan.part().datums().entrySet().stream()
                      .map(datum -> datum.getKey() + " " + datum.getValue().word())
                      .sorted()
                      .toList())));
    }
    double minutes = setups.stream().mapToDouble(setup -> SetupTime.of(run, setup).minutes()).sum();
    facts.add(new Fact("Setups", setups.size() + ", about " + Math.round(minutes) + " min in all"));
    return facts;
  }

  private SetupPage page(
      SyntaxTree tree, PlanRun run, SetupRun setup, int number, List<CoordinateTable> holes) {
    List<CoordinateTable> own =
        holes.stream().filter(table -> table.setup().equals(setup)).toList();
    SetupTime time = SetupTime.of(run, setup);
    List<Fact> facts = new ArrayList<>();
    facts.add(
        new Fact(
            "Time",
            "about "
                + Math.round(time.minutes())
                + " min, of which "
                + Math.round(time.cutting())
                + " cutting"));
    return new SetupPage(
        number,
        StepWords.name(setup.setup().name()),
        setup.setup().title(),
        SetupPicture.of(tree, run.plan().part(), setup, projection)
            .map(picture -> PictureLayout.of(picture, tree, Arrangement.VIEWS))
            .orElse(null),
        facts,
        steps(tree, run, setup, own),
        own,
        OutlineTables.of(run, setup));
  }

  private List<SheetStep> steps(
      SyntaxTree tree, PlanRun run, SetupRun setup, List<CoordinateTable> holes) {
    List<SheetStep> steps = new ArrayList<>();
    Hold hold = setup.setup().hold();
    StepWords words = new StepWords(tree, setup, run.plan().machine());
    int before = setup.setup().stepsBeforeHold();
    for (int i = 0; i < setup.steps().size(); i++) {
      if (i == before) {
        hold(tree, setup, hold, steps);
      }
      steps.add(step(tree, run, setup, i, words, holes, steps.size() + 1));
    }
    if (setup.steps().size() <= before) {
      hold(tree, setup, hold, steps);
    }
    return steps;
  }

  private static void hold(
      SyntaxTree tree, SetupRun setup, @Nullable Hold hold, List<SheetStep> steps) {
    if (hold == null) {
      return;
    }
    int line = tree.line(hold.origin()) + 1;
    String what =
        "Spindle stopped: brush and wipe all chips off the work, "
            + (hold.rest() instanceof Hold.Rest.InVise
                ? "the jaws and what lies in them"
                : "the plate")
            + "; feel for burrs";
    steps.add(new SheetStep(steps.size() + 1, line, what, List.of(), null, null, null, null));
    steps.add(
        new SheetStep(
            steps.size() + 1,
            line,
            HoldWords.action(hold),
            HoldWords.facts(hold, setup),
            null,
            null,
            null,
            null));
  }

  private SheetStep step(
      SyntaxTree tree,
      PlanRun run,
      SetupRun setup,
      int index,
      StepWords words,
      List<CoordinateTable> holes,
      int number) {
    StepRun step = setup.steps().get(index);
    DialMove move = DialMoves.of(run, setup, index).orElse(null);
    List<Fact> facts = new ArrayList<>(words.facts(step));
    facts.addAll(CutSteps.facts(run, step, move));
    facts.addAll(HoleSteps.facts(run, step, holes, tables));
    return new SheetStep(
        number,
        tree.line(step.step().origin()) + 1,
        words.action(step),
        facts,
        move,
        CutSteps.expected(run, step.cut()),
        Readings.of(run, setup, index).orElse(null),
        measure(run, setup, index));
  }

  private static @Nullable ToMeasure measure(PlanRun run, SetupRun setup, int index) {
    StepRun step = setup.steps().get(index);
    if (!(step.step() instanceof Step.Measure measure)) {
      return null;
    }
    SizeState size = step.before().size(measure.dimension());
    Drawing.Demand demand = run.drawing().demand(measure.dimension());
    boolean finished =
        setup.steps().subList(0, index).stream()
            .filter(one -> one.cut() != null)
            .filter(
                one -> Objects.requireNonNull(one.cut()).face().dimension() == measure.dimension())
            .reduce((first, second) -> second)
            .map(
                one ->
                    Objects.requireNonNull(one.cut()).cut().purpose()
                        instanceof Step.Purpose.Finish)
            .orElse(false);
    LengthRange limits = finished && demand != null ? demand.limits() : null;
    return new ToMeasure(
        measure.dimension(),
        size == null ? null : size.range(),
        limits,
        measure.instrument().name(),
        step.reading());
  }
}
