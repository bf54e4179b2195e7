package org.handwheel.work;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.model.Located;
import org.handwheel.model.LogSection;
import org.handwheel.model.LogSection.Reading;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.model.Setup;
import org.handwheel.model.Step;
import org.handwheel.model.Step.Purpose;
import org.handwheel.model.Stock.Skin;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Section;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.Slope;
import org.handwheel.work.FaceState.Condition;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.FeatureWork;
import org.handwheel.work.hole.HoleWork;
import org.jspecify.annotations.Nullable;

/** Works a plan through, line by line; a pure function. */
public final class Engine {
  /** No place in a run, and none before one. */
  private static final int NOWHERE = -2;

  private static final Length TRAM_RUN = Length.mm("150");
  private static final Length TRUE_RUN = Length.mm("100");

  /** For a material that no table knows: between the brasses and mild steel. */
  private static final double UNKNOWN_FORCE = 1500;

  private final Plan plan;
  private final StandardTables tables;
  private final @Nullable LogSection log;
  private final Limits limits;
  private final Drawing drawing;
  private final @Nullable KnownMaterial material;
  private final CutCalculator calculator;
  private final Map<String, Integer> measured = new HashMap<>();

  private Engine(Plan plan, @Nullable LogSection log, StandardTables tables) {
    this.plan = plan;
    this.tables = tables;
    this.log = log;
    this.limits = plan.shop().limits();
    this.drawing = Drawing.of(plan, tables);
    this.material = KnownMaterial.of(plan, tables).orElse(null);
    this.calculator =
        new CutCalculator(drawing, limits, plan.machine(), specificForce(material, limits));
  }

  /** The plan as planned. */
  public static PlanRun run(Plan plan, StandardTables tables) {
    return run(plan, tables, null);
  }

  /** The plan with the readings of one piece in place of its measurements. */
  public static PlanRun run(Plan plan, LogSection log, StandardTables tables) {
    return new Engine(plan, log, tables).run(List.of());
  }

  /** Cutting force per area of chip in N/mm2, at the chip load the shop's limits name. */
  private static double specificForce(@Nullable KnownMaterial material, Limits limits) {
    double chip = limits.length(Limit.FEED_PER_TOOTH).millimetres();
    if (material == null || chip <= 0) {
      return UNKNOWN_FORCE;
    }
    return material.force().map(force -> force.at(chip)).orElse(UNKNOWN_FORCE);
  }

  /**
   * The plan as planned, going on from an earlier run of it: a setup that says the same and starts
   * from the same state is not worked through again. The result equals a run from the beginning,
   * for a setup's run depends on nothing else.
   *
   * @param earlier a run with the same tables, of this or any other plan, or nothing
   */
  public static PlanRun run(Plan plan, StandardTables tables, @Nullable PlanRun earlier) {
    Engine engine = new Engine(plan, null, tables);
    return engine.run(earlier == null ? List.of() : engine.reusable(earlier));
  }

  /** The setups of an earlier run that may be taken over, in order. */
  private List<SetupRun> reusable(PlanRun earlier) {
    boolean sameGround =
        earlier.log() == null
            && earlier.drawing().equals(drawing)
            && earlier.plan().shop().limits().equals(limits)
            && Objects.equals(earlier.material(), material)
            && Objects.equals(earlier.plan().machine(), plan.machine())
            && sameForms(earlier.plan());
    return sameGround ? earlier.setups() : List.of();
  }

  /** Whether holes and the rest are drawn as in another plan, with the same tools for holes. */
  private boolean sameForms(Plan other) {
    return drawnForms(plan).equals(drawnForms(other))
        && other.shop().all(Owned.Piece.class).equals(plan.shop().all(Owned.Piece.class));
  }

  private static List<Object> drawnForms(Plan plan) {
    Part part = plan.part();
    return part == null ? List.of() : List.of(part.holes(), part.patterns(), part.features());
  }

  private PlanRun run(List<SetupRun> reusable) {
    Map<Section, Integer> places = new HashMap<>();
    for (int i = 0; i < reusable.size(); i++) {
      places.put(reusable.get(i).setup().header().section(), i);
    }
    Workpiece start = Workpiece.of(plan);
    Bench atStart = Bench.atStart(Slope.of(limits.length(Limit.TRAM), TRAM_RUN));
    List<SetupRun> setups = new ArrayList<>();
    SetupRun before = null;
    // The place in the earlier run of the setup before, if that was taken over.
    int last = NOWHERE;
    for (Setup setup : plan.setups()) {
      int place = places.getOrDefault(setup.header().section(), NOWHERE);
      SetupRun run = place == NOWHERE ? null : reusable.get(place);
      // One that followed the same run as it does now starts from the same state.
      if (run == null || place != last + 1 || !run.setup().equals(setup)) {
        Workpiece work = before == null ? start : before.after();
        Bench bench = (before == null ? atStart : before.benchAfter()).forNewSetup();
        boolean same =
            run != null
                && run.setup().equals(setup)
                && run.start().equals(work)
                && run.benchBefore().equals(bench);
        if (!same) {
          run = new SetupWork(setup, work, bench).run();
          place = NOWHERE;
        }
      }
      last = place;
      setups.add(run);
      before = run;
    }
    Workpiece end = before == null ? start : before.after();
    return new PlanRun(plan, log, drawing, material, start, setups, end);
  }

  /** The walk through one setup; the only mutable state, and it does not leave this method. */
  private final class SetupWork {
    private final Setup setup;
    private final Set<Face> cutFaces = EnumSet.noneOf(Face.class);
    private final List<StepRun> steps = new ArrayList<>();
    private Workpiece work;
    private Bench bench;
    private @Nullable Grip grip;
    private @Nullable Orientation orientation;
    private Workpiece gripped;
    private final Bench benchBefore;

    SetupWork(Setup setup, Workpiece work, Bench bench) {
      this.setup = setup;
      this.work = work;
      this.bench = bench;
      this.benchBefore = bench;
      this.gripped = work;
    }

    SetupRun run() {
      int index = 0;
      for (Step step : setup.steps()) {
        if (index == setup.stepsBeforeHold()) {
          grip();
        }
        index++;
        steps.add(take(step));
      }
      if (index <= setup.stepsBeforeHold()) {
        grip();
      }
      return new SetupRun(setup, orientation, grip, gripped, benchBefore, steps, work);
    }

    private void grip() {
      gripped = work;
      Hold hold = setup.hold();
      if (hold == null || hold.up() == null) {
        return;
      }
      grip = Grip.of(hold, work).orElse(null);
      Face up = hold.up().value();
      Face fixed = hold.fixed() == null ? null : hold.fixed().value();
      if (fixed != null) {
        Direction jaw =
            hold.rest() instanceof Hold.Rest.InVise inVise
                ? inVise.vise().fixedJaw()
                : Direction.OPERATOR_BACK;
        orientation = Orientation.of(up, fixed, jaw);
      } else if (!(hold.rest() instanceof Hold.Rest.InVise)) {
        orientation = new Orientation(up, up.adjoins(Face.BACK) ? Face.BACK : Face.TOP);
      }
    }

    private StepRun take(Step step) {
      Workpiece before = work;
      Bench benchBefore = bench;
      CutRun cut = null;
      Bearing bearing = null;
      Reading reading = null;
      HoleWork.Outcome made = null;
      FeatureWork.Outcome shaped = null;
      if (step instanceof Step.Seat seat) {
        bench = bench.withSeat(seat);
      } else if (step instanceof Step.TrueVise trueVise) {
        Slope error = trueVise.error();
        bench =
            bench.withTrued(
                new Bench.Trued(
                    trueVise.vise().name(),
                    error != null ? error : Slope.of(limits.length(Limit.TRUED), TRUE_RUN)));
      } else if (step instanceof Step.Tram tram) {
        bench = bench.withTram(tram.error());
      } else if (step instanceof Step.UseCutter use) {
        bench =
            bench.withCutter(
                new Bench.Tool(
                    use.cutter(),
                    use.rpm() == null ? null : use.rpm().value(),
                    use.feedPerTooth() == null ? null : use.feedPerTooth().value(),
                    use.origin()));
      } else if (step instanceof Step.Touch touch) {
        touch(touch);
      } else if (step instanceof Step.Find find) {
        find(find);
      } else if (step instanceof Step.Zero zero) {
        for (Axis axis : zero.axes()) {
          bench = bench.withZero(axis, new Bench.Zero(null, null, zero.origin(), null), null);
        }
      } else if (step instanceof Step.SetDepth set && set.axis() == Axis.Z) {
        bench = bench.withDepthSet(new Bench.DepthSet(set.depth(), set.face(), set.origin()));
      } else if (step instanceof Step.Lock lock) {
        bench = bench.withLocked(lock.axes(), lock.origin());
      } else if (step instanceof Step.Unlock unlock) {
        bench = bench.withUnlocked(unlock.axes());
      } else if (step instanceof Step.MoveHead move) {
        Owned.Machine machine = plan.machine();
        bench =
            bench.withHeadMoved(
                machine == null ? Owned.Column.FIXED : machine.column(), move.origin());
      } else if (step instanceof Step.Deburr deburr) {
        for (Face face : deburr.faces()) {
          work = work.withFace(face, work.face(face).withBurr(null));
        }
      } else if (step instanceof Step.Measure measure) {
        reading = measure(measure);
      } else if (step instanceof Step.HoleCut holes) {
        Set<String> names = new HashSet<>();
        holes.holes().stream().map(Located::value).forEach(names::add);
        bench = bench.withLastHoles(names);
        made = HoleWork.run(plan, drawing, tables, holes, orientation, work);
        work = made == null ? work : made.work();
      } else if (step instanceof Step.FeatureCut feature) {
        shaped = FeatureWork.run(plan, drawing, tables, feature, orientation, work, bench);
        work = shaped == null ? work : shaped.work();
      } else if (step instanceof Step.Cut planned && orientation != null && setup.hold() != null) {
        bearing = grip == null ? bearingOnPlate() : Bearing.of(grip, work, bench, limits);
        cut =
            calculator.run(
                planned, new CutCalculator.Place(setup.hold(), orientation, grip), work, bench);
        if (cut != null && bearing != null) {
          apply(cut, bearing);
        }
      }
      return new StepRun(
          step,
          before,
          benchBefore,
          work,
          bench,
          cut,
          bearing,
          reading,
          made == null ? null : made.run(),
          shaped == null ? null : shaped.run());
    }

    private @Nullable Bearing bearingOnPlate() {
      Hold hold = setup.hold();
      return hold == null || hold.rest() instanceof Hold.Rest.InVise
          ? null
          : Bearing.onPlate(hold, work, bench);
    }

    private void touch(Step.Touch touch) {
      if (orientation == null) {
        return;
      }
      Direction normal = orientation.directionOf(touch.face());
      Set<Axis> axes = EnumSet.of(normal.axis());
      axes.addAll(touch.zeroed());
      for (Axis axis : axes) {
        Direction approach = axis == normal.axis() ? normal.opposite() : null;
        bench =
            bench.withZero(
                axis,
                new Bench.Zero(touch.face(), approach, touch.origin(), null),
                touch.face().dimension());
      }
    }

    private void find(Step.Find find) {
      for (Axis axis : find.zeroed()) {
        Direction approach =
            find.from() != null && find.from().value().axis() == axis
                ? find.from().value().opposite()
                : null;
        // The spindle's axis is found, not a cutter's edge: a change of cutter keeps it.
        bench =
            bench.withZero(
                axis,
                new Bench.Zero(
                    approach == null ? find.face() : null, approach, find.origin(), null),
                find.face() == null ? null : find.face().dimension());
      }
    }

    private @Nullable Reading measure(Step.Measure measure) {
      PartDimension dimension = measure.dimension();
      SizeState size = work.size(dimension);
      Reading reading = nextReading(dimension);
      boolean slip =
          reading != null
              && size != null
              && reading.values().stream()
                  .anyMatch(value -> Drawing.isSlip(value, size.range().middle()));
      if (reading != null && !slip) {
        Owned.Instrument instrument = reading.instrument();
        Length low = reading.values().stream().reduce(reading.values().get(0), Length::min);
        Length high = reading.values().stream().reduce(reading.values().get(0), Length::max);
        LengthRange range = new LengthRange(low, high).widened(instrument.accuracy());
        Length taper = reading.values().size() > 1 ? high.minus(low) : null;
        work =
            work.withSize(dimension, new SizeState(range, range.spread(), taper, reading.origin()));
        if (taper != null) {
          work =
              Taper.afterReadings(
                  work, dimension, new LengthRange(low, high), instrument, reading.origin());
        }
      } else if (size != null) {
        if (!canMeasure(measure.instrument(), size)) {
          return reading;
        }
        // A coarser instrument does not make less known what a finer one showed.
        Length known = Length.min(size.uncertainty(), measure.instrument().accuracy());
        work = work.withSize(dimension, new SizeState(size.range(), known, null, size.since()));
      }
      if (!cutFaces.isEmpty()
          && cutFaces.stream().anyMatch(face -> face.dimension() == dimension)) {
        bench = bench.withCalibrated(dimension);
      }
      return reading;
    }

    private static boolean canMeasure(Owned.Instrument instrument, SizeState size) {
      return instrument.instrumentKind().measuresSizes()
          && (instrument.range() == null || instrument.range().overlaps(size.range()));
    }

    private @Nullable Reading nextReading(PartDimension dimension) {
      if (log == null || setup.name() == null) {
        return null;
      }
      String name = setup.name().value();
      String key = name.toLowerCase(Locale.ROOT) + "/" + dimension.word();
      int index = measured.merge(key, 1, Integer::sum) - 1;
      List<Reading> readings =
          log.readings().stream()
              .filter(
                  reading ->
                      reading.setup().value().equalsIgnoreCase(name)
                          && reading.dimension() == dimension)
              .toList();
      return index < readings.size() ? readings.get(index) : null;
    }

    private void apply(CutRun cut, Bearing bearing) {
      Face face = cut.face();
      // A cut that may go through the work is a slip: what follows from it would mean nothing.
      work =
          cut.after().range().low().isPositive()
              ? work.withSize(face.dimension(), cut.after())
              : work.withoutSize(face.dimension());
      work = work.withFace(face, faceAfter(cut, work.face(face), bench.tram()));
      if (orientation != null) {
        work =
            Squaring.afterCut(
                work,
                face,
                cut.mode(),
                bearing,
                orientation,
                bench,
                limits,
                grip,
                cutFaces,
                cut.cut().origin());
      }
      cutFaces.add(face);
    }
  }

  /** What a face is after a cut: clean once as much has come off as its skin may be deep. */
  private FaceState faceAfter(CutRun cut, FaceState before, Slope tram) {
    Length skin = skinDepth(before.skin());
    Length least = Length.max(Length.ZERO, cut.removal().low());
    Length removed = before.removed().plus(least);
    // A strip the cutter does not reach is reported where it is left; the face counts as if it had
    // been mended there, so that the one mistake is not reported at every later use of the face.
    boolean machined = before.isMachined() || !removed.isLessThan(skin);
    Purpose purpose = cut.cut().purpose();
    if (purpose instanceof Purpose.Clean clean
        && !before.removed().plus(clean.atMost().value()).isLessThan(skin)) {
      machined = true;
      removed = Length.max(removed, skin);
    }
    Condition condition =
        !machined
            ? Condition.SKIMMED
            : purpose instanceof Purpose.Finish ? Condition.FINISHED : Condition.CLEAN;
    return new FaceState(
        condition,
        before.skin(),
        machined ? Flatness.after(cut, tram, limits) : null,
        removed,
        cut.cut().origin(),
        cut.cut().origin());
  }

  private Length skinDepth(Skin skin) {
    return skinDepth(skin, limits);
  }

  /** How deep the marks of a stock's face may go, by the shop's limits. */
  public static Length skinDepth(Skin skin, Limits limits) {
    return switch (skin) {
      case SAWN -> limits.length(Limit.SAWN_SKIN);
      case ROLLED -> limits.length(Limit.ROLLED_SKIN);
      case CAST -> limits.length(Limit.CAST_SKIN);
      case DRAWN -> limits.length(Limit.DRAWN_SKIN);
      case MILLED, GROUND -> Length.ZERO;
    };
  }
}
