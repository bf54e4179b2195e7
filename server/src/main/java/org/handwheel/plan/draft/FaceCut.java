package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Face;
import org.handwheel.model.Limit;
import org.handwheel.model.Owned;
import org.handwheel.model.PartDimension;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.Drawing;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/**
 * What comes off a face and in which cuts: a skim where the face opposite is still to be made, else
 * roughing, measuring and finishing to size.
 *
 * @param uncertainty how well the size is known beforehand
 * @param skim the most that may come off, for a skim
 * @param goal the size the face is cut to at last, or nothing for a skim
 * @param removalHigh the most that can come off
 * @param lowestAfter the least size afterwards
 */
record FaceCut(
    Task task,
    Face face,
    LengthRange before,
    Length uncertainty,
    @Nullable Length skim,
    @Nullable Length goal,
    Length removalHigh,
    Length lowestAfter) {
  /** About 10 thou is left for finishing on a small mill (common practice, no source). */
  private static final List<String[]> LEAVINGS =
      List.of(
          new String[] {"0.25", "0.010"},
          new String[] {"0.2", "0.008"},
          new String[] {"0.15", "0.006"},
          new String[] {"0.1", "0.004"});

  /** How the cutter works on the face. */
  enum Way {
    END,
    SIDE
  }

  /** How careful the cuts are. */
  enum Care {
    USUAL,
    /** Lighter passes, and the last one repeated where the cutter's side bends. */
    CAUTIOUS
  }

  /** The cuts, or a sentence on why there can be none. */
  static Optional<FaceCut> of(Task task, Workpiece work, Face face, boolean oppositeLeft, Why why) {
    SizeState size = work.size(face.dimension());
    Drawing.Demand demand = task.demand(face.dimension());
    if (size == null) {
      why.add("the stock does not say its " + face.dimension().word());
      return Optional.empty();
    }
    LengthRange before = size.range();
    if (demand == null || oppositeLeft) {
      return skim(task, work, face, before, demand, oppositeLeft, why);
    }
    if (!before.low().isMoreThan(demand.aim())) {
      why.add(
          "the stock's "
              + face.dimension().word()
              + " may be only "
              + before.low()
              + " when the "
              + face.word()
              + " is cut; "
              + demand.aim()
              + " is wanted, so nothing may be left to cut");
      return Optional.empty();
    }
    return Optional.of(
        new FaceCut(
            task,
            face,
            before,
            size.uncertainty(),
            null,
            demand.aim(),
            before.high().minus(demand.aim()),
            demand.limits().low()));
  }

  private static Optional<FaceCut> skim(
      Task task,
      Workpiece work,
      Face face,
      LengthRange before,
      Drawing.@Nullable Demand demand,
      boolean oppositeLeft,
      Why why) {
    Numbers numbers = task.numbers();
    Length skin = Length.max(task.skin(work, face), numbers.usual("0.1", "0.004"));
    // A quarter more than the skin may be deep, so that the skim is sure to end on clean metal.
    Length wanted = numbers.up(skin.plus(skin.half().half()), "0.1", "0.005");
    wanted = Length.max(wanted, numbers.usual("0.3", "0.012"));
    if (demand != null) {
      Length other = oppositeLeft ? task.skin(work, face.opposite()) : Length.ZERO;
      Length room =
          before
              .low()
              .minus(demand.aim())
              // The errors of touch and dial may take a little from the other face.
              .minus(other.plus(numbers.usual("0.06", "0.0025")))
              .minus(other.isPositive() ? Length.ZERO : numbers.usual("0.15", "0.006"));
      Length most = numbers.down(room, "0.05", "0.002");
      wanted = Length.min(wanted, most);
      if (wanted.isLessThan(skin)) {
        why.add(
            "the stock is too small in "
                + face.dimension().word()
                + ": it may be only "
                + before.low()
                + ", "
                + demand.aim()
                + " is wanted, and cleaning both faces may take "
                + skin.plus(other));
        return Optional.empty();
      }
    }
    return Optional.of(
        new FaceCut(
            task, face, before, before.spread(), wanted, null, wanted, before.low().minus(wanted)));
  }

  boolean isSkim() {
    return goal == null;
  }

  PartDimension dimension() {
    return face.dimension();
  }

  /** The deepest pass: the shop's limit, less where care is asked for. */
  private Length passLimit(Owned.Cutter cutter, Way way, Care care) {
    Length limit =
        way == Way.END
            ? task.limits().length(Limit.HEAVY_PASS)
            : Length.ofMillimetres(
                task.limits().number(Limit.SIDE_PASS) * cutter.dia().millimetres());
    if (way == Way.SIDE) {
      limit = Length.min(limit, task.numbers().usual("1.5", "0.060"));
    }
    if (care == Care.CAUTIOUS) {
      limit = limit.half();
    }
    return Length.max(
        task.numbers().down(limit, "0.05", "0.002"), task.numbers().usual("0.05", "0.002"));
  }

  /** An even depth for each pass. */
  private Length even(Length total, Length limit) {
    if (!total.isPositive() || !limit.isPositive()) {
      return limit;
    }
    long count = Math.max(1, total.stepsOf(limit));
    Length each = Length.ofMillimetres(total.millimetres() / count);
    return Length.min(task.numbers().up(each, "0.05", "0.002"), limit);
  }

  private long passes(Length limit) {
    return limit.isPositive() ? removalHigh.stepsOf(limit) : 1;
  }

  /** How many passes it takes, for the cost. */
  int passes(Owned.Cutter cutter, Way way, Care care) {
    return (int) Math.min(1000, passes(passLimit(cutter, way, care))) + 1;
  }

  /** The lines from the first cut to the last measurement. */
  List<String> lines(Owned.Cutter cutter, Way way, Care care, String clauses, Axis depthAxis) {
    List<String> lines = new ArrayList<>();
    Numbers numbers = task.numbers();
    String deburr = "deburr edges of " + face.word();
    if (skim != null) {
      Length light = way == Way.END ? numbers.usual("0.4", "0.016") : numbers.usual("0.6", "0.024");
      Length each = even(skim, Length.min(light, passLimit(cutter, way, care)));
      lines.add(
          "clean "
              + face.word()
              + " at "
              + numbers.write(each)
              + ", at most "
              + numbers.write(Length.max(skim, each))
              + clauses);
      lines.add(deburr);
      task.anyInstrument(new LengthRange(lowestAfter, before.high()))
          .ifPresent(one -> lines.add("measure " + dimension().word() + " with " + one.name()));
      return lines;
    }
    Drawing.Demand demand = task.demand(dimension());
    if (demand == null) {
      return lines;
    }
    String measure =
        task.instrument(demand, task.dialError(depthAxis))
            .or(() -> task.anyInstrument(demand.limits()))
            .map(one -> "measure " + dimension().word() + " with " + one.name())
            .orElse("");
    String target = " " + face.word() + " to " + dimension().word();
    Optional<Length> leaving = leaving(demand, way);
    if (leaving.isPresent()) {
      // Room for the errors of touch and dial, too.
      Length room =
          leaving
              .get()
              .plus(demand.limits().width().half())
              .minus(task.numbers().usual("0.05", "0.002"));
      if (!uncertainty.isLessThan(room)) {
        task.anyInstrument(before)
            .ifPresent(one -> lines.add("measure " + dimension().word() + " with " + one.name()));
      }
      Length rough = before.high().minus(demand.aim()).minus(leaving.get());
      lines.add(
          "rough"
              + target
              + " leaving "
              + numbers.write(leaving.get())
              + ", pass "
              + numbers.write(even(rough, passLimit(cutter, way, care)))
              + clauses);
      lines.add(deburr);
    }
    lines.add(measure);
    String repeat = care == Care.CAUTIOUS && way == Way.SIDE ? ", repeat" : "";
    lines.add("finish" + target + clauses + repeat);
    lines.add(deburr);
    lines.add(measure);
    lines.removeIf(String::isEmpty);
    return lines;
  }

  /** What to leave for finishing; nothing where so little comes off that one cut does it. */
  private Optional<Length> leaving(Drawing.Demand demand, Way way) {
    Length over = before.low().minus(demand.aim());
    Length least = task.limits().length(Limit.FINISH_ALLOWANCE);
    Length some = task.numbers().usual("0.1", "0.004");
    List<Length> choices = new ArrayList<>();
    if (way == Way.SIDE) {
      choices.add(task.numbers().usual("0.3", "0.012"));
    }
    LEAVINGS.forEach(pair -> choices.add(task.numbers().usual(pair[0], pair[1])));
    for (Length choice : choices) {
      if (!over.minus(choice).isLessThan(some) && !choice.isLessThan(least)) {
        return Optional.of(choice);
      }
    }
    return over.isMoreThan(least.plus(task.numbers().usual("0.02", "0.001")))
        ? Optional.of(Length.max(least, task.numbers().up(least, "0.01", "0.001")))
        : Optional.empty();
  }
}
