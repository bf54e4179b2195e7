package org.handwheel.ide;

import java.util.List;
import java.util.Optional;
import org.handwheel.model.Face;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Plan;
import org.handwheel.shop.fit.SizeChain;
import org.handwheel.work.chain.DrawnChain;
import org.handwheel.work.chain.DrawnPoints;

/** What the tolerances of the drawing come to between a hole and what lies round it. */
final class ChainHover {
  private ChainHover() {}

  /** Adds the wall to each edge and the floor of a blind hole, where several sizes make them up. */
  static void add(HoverText.Builder text, View view, HoleSpec hole) {
    Plan plan = view.plan();
    if (plan == null || view.run() == null || hole.position() == null) {
      return;
    }
    Optional<DrawnPoints> points = DrawnPoints.of(plan, view.run().drawing(), view.tables());
    if (points.isEmpty()) {
      return;
    }
    boolean any = false;
    for (Face face : Face.all()) {
      boolean below = face == hole.face().opposite();
      String from = (below ? "floor" : face.word()) + " of " + hole.name();
      Optional<DrawnChain> chain = points.get().chain(from, face.word(), face.dimension());
      boolean beside = face.adjoins(hole.face());
      if (chain.isEmpty() || !(below || beside) || chain.get().links().isEmpty()) {
        continue;
      }
      any = true;
      text.fact(below ? "Left below it" : "Wall to the " + face.word(), words(chain.get()));
    }
    if (any) {
      text.formula(
          "at worst every size lies at its end; likely is the root of the sum of the squares, for"
              + " many parts made independently: handwheel stackup --plan");
    }
  }

  private static String words(DrawnChain chain) {
    SizeChain sizes = chain.sizes();
    List<?> links = chain.links();
    return chain.nominal()
        + ", "
        + sizes.worstCase()
        + " at worst"
        + (links.size() > 1 ? ", " + sizes.likely() + " likely" : "");
  }
}
