package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.handwheel.model.Limit;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.Grip;
import org.handwheel.work.Holding;

/** The jaws close on the parallels and not on the work, or nearly do. */
public final class GripsParallels extends SimpleRule {
  public GripsParallels() {
    super("grips-parallels", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.setups().forEach(setup -> setup.gripped().ifPresent(grip -> check(checkup, grip, out)));
  }

  private void check(Checkup checkup, Grip grip, Consumer<Finding> out) {
    if (grip.parallels().isEmpty() || grip.hold().support() == null || grip.hold().bar() != null) {
      return;
    }
    Length parallels = Holding.parallelsThickness(grip);
    Length work = grip.clamped().low();
    Origin origin = grip.hold().support().origin();
    String cure =
        grip.hold().beside() == null
            ? "; take thinner ones, or put a second parallel beside the work"
            : "; take thinner ones";
    if (Holding.isLoose(grip)) {
      out.accept(
          finding(
              origin,
              "the vise closes on the parallels: they are "
                  + parallels
                  + " thick together, the work is "
                  + work
                  + "; the work is loose"
                  + cure));
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
                  + cure));
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
                  + cure));
    }
  }
}
