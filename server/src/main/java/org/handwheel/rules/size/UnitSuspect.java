package org.handwheel.rules.size;

import java.util.function.Consumer;
import org.handwheel.model.Limit;
import org.handwheel.model.Part;
import org.handwheel.model.Part.DimensionSpec;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Stock;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun;
import org.handwheel.work.Drawing;

/** A size or depth that looks like a slip between millimetres and inches. */
public final class UnitSuspect extends SimpleRule {
  public UnitSuspect() {
    super("unit-suspect", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Part part = checkup.plan().part();
    Stock stock = checkup.plan().stock();
    if (part != null && stock != null) {
      for (PartDimension dimension : Drawing.suspects(part, stock)) {
        DimensionSpec spec = part.dimension(dimension);
        Length size = stock.sizes().get(dimension);
        if (spec != null && size != null) {
          reportSize(spec, size, stock, out);
        }
      }
    }
    checkup
        .run()
        .cuts()
        .filter(cut -> isSuspectDepth(checkup, cut))
        .forEach(
            cut ->
                out.accept(
                    finding(
                        cut.cut().origin(),
                        "a pass of "
                            + cut.passDepth()
                            + " is many times the usual; is the unit right?")));
  }

  /** A pass so deep that a slip of unit is likelier than courage: ten times the heavy one. */
  public static boolean isSuspectDepth(Checkup checkup, CutRun cut) {
    return cut.mode() == CutRun.Mode.END
        && cut.passDepth().isMoreThan(checkup.limits().length(Limit.HEAVY_PASS).times(10));
  }

  private void reportSize(DimensionSpec spec, Length size, Stock stock, Consumer<Finding> out) {
    out.accept(
        finding(
            spec.origin(),
            "a "
                + spec.dimension().word()
                + " of "
                + spec.nominal()
                + " from stock of "
                + size
                + " differs about 25.4 times: mm or in?",
            new Related(
                stock.sizeOrigin() == null ? stock.origin() : stock.sizeOrigin(),
                "the stock's size")));
  }
}
