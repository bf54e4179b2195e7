package org.handwheel.rules.size;

import java.util.Optional;
import java.util.function.Consumer;
import org.handwheel.model.Stock;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun;
import org.handwheel.work.Drawing.Demand;

/** The stock is smaller than the part, or cleaning a face may take it below size. */
public final class StockTooSmall extends SimpleRule {
  public StockTooSmall() {
    super("stock-too-small", Severity.ERROR);
  }

  /** Whether the stock, as named, is below the least size the drawing allows. */
  static boolean isTooSmall(Checkup checkup, Demand demand) {
    Stock stock = checkup.plan().stock();
    Length size = stock == null ? null : stock.sizes().get(demand.dimension());
    return size != null && size.isLessThan(demand.limits().low());
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Stock stock = checkup.plan().stock();
    if (stock == null) {
      return;
    }
    for (Demand demand : checkup.run().drawing().demands()) {
      Length size = stock.sizes().get(demand.dimension());
      Origin origin = stock.sizeOrigin() == null ? stock.origin() : stock.sizeOrigin();
      if (size != null && isTooSmall(checkup, demand)) {
        out.accept(
            finding(
                origin,
                "the stock's "
                    + demand.dimension().word()
                    + " of "
                    + size
                    + " is below the part's "
                    + demand.limits(),
                drawing(demand)));
      } else if (!FaceNotCleaned.isAllowanceShort(checkup, demand)) {
        cleanedAway(checkup, demand).ifPresent(cut -> reportClean(demand, cut, out));
      }
    }
  }

  /** The first skim that may go below the part's size. */
  static Optional<CutRun> cleanedAway(Checkup checkup, Demand demand) {
    return checkup.skims().stream()
        .filter(cut -> cut.face().dimension() == demand.dimension())
        .filter(cut -> cut.after().range().low().isLessThan(demand.limits().low()))
        .findFirst();
  }

  private void reportClean(Demand demand, CutRun cut, Consumer<Finding> out) {
    out.accept(
        finding(
            Severity.WARNING,
            cut.cut().origin(),
            "cleaning by up to "
                + cut.removal().high()
                + left(demand, cut)
                + "; the part needs "
                + demand.limits().low(),
            drawing(demand)));
  }

  private static String left(Demand demand, CutRun cut) {
    Length low = cut.after().range().low();
    String word = demand.dimension().word();
    return low.isPositive()
        ? " may leave only " + low + " of the " + word
        : " may go through all of the " + word;
  }

  private static Related drawing(Demand demand) {
    return new Related(demand.origin(), "the " + demand.dimension().word() + " on the drawing");
  }
}
