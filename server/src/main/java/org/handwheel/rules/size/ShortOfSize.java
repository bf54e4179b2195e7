package org.handwheel.rules.size;

import java.util.Optional;
import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.model.LogSection;
import org.handwheel.model.LogSection.Reading;
import org.handwheel.model.Step.Passes;
import org.handwheel.model.Step.Purpose;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.work.CutRun;
import org.handwheel.work.Drawing.Demand;
import org.handwheel.work.SizeState;

/**
 * The plan ends with a size that is still above the drawing's limit, or passes stop short of it.
 */
public final class ShortOfSize extends SimpleRule {
  public ShortOfSize() {
    super("short-of-size", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    checkup.countedCuts().forEach(cut -> checkPasses(cut, out));
    if (!checkup.isWhole() || checkup.plan().setups().isEmpty()) {
      return;
    }
    for (Demand demand : checkup.run().drawing().demands()) {
      SizeState end = checkup.run().end().size(demand.dimension());
      if (end != null && !hasFaceLeftRaw(checkup, demand)) {
        checkEnd(checkup, demand, end, out);
      }
    }
  }

  /** A face that was never machined is a finding of its own and explains the size. */
  private static boolean hasFaceLeftRaw(Checkup checkup, Demand demand) {
    return Face.all().stream()
        .filter(face -> face.dimension() == demand.dimension())
        .anyMatch(face -> FaceNeverSquared.isLeftRaw(checkup, face));
  }

  /** What a log read after the last cut tells more than the cut's goal. */
  private static Optional<Reading> lastReading(Checkup checkup, SizeState end) {
    LogSection log = checkup.run().log();
    return log == null
        ? Optional.empty()
        : log.readings().stream()
            .filter(reading -> reading.origin().equals(end.since()))
            .findFirst();
  }

  private void checkReading(Demand demand, Reading reading, Consumer<Finding> out) {
    Length most = reading.values().stream().reduce(reading.values().get(0), Length::max);
    if (most.isMoreThan(demand.limits().high())) {
      out.accept(
          finding(
              reading.origin(),
              "the "
                  + demand.dimension().word()
                  + " was read as "
                  + most
                  + " after the last cut, "
                  + most.minus(demand.limits().high())
                  + " above the most the drawing allows",
              new Related(
                  demand.origin(), "the " + demand.dimension().word() + " on the drawing")));
    }
  }

  private void checkEnd(Checkup checkup, Demand demand, SizeState end, Consumer<Finding> out) {
    Optional<Reading> read = lastReading(checkup, end);
    if (read.isPresent()) {
      checkReading(demand, read.get(), out);
      return;
    }
    Optional<CutRun> last = checkup.lastCut(demand.dimension());
    Length size = end.range().middle();
    if (last.isPresent() && last.get().goal() != null) {
      size = last.get().goal();
    }
    boolean skimmedOnly = last.isPresent() && last.get().cut().purpose() instanceof Purpose.Clean;
    boolean above = size.isMoreThan(demand.limits().high());
    if (!above && !(skimmedOnly && end.range().high().isMoreThan(demand.limits().high()))) {
      return;
    }
    out.accept(
        finding(
            last.map(cut -> cut.cut().origin()).orElse(demand.origin()),
            "the plan leaves the "
                + demand.dimension().word()
                + " at "
                + LengthText.range(end.range())
                + "; the drawing allows at most "
                + demand.limits().high(),
            last.isPresent()
                ? new Related(
                    demand.origin(), "the " + demand.dimension().word() + " on the drawing")
                : new Related(end.since(), "the size comes from here and no setup cuts it")));
  }

  private void checkPasses(CutRun cut, Consumer<Finding> out) {
    Passes.Counted counted = cut.countedPasses();
    if (counted == null) {
      return;
    }
    Length total = counted.depth().times(counted.count());
    if (total.isLessThan(cut.removal().low())) {
      out.accept(
          finding(
              counted.origin(),
              (counted.count() == 1 ? "one pass of " : counted.count() + " passes of ")
                  + counted.depth()
                  + (counted.count() == 1 ? " takes off " : " take off ")
                  + total
                  + "; at least "
                  + cut.removal().low()
                  + " has to come off",
              new Related(cut.before().since(), "the size before comes from here")));
    }
  }
}
