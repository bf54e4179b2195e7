package org.handwheel.rules.hold;

import java.util.function.Consumer;
import org.handwheel.model.Hold.Spacer;
import org.handwheel.model.Located;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.EachSetup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.Slope;
import org.handwheel.work.Grip;
import org.handwheel.work.Holding;
import org.handwheel.work.PlanRun.SetupRun;

/** Work at one end of the jaws, with nothing of its width at the other. */
public final class JawCocks extends SimpleRule implements EachSetup {
  public JawCocks() {
    super("jaw-cocks", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.setups().forEach(setup -> setup.gripped().ifPresent(grip -> check(setup, grip, out)));
  }

  /** A spacer up to this much narrower than the work is as good as can be expected. */
  private static final Length PRACTICAL = Length.mm("0.1");

  /** From this error of angle the swivel of the moving jaw begins to matter. */
  private static final Slope NOTABLE = Slope.of(Length.mm("0.001"), Length.mm("1"));

  private void check(SetupRun setup, Grip grip, Consumer<Finding> out) {
    if (!Holding.needsSpacer(grip) || !grip.gripLength().isPositive()) {
      return;
    }
    Related vise =
        new Related(grip.vise().origin(), "the jaws are " + grip.vise().jawWidth() + " wide");
    Spacer spacer = Holding.spacer(grip);
    if (spacer == null) {
      missing(grip, vise, out);
    } else {
      narrow(setup, grip, spacer, vise, out);
    }
  }

  private void missing(Grip grip, Related vise, Consumer<Finding> out) {
    Located<Spacer> misplaced = grip.hold().spacer();
    String other = grip.offCentre().isPositive() ? "operator-left" : "operator-right";
    String cure =
        misplaced != null
            ? "the spacer belongs at the other end: "
            : "put a spacer as wide as the work at the other end: ";
    out.accept(
        finding(
            Holding.pullsOutside(grip) ? Severity.ERROR : severity(),
            misplaced == null ? grip.hold().origin() : misplaced.origin(),
            "the grip is "
                + grip.offCentre().abs()
                + " off the middle of the jaws, so the moving jaw stands askew; "
                + cure
                + "`spacer WIDTH at "
                + other
                + "`",
            vise));
  }

  /**
   * What the spacer certainly lacks counts. What it may lack because the work was not measured
   * counts only where a clean face on the fixed jaw is to rule the work.
   */
  private void narrow(
      SetupRun setup, Grip grip, Spacer spacer, Related vise, Consumer<Finding> out) {
    Located<Spacer> clause = grip.hold().spacer();
    LengthRange wanted = Holding.spacerWidth(grip, spacer);
    Length lack = wanted.low().minus(spacer.width());
    if (clause == null) {
      return;
    }
    Slope cock = Holding.cock(grip, lack);
    if (cock.isMoreThan(NOTABLE) && lack.isMoreThan(PRACTICAL)) {
      out.accept(
          finding(
              cock.isMoreThan(grip.vise().slack()) ? Severity.ERROR : severity(),
              clause.origin(),
              "the spacer is "
                  + lack
                  + " too narrow, so the moving jaw swivels by "
                  + cock.over(grip.vise().jawWidth())
                  + " over its width",
              vise));
    } else if (Holding.isCocked(grip)
        && !spacer.width().isMoreThan(wanted.high())
        && setup.before().face(grip.fixedFace()).isMachined()) {
      out.accept(
          finding(
              severity(),
              clause.origin(),
              "the work may be as wide as "
                  + wanted.high()
                  + ", and then the moving jaw stands askew; measure it and take a spacer of its"
                  + " width",
              vise));
    }
  }
}
