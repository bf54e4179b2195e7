package org.handwheel.plan.diff;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.Map;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.work.CutRun;
import org.handwheel.work.CuttingCalculator;
import org.handwheel.work.CuttingConditions;
import org.handwheel.work.CuttingConditions.Spindle;
import org.handwheel.work.CuttingConditions.TableFeed;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.SetupTime;
import org.handwheel.work.SizeState;

/**
 * What the engine works out, as facts: rounded to what people read, for it is compared as shown.
 */
final class Figures {
  private static final double MM_PER_INCH = 25.4;

  private Figures() {}

  /** What follows from a cut's line and all before it; nothing for other steps. */
  static Map<String, Fact> of(PlanRun run, StepRun step) {
    Map<String, Fact> facts = new LinkedHashMap<>();
    CutRun cut = step.cut();
    if (cut == null) {
      return facts;
    }
    facts.put("cutter", Fact.of(cut.cutter().name()));
    facts.put("passes", Fact.of(Long.toString(cut.passes() + cut.cut().springPasses())));
    facts.put("deepest pass", length(cut.passDepth()));
    facts.put("teeth cut", Fact.of(cut.direction().name().toLowerCase(java.util.Locale.ROOT)));
    CuttingConditions conditions = CuttingCalculator.of(run, step).orElse(null);
    Spindle spindle = conditions == null ? null : conditions.spindle();
    if (spindle != null) {
      facts.put("spindle", Fact.of(whole(spindle.turnsPerMinute()) + " rpm"));
    }
    TableFeed table = conditions == null ? null : conditions.table();
    if (table != null) {
      double feed = table.millimetresPerMinute();
      facts.put(
          "table feed",
          Fact.of(whole(feed) + " mm/min (" + rounded(feed / MM_PER_INCH, 1) + " in/min)"));
    }
    facts.put(cut.face().dimension().word() + " after", Fact.of(size(cut.after())));
    return facts;
  }

  /** How long a setup takes. */
  static Fact time(PlanRun run, SetupRun setup) {
    return time(SetupTime.of(run, setup).minutes());
  }

  /** How long all setups take that could be read. */
  static Fact time(PlanRun run) {
    return time(run.knownSetups().mapToDouble(setup -> SetupTime.of(run, setup).minutes()).sum());
  }

  private static Fact time(double minutes) {
    return Fact.of("about " + whole(minutes) + " min");
  }

  static String size(SizeState state) {
    return LengthText.range(state.range());
  }

  private static Fact length(Length length) {
    return Fact.of(LengthText.both(length));
  }

  private static String whole(double value) {
    return rounded(value, 0);
  }

  private static String rounded(double value, int places) {
    return BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_EVEN).toPlainString();
  }
}
