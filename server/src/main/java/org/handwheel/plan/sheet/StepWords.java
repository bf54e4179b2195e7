package org.handwheel.plan.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Located;
import org.handwheel.model.Owned;
import org.handwheel.model.Step;
import org.handwheel.plan.sheet.Sheet.Fact;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.LengthText;
import org.handwheel.work.Bench;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.jspecify.annotations.Nullable;

/** What to do for each line of a setup other than a cut over a face, in words. */
final class StepWords {
  private final SyntaxTree tree;
  private final SetupRun setup;
  private final Owned.@Nullable Machine machine;

  StepWords(SyntaxTree tree, SetupRun setup, Owned.@Nullable Machine machine) {
    this.tree = tree;
    this.setup = setup;
    this.machine = machine;
  }

  String action(StepRun run) {
    Step step = run.step();
    if (step instanceof Step.Cut cut) {
      return CutSteps.action(cut, run.cut());
    }
    if (step instanceof Step.HoleCut || step instanceof Step.FeatureCut) {
      return line(step);
    }
    return prepares(step) ? preparation(step) : atTheDials(step);
  }

  private static boolean prepares(Step step) {
    return step instanceof Step.Seat
        || step instanceof Step.TrueVise
        || step instanceof Step.Tram
        || step instanceof Step.UseCutter
        || step instanceof Step.MoveHead
        || step instanceof Step.Deburr
        || step instanceof Step.Wipe
        || step instanceof Step.Note;
  }

  private String preparation(Step step) {
    if (step instanceof Step.Seat seat) {
      return seat(seat);
    }
    if (step instanceof Step.TrueVise vise) {
      return "Set the fixed jaw of "
          + vise.vise().name()
          + " true with "
          + vise.instrument().name()
          + (vise.error() == null ? "" : ", within " + Words.slope(vise.error()));
    }
    if (step instanceof Step.Tram tram) {
      return "Set the head square to the table, within " + Words.slope(tram.error());
    }
    if (step instanceof Step.UseCutter use) {
      return "Cutter " + use.cutter().name() + " into the spindle, " + ToolList.words(use.cutter());
    }
    if (step instanceof Step.MoveHead move) {
      return "Move the head "
          + move.direction().words()
          + " by "
          + LengthText.both(move.distance());
    }
    if (step instanceof Step.Deburr deburr) {
      return deburr.faces().isEmpty()
          ? line(step)
          : deburr.faces().size() == Face.values().length
              ? "Deburr all edges"
              : "Deburr the edges of " + Words.faces(deburr.faces());
    }
    return step instanceof Step.Note note ? note.text() : line(step);
  }

  private static String seat(Step.Seat seat) {
    List<String> words = new ArrayList<>();
    if (seat.tapped()) {
      words.add("close the vise and tap the work down with a soft hammer");
    }
    if (seat.bothTight()) {
      words.add("try both parallels: neither may move");
    }
    if (seat.upright() != null) {
      words.add(
          "set it upright with "
              + seat.upright().square().name()
              + " at the "
              + seat.upright().face().word());
    }
    return words.isEmpty() ? "Seat the work" : Words.capital(String.join("; ", words));
  }

  private String atTheDials(Step step) {
    if (step instanceof Step.Touch touch) {
      String paper =
          touch.paper().isPositive()
              ? ", " + LengthText.both(touch.paper()) + " of paper between"
              : "";
      return "Touch the " + touch.face().word() + " with the cutter" + paper + zero(touch.zeroed());
    }
    if (step instanceof Step.Find find) {
      return find(find);
    }
    if (step instanceof Step.Zero zero) {
      return "Set the " + Words.axes(zero.axes()) + dials(zero.axes().size()) + " to zero here";
    }
    if (step instanceof Step.SetDepth set) {
      return "Set "
          + set.axis().name()
          + " so that the end of the cutter is "
          + LengthText.both(set.depth())
          + " below the "
          + set.face().word();
    }
    if (step instanceof Step.Lock lock) {
      return "Lock " + Words.axes(lock.axes());
    }
    if (step instanceof Step.Unlock unlock) {
      return "Unlock " + Words.axes(unlock.axes());
    }
    if (step instanceof Step.Measure measure) {
      return "Spindle stopped, work wiped: measure the "
          + measure.dimension().word()
          + " with "
          + measure.instrument().name();
    }
    return line(step);
  }

  private static String dials(int count) {
    return count == 1 ? " dial" : " dials";
  }

  private static String zero(java.util.Set<Axis> axes) {
    return axes.isEmpty() ? "" : "; set the " + Words.axes(axes) + dials(axes.size()) + " to zero";
  }

  private String find(Step.Find find) {
    StringBuilder words = new StringBuilder("Find ");
    if (find.face() != null) {
      words.append("the edge of the ").append(find.face().word());
    } else {
      words.append("the middle of ").append(find.centreOf());
    }
    if (find.from() != null) {
      words.append(", coming from ").append(Words.place(find.from().value()));
    }
    Owned.Finder finder = find.finder();
    if (finder != null) {
      words.append(", with finder ").append(finder.name());
    }
    if (find.zeroed().isEmpty()) {
      return words.toString();
    }
    if (finder != null && find.face() != null && find.place() == Step.ZeroPlace.FOUND) {
      words.append("; lift it clear, go on by half its tip, ");
      words.append(LengthText.both(finder.dia().half()));
    }
    return words + zero(find.zeroed());
  }

  List<Fact> facts(StepRun run) {
    List<Fact> facts = new ArrayList<>();
    Step step = run.step();
    if (step instanceof Step.Touch touch) {
      Orientation lies = setup.orientation();
      if (lies != null) {
        Direction way = lies.directionOf(touch.face()).opposite();
        facts.add(new Fact("Come in", Words.handle(way, machine)));
      }
      facts.add(new Fact("Care", "fingers clear of the cutter, the paper held by its far end"));
    } else if (step instanceof Step.Find find && find.from() != null) {
      facts.add(new Fact("Come in", Words.handle(find.from().value().opposite(), machine)));
    } else if (step instanceof Step.UseCutter use) {
      Bench.Tool before = run.benchBefore().cutter();
      if (before != null && before.cutter().name().equalsIgnoreCase(use.cutter().name())) {
        facts.add(new Fact("Cutter", "it is in the spindle already; its zeros hold"));
      }
    } else if (step instanceof Step.FeatureCut cut && cut.way().cutter() != null) {
      facts.add(new Fact("Cutter", cut.way().cutter().name()));
    } else if (step instanceof Step.SetDepth set) {
      Bench.Zero zero = run.benchBefore().zeros().get(set.axis());
      if (zero != null && zero.face() != null && zero.loss() == null) {
        facts.add(new Fact("Counted from", "zero at the " + zero.face().word()));
      }
    }
    return facts;
  }

  /** The plan's own line, without its comment. */
  private String line(Step step) {
    if (!tree.contains(step.origin())) {
      return step.getClass().getSimpleName().toLowerCase(Locale.ROOT);
    }
    String text =
        tree.source().text().substring(tree.start(step.origin()), tree.end(step.origin()));
    return Words.capital(text.replaceAll("\\\\\\R", " ").replaceAll("\\s+", " ").strip());
  }

  static @Nullable String name(@Nullable Located<String> name) {
    return name == null ? null : name.value();
  }
}
