package org.handwheel.rules.hole;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.Drawing;
import org.handwheel.work.hole.DrawnHole;

/** A hole that breaks out of the side of the part, or lies beside it. */
public final class HoleOffPart extends SimpleRule {
  public HoleOffPart() {
    super("hole-off-part", Severity.ERROR);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Set<Origin> reported = new HashSet<>();
    for (DrawnHole hole : checkup.drawnHoles()) {
      for (Face edge : edges(hole)) {
        Length inside = wall(hole, edge);
        if (inside.isNegative() && reported.add(hole.origin())) {
          out.accept(
              finding(
                  hole.origin(),
                  "`"
                      + hole.name()
                      + "` goes "
                      + inside.abs()
                      + " over the "
                      + edge.word()
                      + " edge",
                  size(checkup, edge)));
        }
      }
    }
  }

  /** The edges of the face a hole is in. */
  static List<Face> edges(DrawnHole hole) {
    List<Face> edges = new ArrayList<>();
    for (Face face : Face.all()) {
      if (face.adjoins(hole.spec().face())) {
        edges.add(face);
      }
    }
    return edges;
  }

  /** What is left between a hole at its widest and an edge; negative if it breaks out. */
  static Length wall(DrawnHole hole, Face edge) {
    return hole.frame().box().from(edge, hole.point()).minus(hole.widest().half());
  }

  /** The line that gives the size across an edge. */
  static Related size(Checkup checkup, Face edge) {
    Drawing.Demand demand = checkup.demand(edge.dimension());
    if (demand != null) {
      return new Related(
          demand.origin(), "the " + edge.dimension().word() + " is " + demand.nominal());
    }
    var stock = checkup.plan().stock();
    Origin origin =
        stock == null
            ? checkup.plan().header()
            : stock.sizeOrigin() == null ? stock.origin() : stock.sizeOrigin();
    return new Related(origin, "the " + edge.dimension().word() + " is the stock's");
  }
}
