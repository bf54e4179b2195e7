package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.handwheel.model.Axis;
import org.handwheel.model.Limit;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.Grip;
import org.handwheel.work.Holding;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.SizeState;

/** The jaws close on the parallels and not on the work, or nearly do. */
public final class GripsParallels extends SimpleRule implements EachSetup {
  public GripsParallels() {
    super("grips-parallels", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup
        .setups()
        .forEach(setup -> setup.gripped().ifPresent(grip -> check(checkup, setup, grip, out)));
  }

  private void check(Checkup checkup, SetupRun setup, Grip grip, Consumer<Finding> out) {
    if (grip.parallels().isEmpty() || grip.hold().support() == null) {
      return;
    }
    Length parallels = Holding.parallelsThickness(grip);
    Length work = grip.clamped().low();
    Related[] related = related(setup, grip);
    Origin origin = grip.hold().support().origin();
    String cure =
        grip.hold().beside() == null && grip.parallelCount() == 1
            ? "; take a thinner one, or put a second parallel beside the work: `beside "
                + grip.parallels().get().name()
                + "`"
            : "; take thinner ones";
    if (Holding.isLoose(grip)) {
      out.accept(
          finding(
              origin,
              (grip.parallelCount() == 1
                      ? "the vise closes on the parallel: it is " + parallels + " thick, "
                      : "the vise closes on the parallels: they are " + parallels + " together, ")
                  + what(grip)
                  + work
                  + (grip.clamped().high().isMoreThan(parallels) ? " at the least" : "")
                  + "; the work is loose"
                  + cure,
              related));
      return;
    }
    Length room = work.minus(parallels);
    if (grip.parallelCount() == 1
        && room.isLessThan(checkup.limits().length(Limit.THICKNESS_MARGIN))) {
      out.accept(
          finding(
              Severity.WARNING,
              origin,
              "the parallel is only "
                  + room
                  + " thinner than the work; as the jaw lifts it may take the clamping force"
                  + cure,
              related));
    } else if (grip.parallelCount() == 2
        && room.isLessThan(checkup.limits().length(Limit.PARALLELS_MARGIN))) {
      out.accept(
          finding(
              Severity.WARNING,
              origin,
              "the two parallels are only "
                  + room
                  + " narrower than the work together; as the jaw lifts they may take the"
                  + " clamping force"
                  + cure,
              related));
    }
  }

  private static String what(Grip grip) {
    boolean alone = grip.hold().beside() == null && grip.hold().bar() == null;
    return alone ? "the work is " : "the work and what stands beside it ";
  }

  private static Related[] related(SetupRun setup, Grip grip) {
    SizeState size = setup.before().size(grip.orientation().along(Axis.Y));
    return size == null
        ? new Related[0]
        : new Related[] {new Related(size.since(), "the work's size comes from here")};
  }
}
