package org.handwheel.rules.hole;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.handwheel.model.Face;
import org.handwheel.model.Limit;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.rules.feature.FeatureWalls;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Length;
import org.handwheel.work.hole.DrawnHole;

/**
 * Too little metal between a hole, slot or pocket and an edge, an outline, another of them, or the
 * face opposite.
 */
public final class WallTooThin extends SimpleRule {
  public WallTooThin() {
    super("wall-too-thin", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Length least = checkup.limits().length(Limit.LEAST_WALL);
    List<DrawnHole> holes = checkup.drawnHoles();
    Set<Origin> reported = new HashSet<>();
    for (DrawnHole hole : holes) {
      edges(checkup, hole, least, reported, out);
      below(checkup, hole, least, reported, out);
    }
    for (int i = 0; i < holes.size(); i++) {
      for (int j = i + 1; j < holes.size(); j++) {
        between(holes.get(i), holes.get(j), least, reported, out);
      }
    }
    for (FeatureWalls.Wall wall : FeatureWalls.of(checkup, least, holes)) {
      if (reported.add(wall.origin())) {
        out.accept(
            finding(
                wall.origin(),
                wall.words(),
                wall.other().orElseGet(() -> part(checkup, wall.origin()))));
      }
    }
  }

  /** The line of the part that gives its sizes, or its header. */
  private static Related part(Checkup checkup, Origin fallback) {
    var part = checkup.plan().part();
    return new Related(part == null ? fallback : part.origin(), "the part's sizes");
  }

  private void edges(
      Checkup checkup, DrawnHole hole, Length least, Set<Origin> reported, Consumer<Finding> out) {
    for (Face edge : HoleOffPart.edges(hole)) {
      Length wall = HoleOffPart.wall(hole, edge);
      if (!wall.isNegative() && wall.isLessThan(least) && reported.add(hole.origin())) {
        out.accept(
            finding(
                hole.origin(),
                "only "
                    + wall
                    + " is left between `"
                    + hole.name()
                    + "` and the "
                    + edge.word()
                    + " edge",
                HoleOffPart.size(checkup, edge)));
      }
    }
  }

  /** What a blind hole leaves below the point of its drill. */
  private void below(
      Checkup checkup, DrawnHole hole, Length least, Set<Origin> reported, Consumer<Finding> out) {
    Length tip = hole.tip();
    if (tip == null) {
      return;
    }
    Length left = hole.frame().thickness().minus(tip);
    if (left.isLessThan(least) && reported.add(hole.origin())) {
      String words =
          left.isNegative()
              ? "the point of the drill for `"
                  + hole.name()
                  + "` comes out "
                  + left.abs()
                  + " below"
              : "only " + left + " is left below the point of the drill for `" + hole.name() + "`";
      out.accept(
          finding(hole.origin(), words, HoleOffPart.size(checkup, hole.spec().face().opposite())));
    }
  }

  private void between(
      DrawnHole a, DrawnHole b, Length least, Set<Origin> reported, Consumer<Finding> out) {
    if (a.spec().face() != b.spec().face()) {
      return;
    }
    double first = a.place().first().minus(b.place().first()).millimetres();
    double second = a.place().second().minus(b.place().second()).millimetres();
    Length apart = Length.ofMillimetres(Math.hypot(first, second));
    Length wall = apart.minus(a.widest().half()).minus(b.widest().half());
    if (wall.isLessThan(least) && !reported.contains(a.origin()) && reported.add(b.origin())) {
      String words =
          wall.isNegative()
              ? "`" + b.name() + "` runs " + wall.abs() + " into `" + a.name() + "`"
              : "only " + wall + " is left between `" + b.name() + "` and `" + a.name() + "`";
      out.accept(finding(b.origin(), words, new Related(a.origin(), "the other hole")));
    }
  }
}
