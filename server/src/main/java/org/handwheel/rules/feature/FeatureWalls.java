package org.handwheel.rules.feature;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Face;
import org.handwheel.rules.Checkup;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.work.feature.DrawnFeature;
import org.handwheel.work.feature.DrawnFeature.Form;
import org.handwheel.work.hole.DrawnHole;
import org.handwheel.work.hole.HoleWork;
import org.locationtech.jts.geom.Geometry;

/** What metal is left beside and below slots, pockets and steps, and inside outlines. */
public final class FeatureWalls {
  private static final double LEAST_AREA = 1e-6;
  private final Length least;
  private final List<DrawnFeature> drawn;
  private final List<DrawnHole> holes;
  private final List<Wall> walls = new ArrayList<>();

  private FeatureWalls(Length least, List<DrawnFeature> drawn, List<DrawnHole> holes) {
    this.least = least;
    this.drawn = drawn;
    this.holes = holes;
  }

  /** A wall that is thinner than it should be, in words, and the lines that make it so. */
  public record Wall(Origin origin, String words, Optional<Related> other) {}

  /** All walls thinner than a limit. */
  public static List<Wall> of(Checkup checkup, Length least, List<DrawnHole> holes) {
    FeatureWalls work = new FeatureWalls(least, FeatureLines.drawn(checkup), holes);
    for (int i = 0; i < work.drawn.size(); i++) {
      DrawnFeature feature = work.drawn.get(i);
      if (feature.form() instanceof Form.Sunk sunk) {
        work.alone(feature, sunk);
        for (DrawnFeature earlier : work.drawn.subList(0, i)) {
          work.beside(feature, earlier);
          work.floor(feature, earlier);
        }
        work.holesBeside(feature);
        work.holesBelow(feature);
      } else if (feature.form() instanceof Form.Window window) {
        work.holesBeside(feature);
        work.edges(feature, window);
      } else if (feature.form() instanceof Form.Round round) {
        work.inside(feature, round);
      }
    }
    return work.walls;
  }

  private boolean isThin(double millimetres) {
    return millimetres < least.millimetres() - 1e-6;
  }

  private void alone(DrawnFeature feature, Form.Sunk sunk) {
    Length below = feature.frame().thickness().minus(feature.depth());
    if (!feature.isThrough() && below.isLessThan(least)) {
      add(feature, "only " + below + " is left below `" + feature.name() + "`", Optional.empty());
      return;
    }
    for (Face edge : Face.all()) {
      Length wall = edge.adjoins(feature.frame().face()) ? wall(feature, sunk, edge) : null;
      if (wall != null && wall.isPositive() && wall.isLessThan(least)) {
        add(
            feature,
            "only "
                + wall
                + " is left between `"
                + feature.name()
                + "` and the "
                + edge.word()
                + " edge",
            Optional.empty());
        return;
      }
    }
  }

  /** A window against the edges of the part, or of the outline that it is cut out of. */
  private void edges(DrawnFeature feature, Form.Window window) {
    double wall = feature.faceRegion().getBoundary().distance(feature.opening(window));
    boolean isWithin = feature.faceRegion().contains(feature.opening(window));
    if (!isWithin || isThin(wall)) {
      add(
          feature,
          isWithin
              ? "only "
                  + Length.ofMillimetres(wall)
                  + " is left between `"
                  + feature.name()
                  + "` and the edge"
              : "`" + feature.name() + "` breaks out of the edge",
          Optional.empty());
    }
  }

  /** From a side to the part's edge; zero or less for an open side. */
  private static Length wall(DrawnFeature feature, Form.Sunk sunk, Face edge) {
    boolean first = edge.dimension() == feature.frame().firstAlong();
    if (edge.sign() < 0) {
      return first ? sunk.low().first() : sunk.low().second();
    }
    return first
        ? feature.frame().firstSize().minus(sunk.high().first())
        : feature.frame().secondSize().minus(sunk.high().second());
  }

  private void beside(DrawnFeature feature, DrawnFeature earlier) {
    if (!(earlier.form() instanceof Form.Sunk)
        || earlier.frame().face() != feature.frame().face()) {
      return;
    }
    double apart = feature.gone(0).distance(earlier.gone(0));
    // Those that meet are one opening.
    if (apart > 1e-6 && isThin(apart)) {
      add(
          feature,
          "only "
              + Length.ofMillimetres(apart)
              + " is left between `"
              + feature.name()
              + "` and `"
              + earlier.name()
              + "`",
          Optional.of(new Related(earlier.spec().origin(), "the other one")));
    }
  }

  /** Between the floors of two that are sunk from opposite faces. */
  private void floor(DrawnFeature feature, DrawnFeature earlier) {
    if (!(earlier.form() instanceof Form.Sunk)
        || earlier.frame().face() != feature.frame().face().opposite()
        || feature.isThrough()
        || earlier.isThrough()
        || feature.gone(0).intersection(earlier.gone(0)).getArea() < LEAST_AREA) {
      return;
    }
    Length left = feature.frame().thickness().minus(feature.depth()).minus(earlier.depth());
    // Those that meet are one opening.
    if (left.isPositive() && left.isLessThan(least)) {
      add(
          feature,
          "only "
              + left
              + " is left between the floors of `"
              + feature.name()
              + "` and `"
              + earlier.name()
              + "`",
          Optional.of(new Related(earlier.spec().origin(), "the other one")));
    }
  }

  /** Between a floor and the point of a drill that comes from the opposite face. */
  private void holesBelow(DrawnFeature feature) {
    if (feature.isThrough()) {
      return;
    }
    Length floor = feature.frame().thickness().minus(feature.depth());
    for (DrawnHole hole : holes) {
      Length depth = hole.depth();
      Length tip = hole.tip();
      boolean isOpposite = hole.spec().face() == feature.frame().face().opposite();
      // A hole whose full diameter reaches the floor is meant to open into it.
      if (!isOpposite || depth == null || tip == null || !depth.isLessThan(floor)) {
        continue;
      }
      Length left = floor.minus(tip);
      Length dia = hole.dia() == null ? Length.ZERO : hole.dia();
      if (left.isLessThan(least)
          && feature.gone(0).intersection(HoleWork.circle(hole, dia)).getArea() > LEAST_AREA) {
        String words =
            left.isNegative()
                ? "the point of the drill for `"
                    + hole.name()
                    + "` comes out "
                    + left.abs()
                    + " in `"
                    + feature.name()
                    + "`"
                : "only "
                    + left
                    + " is left between `"
                    + feature.name()
                    + "` and the point of the drill for `"
                    + hole.name()
                    + "`";
        add(
            feature,
            words,
            Optional.of(new Related(hole.spec().origin(), "how deep it is drilled")));
        return;
      }
    }
  }

  private void holesBeside(DrawnFeature feature) {
    for (DrawnHole hole : holes) {
      if (hole.spec().face() != feature.frame().face()) {
        continue;
      }
      double apart = feature.gone(0).distance(HoleWork.circle(hole, hole.widest()));
      // A hole that lies within is a way in, not a wall.
      if (apart > 1e-6 && isThin(apart)) {
        add(
            feature,
            "only "
                + Length.ofMillimetres(apart)
                + " is left between `"
                + feature.name()
                + "` and `"
                + hole.name()
                + "`",
            Optional.of(new Related(hole.origin(), "the hole")));
        return;
      }
    }
  }

  /** Holes and sunk features against an outline that is cut right through. */
  private void inside(DrawnFeature outline, Form.Round round) {
    if (!outline.isThrough()) {
      return;
    }
    Geometry standing = outline.finished(round);
    for (DrawnHole hole : holes) {
      if (hole.spec().face().dimension() == outline.frame().face().dimension()) {
        within(outline, standing, HoleWork.circle(hole, hole.widest()), hole.name(), hole.origin());
      }
    }
    for (DrawnFeature feature : drawn) {
      boolean isClosed =
          feature.form() instanceof Form.Window
              || (feature.form() instanceof Form.Sunk sunk && !sunk.open().any());
      if (isClosed && feature.frame().face().dimension() == outline.frame().face().dimension()) {
        within(outline, standing, feature.gone(0), feature.name(), feature.spec().origin());
      }
    }
  }

  private void within(
      DrawnFeature outline, Geometry standing, Geometry region, String name, Origin origin) {
    Optional<Related> other = Optional.of(new Related(outline.spec().origin(), "the outline"));
    if (standing.contains(region)) {
      double wall = standing.getBoundary().distance(region);
      if (isThin(wall)) {
        String words =
            "only "
                + Length.ofMillimetres(wall)
                + " is left between `"
                + name
                + "` and the outline `"
                + outline.name()
                + "`";
        walls.add(new Wall(origin, words, other));
      }
    } else if (standing.intersects(region)) {
      String words = "`" + name + "` breaks out of the outline `" + outline.name() + "`";
      walls.add(new Wall(origin, words, other));
    }
  }

  private void add(DrawnFeature feature, String words, Optional<Related> other) {
    walls.add(new Wall(feature.spec().origin(), words, other));
  }
}
