package org.handwheel.plan.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.handwheel.plan.sheet.Sheet.Fact;
import org.handwheel.plan.sheet.Sheet.SetupPage;
import org.handwheel.plan.sheet.Sheet.SheetStep;
import org.handwheel.plan.sheet.Sheet.ToMeasure;
import org.handwheel.units.LengthText;
import org.handwheel.work.DialMove;
import org.handwheel.work.DialMove.Start;
import org.jspecify.annotations.Nullable;

/**
 * What comes next at the machine: the steps behind the last one whose reading is in the log, up to
 * and with the next measurement, whose reading is then to be written down.
 *
 * @param measured the step whose reading was the last, or nothing at the beginning
 * @param steps what to do, in order; empty when all is done but the inspection
 */
public record NextSteps(@Nullable Todo measured, List<Todo> steps) {
  public NextSteps {
    steps = List.copyOf(steps);
  }

  /** A step and the setup it belongs to. */
  public record Todo(SetupPage setup, SheetStep step) {
    /** The step's facts with the dial and the size among them, as they are read at the machine. */
    public List<Fact> facts() {
      List<Fact> facts = new ArrayList<>();
      DialMove move = step.dial();
      if (move != null) {
        facts.add(new Fact("Dial", dial(move)));
      }
      facts.addAll(step.facts());
      if (step.expected() != null) {
        facts.add(
            new Fact(
                Words.capital(step.expected().dimension().word()) + " after it",
                LengthText.range(step.expected().size())
                    + (step.expected().limits() == null
                        ? ""
                        : "; the drawing allows " + LengthText.range(step.expected().limits()))));
      }
      ToMeasure measure = step.measure();
      if (measure != null && measure.expected() != null) {
        facts.add(new Fact("Expected", LengthText.range(measure.expected())));
      }
      if (measure != null && measure.limits() != null) {
        facts.add(new Fact("Drawing", LengthText.range(measure.limits())));
      }
      return facts;
    }
  }

  /** Of a sheet made with the readings of the piece that is being worked on. */
  public static NextSteps of(Sheet sheet) {
    List<Todo> all = new ArrayList<>();
    for (SetupPage setup : sheet.setups()) {
      setup.steps().forEach(step -> all.add(new Todo(setup, step)));
    }
    int last = -1;
    for (int i = 0; i < all.size(); i++) {
      ToMeasure measure = all.get(i).step().measure();
      if (measure != null && measure.reading() != null) {
        last = i;
      }
    }
    List<Todo> steps = new ArrayList<>();
    for (int i = last + 1; i < all.size(); i++) {
      steps.add(all.get(i));
      if (all.get(i).step().measure() != null) {
        break;
      }
    }
    return new NextSteps(last < 0 ? null : all.get(last), steps);
  }

  private static String dial(DialMove move) {
    String axis = move.axis().name();
    if (move.start() instanceof Start.LastCut cut && cut.reading() == null) {
      return axis + ": wind in " + Words.winding(move.wind()) + " from where the last cut left it";
    }
    String stops = move.stops().stream().map(Words::winding).collect(Collectors.joining(", then "));
    return axis + ": stop at " + stops + " from zero";
  }
}
