package org.handwheel.ide.complete;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.antlr.v4.runtime.Token;
import org.handwheel.ide.View;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.Instrument;
import org.handwheel.model.Shop;
import org.handwheel.model.build.FileUnits;
import org.handwheel.syntax.Section;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.Bench;
import org.handwheel.work.Drawing;
import org.handwheel.work.FaceState;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/**
 * How things stand at the cursor: the work, the bench and the shop.
 *
 * @param setup the setup the cursor is in, if it is in one that was worked through
 * @param work the work just before the cursor's line, if the plan was worked through
 * @param bench the machine just before the cursor's line, if it is in a setup with a step before
 * @param units the file's units
 */
public record Situation(
    View view,
    @Nullable SetupRun setup,
    @Nullable Workpiece work,
    @Nullable Bench bench,
    LengthUnit units) {

  static Situation at(View view, Slot slot) {
    return at(view, slot.section(), slot.lineStart() - view.tree().base(slot.section()));
  }

  /** How things stand before a line of a section. */
  public static Situation at(View view, Section section, int lineStart) {
    LengthUnit units = units(view);
    PlanRun run = view.run();
    if (run == null) {
      return new Situation(view, null, null, null, units);
    }
    Workpiece work = run.start();
    Bench bench = null;
    int place = view.tree().base(section);
    for (SetupRun setup : run.setups()) {
      Section own = setup.setup().header().section();
      if (own == section) {
        return in(view, setup, bench, lineStart, units);
      }
      if (view.tree().contains(setup.setup().header()) && view.tree().base(own) < place) {
        work = setup.after();
        bench = last(setup, bench);
      }
    }
    return new Situation(view, null, work, null, units);
  }

  private static @Nullable Bench last(SetupRun setup, @Nullable Bench before) {
    return setup.steps().isEmpty()
        ? before
        : setup.steps().get(setup.steps().size() - 1).benchAfter();
  }

  private static Situation in(
      View view, SetupRun setup, @Nullable Bench left, int lineStart, LengthUnit units) {
    Workpiece work = setup.before();
    Bench bench = left == null ? null : left.forNewSetup();
    for (StepRun step : setup.steps()) {
      if (step.step().origin().start() >= lineStart) {
        break;
      }
      work = step.after();
      bench = step.benchAfter();
    }
    return new Situation(view, setup, work, bench, units);
  }

  /** The units the file states; millimetres if it does not. */
  public static LengthUnit units(View view) {
    return FileUnits.of(view.tree());
  }

  public Shop shop() {
    return view.plan() == null ? Shop.EMPTY : view.plan().shop();
  }

  public @Nullable Orientation orientation() {
    return setup == null ? null : setup.orientation();
  }

  /** What a face is now, if the plan could be worked through. */
  Optional<FaceState> face(Face face) {
    return work == null ? Optional.empty() : Optional.of(work.face(face));
  }

  Drawing.@Nullable Demand demand(Face face) {
    return view.run() == null ? null : view.run().drawing().demand(face.dimension());
  }

  /** A bare number in the file's units, as it would be written: 0.25, 0.01, 10. */
  public String number(Length length) {
    return switch (units) {
      case IN -> LengthText.number(length, LengthUnit.IN, 4, 0);
      case THOU -> LengthText.number(length, LengthUnit.THOU, 1, 0);
      default -> LengthText.number(length, LengthUnit.MM, 3, 0);
    };
  }

  /** The finest instrument that can measure a size between two faces. */
  public Optional<Instrument> instrumentFor(Face face) {
    SizeState size = work == null ? null : work.size(face.dimension());
    LengthRange range = size == null ? null : size.range();
    return instrumentFor(range);
  }

  /** The finest instrument of the shop that can measure everything in a range. */
  public Optional<Instrument> instrumentFor(@Nullable LengthRange range) {
    List<Instrument> fitting =
        shop().all(Owned.Instrument.class).stream()
            .filter(instrument -> instrument.instrumentKind().measuresSizes())
            .filter(
                instrument -> instrument.instrumentKind() != Owned.InstrumentKind.DEPTH_MICROMETER)
            .filter(instrument -> fits(instrument, range))
            .toList();
    return fitting.stream().min((a, b) -> a.accuracy().compareTo(b.accuracy()));
  }

  static boolean fits(Instrument instrument, @Nullable LengthRange range) {
    return range == null || instrument.range() == null || instrument.range().contains(range);
  }

  /** The face a token names, if it is a face. */
  static Optional<Face> face(@Nullable Token token) {
    if (token == null) {
      return Optional.empty();
    }
    String word = token.getText().toLowerCase(Locale.ROOT);
    return Face.all().stream().filter(face -> face.word().equals(word)).findFirst();
  }
}
