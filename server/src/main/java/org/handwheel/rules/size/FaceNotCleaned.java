package org.handwheel.rules.size;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.model.Stock;
import org.handwheel.model.Stock.Skin;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.work.CutRun;
import org.handwheel.work.Drawing.Demand;
import org.handwheel.work.Engine;
import org.handwheel.work.FaceState;
import org.handwheel.work.FaceState.Condition;

/** The allowance is used up before the marks of the saw or the skin are gone. */
public final class FaceNotCleaned extends SimpleRule {
  public FaceNotCleaned() {
    super("face-not-cleaned", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Set<Face> reported = new HashSet<>();
    for (Demand demand : checkup.run().drawing().demands()) {
      boolean allowanceShort = isAllowanceShort(checkup, demand);
      if (allowanceShort) {
        reportStock(checkup, demand, out);
      }
      // A skim that may take it all leaves nothing for the other face: that is reported there.
      if (allowanceShort
          || StockTooSmall.isTooSmall(checkup, demand)
          || StockTooSmall.cleanedAway(checkup, demand).isPresent()) {
        Face.all().stream()
            .filter(face -> face.dimension() == demand.dimension())
            .forEach(reported::add);
      }
    }
    if (!checkup.isWhole()) {
      return;
    }
    for (Face face : Face.all()) {
      FaceState end = checkup.run().end().face(face);
      // Enough came off, but not everywhere: then the cutter did not cover the face.
      boolean deepEnough =
          !end.removed().isLessThan(Engine.skinDepth(end.skin(), checkup.limits()));
      if (end.condition() != Condition.SKIMMED || deepEnough || reported.contains(face)) {
        continue;
      }
      checkup
          .cuts()
          .filter(cut -> cut.face() == face)
          .reduce((before, cut) -> cut)
          .ifPresent(last -> reportFace(checkup, face, end, last, out));
    }
  }

  /** Whether the stock is large enough for the size, but not for the skins on top of it. */
  static boolean isAllowanceShort(Checkup checkup, Demand demand) {
    Stock stock = checkup.plan().stock();
    Length size = stock == null ? null : stock.sizes().get(demand.dimension());
    if (stock == null || size == null || StockTooSmall.isTooSmall(checkup, demand)) {
      return false;
    }
    return size.minus(demand.aim()).isLessThan(skins(checkup, stock, demand));
  }

  /** The skins of the faces that are to be machined: a face no setup cuts stays as it is. */
  private static Length skins(Checkup checkup, Stock stock, Demand demand) {
    Length skins = Length.ZERO;
    boolean planned = !checkup.plan().setups().isEmpty();
    for (Face face : Face.all()) {
      FaceState start = checkup.run().start().face(face);
      boolean cut =
          planned
              ? checkup.facesToCut().contains(face)
              : !start.isMachined() && start.skin() != Skin.DRAWN && !stock.staysOnPurpose(face);
      if (face.dimension() == demand.dimension() && cut && stock.skins().containsKey(face)) {
        skins =
            skins.plus(Engine.skinDepth(checkup.run().start().face(face).skin(), checkup.limits()));
      }
    }
    return skins;
  }

  private void reportStock(Checkup checkup, Demand demand, Consumer<Finding> out) {
    Stock stock = checkup.plan().stock();
    Length size = stock == null ? null : stock.sizes().get(demand.dimension());
    if (stock == null || size == null) {
      return;
    }
    Origin origin = stock.sizeOrigin() == null ? stock.origin() : stock.sizeOrigin();
    List<Related> related = new ArrayList<>();
    related.add(
        new Related(demand.origin(), "the " + demand.dimension().word() + " on the drawing"));
    out.accept(
        new Finding(
            id(),
            severity(),
            origin,
            (size.isMoreThan(demand.aim())
                    ? "the stock is only "
                        + size.minus(demand.aim())
                        + " over the "
                        + demand.dimension().word()
                    : "the stock has nothing to spare over the " + demand.dimension().word())
                + "; its marks may go "
                + skins(checkup, stock, demand)
                + " deep in all, so some may be left",
            related,
            List.of()));
  }

  private void reportFace(
      Checkup checkup, Face face, FaceState end, CutRun last, Consumer<Finding> out) {
    Length skin = Engine.skinDepth(end.skin(), checkup.limits());
    out.accept(
        finding(
            last.cut().origin(),
            "the "
                + face.word()
                + " is "
                + end.skin().words()
                + " and its marks may be "
                + LengthText.both(skin)
                + " deep; only "
                + end.removed()
                + " is sure to come off in all",
            new Related(
                checkup.run().start().face(face).since(),
                "the " + face.word() + " is " + end.skin().words() + " here")));
  }
}
