package org.handwheel.work;

import java.util.HashMap;
import java.util.Map;
import org.handwheel.model.Face;
import org.handwheel.model.PartDimension;
import org.handwheel.units.Slope;
import org.jspecify.annotations.Nullable;

/**
 * What follows from known relations; errors add.
 *
 * <p>Only two closures hold (geometry). T1: F parallel F' and F square G give F' square G. T2: F
 * and F' both square to G and to H, with G and H adjoining, give F parallel F'. Two faces square to
 * one third face are not thereby parallel: they may be twisted about its normal.
 */
final class Closures {
  private Closures() {}

  /** Adds what follows until nothing more does; what is known stays as it is. */
  static void close(Map<FacePair, Relation> relations) {
    boolean changed = true;
    while (changed) {
      changed = false;
      for (Face face : Face.all()) {
        for (Face other : Face.all()) {
          if (face != other && !relations.containsKey(new FacePair(face, other))) {
            changed |=
                face.adjoins(other)
                    ? closeSquare(relations, face, other)
                    : closeParallel(relations, face);
          }
        }
      }
    }
  }

  /** T1, by whichever of the two opposite faces gives the tighter bound. */
  private static boolean closeSquare(Map<FacePair, Relation> relations, Face face, Face other) {
    Relation first = byOpposite(relations, face, other);
    Relation second = byOpposite(relations, other, face);
    if (first == null && second == null) {
      return false;
    }
    PartDimension dimension = other.dimension();
    boolean takeFirst =
        second == null
            || (first != null && !first.along(dimension).isMoreThan(second.along(dimension)));
    relations.put(new FacePair(face, other), takeFirst ? first : second);
    return true;
  }

  /** The opposite of {@code face} is parallel to it and square to {@code other}. */
  private static @Nullable Relation byOpposite(
      Map<FacePair, Relation> relations, Face face, Face other) {
    Relation parallel = relations.get(new FacePair(face, face.opposite()));
    Relation square = relations.get(new FacePair(face.opposite(), other));
    if (parallel == null || square == null) {
      return null;
    }
    PartDimension dimension = other.dimension();
    return Relation.square(
        face,
        other,
        parallel.along(dimension).plus(square.along(dimension)),
        "parallel to the " + face.opposite().word() + ", which is square to the " + other.word(),
        square.origin());
  }

  /** T2: both are square to two faces that adjoin. */
  private static boolean closeParallel(Map<FacePair, Relation> relations, Face face) {
    Face opposite = face.opposite();
    for (Face g : Face.all()) {
      for (Face h : Face.all()) {
        if (!g.adjoins(h) || !g.adjoins(face) || !h.adjoins(face)) {
          continue;
        }
        Relation fg = relations.get(new FacePair(face, g));
        Relation fh = relations.get(new FacePair(face, h));
        Relation og = relations.get(new FacePair(opposite, g));
        Relation oh = relations.get(new FacePair(opposite, h));
        if (fg == null || fh == null || og == null || oh == null) {
          continue;
        }
        Map<PartDimension, Slope> slopes = new HashMap<>();
        slopes.put(g.dimension(), fg.along(g.dimension()).plus(og.along(g.dimension())));
        slopes.put(h.dimension(), fh.along(h.dimension()).plus(oh.along(h.dimension())));
        relations.put(
            new FacePair(face, opposite),
            new Relation(
                slopes,
                "both are square to the " + g.word() + " and to the " + h.word(),
                og.origin()));
        return true;
      }
    }
    return false;
  }
}
