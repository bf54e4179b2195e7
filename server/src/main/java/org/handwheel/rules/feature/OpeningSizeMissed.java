package org.handwheel.rules.feature;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.feature.FeatureTable;
import org.handwheel.work.feature.OpeningSize;
import org.handwheel.work.feature.OpeningSize.By;

/** A slot, pocket or step that comes out wider or narrower than its tolerance on the drawing. */
public final class OpeningSizeMissed extends SimpleRule {
  public OpeningSizeMissed() {
    super("opening-size", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    if (!checkup.isWhole()) {
      return;
    }
    Map<Origin, FeatureTable> last = new LinkedHashMap<>();
    FeatureLines.forEach(
        checkup,
        (setup, step) ->
            FeatureTable.of(checkup.run(), setup, step)
                .ifPresent(table -> last.put(table.run().spec().origin(), table)));
    for (FeatureTable table : last.values()) {
      Length allowed = OutlineNotReached.allowed(checkup, table.run().spec());
      // What stays on for a cut that never comes is reported by another rule.
      if (!table.run().left().isMoreThan(allowed)) {
        OpeningSize.of(table, checkup.limits()).stream()
            .filter(size -> !size.isWithin())
            .forEach(size -> out.accept(found(table, size)));
      }
    }
  }

  private Finding found(FeatureTable table, OpeningSize size) {
    String name = "`" + table.run().spec().name() + "`";
    String word = size.size().word();
    boolean isWide = size.reached().high().isMoreThan(size.limits().high());
    String what =
        size.by() == By.CUTTER
            ? "cut with one line, the "
                + word
                + " of "
                + name
                + " becomes "
                + size.reached()
                + ": as wide as the cutter, and what it cuts over"
            : "the " + word + " of " + name + " becomes " + size.reached() + " by these stops";
    String may =
        isWide
            ? ", and may be at most " + size.limits().high()
            : ", and is to be at least " + size.limits().low();
    return finding(
        table.step().step().origin(),
        what
            + may
            + (size.by() == By.CUTTER && isWide
                ? "; take a narrower cutter, which cuts along either wall"
                : ""),
        FeatureLines.drawing(table.run()));
  }
}
