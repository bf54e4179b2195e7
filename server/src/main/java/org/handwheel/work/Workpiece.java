package org.handwheel.work;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.handwheel.model.Face;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.model.Located;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.model.Stock;
import org.handwheel.model.Stock.Skin;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.FaceState.Condition;
import org.handwheel.work.hole.HoleState;
import org.jspecify.annotations.Nullable;

/**
 * The block at one point of the plan.
 *
 * @param sizes its sizes; a size the stock does not give is missing
 * @param faces its six faces
 * @param relations which faces are square or parallel to which
 * @param obstacles for two faces whose relation the last cut could not make: why
 * @param removed holes, slots and the like cut so far, in order
 * @param holes what has been made of each hole, by its name; those not begun are missing
 */
public record Workpiece(
    Map<PartDimension, SizeState> sizes,
    Map<Face, FaceState> faces,
    Map<FacePair, Relation> relations,
    Map<FacePair, Obstacle> obstacles,
    List<Removed> removed,
    Map<String, HoleState> holes) {
  public Workpiece {
    sizes = Map.copyOf(sizes);
    faces = Map.copyOf(faces);
    relations = Map.copyOf(relations);
    obstacles = Map.copyOf(obstacles);
    removed = List.copyOf(removed);
    holes = Map.copyOf(holes);
  }

  /** The stock as bought: sizes give or take the shop's variation, faces as they are. */
  static Workpiece of(Plan plan) {
    Stock stock = plan.stock();
    Limits limits = plan.shop().limits();
    Length variation = limits.length(Limit.STOCK_VARIATION);
    Map<PartDimension, SizeState> sizes = new EnumMap<>(PartDimension.class);
    Map<Face, FaceState> faces = new EnumMap<>(Face.class);
    if (stock != null && stock.sizeOrigin() != null) {
      Origin origin = stock.sizeOrigin();
      stock
          .sizes()
          .forEach(
              (dimension, size) ->
                  sizes.put(
                      dimension,
                      new SizeState(LengthRange.around(size, variation), null, null, origin)));
    }
    Origin fallback = stock == null ? plan.header() : stock.origin();
    for (Face face : Face.all()) {
      Located<Skin> skin = stock == null ? null : stock.skins().get(face);
      faces.put(face, raw(skin == null ? new Located<>(Skin.ROLLED, fallback) : skin, limits));
    }
    return new Workpiece(sizes, faces, Map.of(), Map.of(), List.of(), Map.of());
  }

  private static FaceState raw(Located<Skin> skin, Limits limits) {
    boolean machined = skin.value().isMachined();
    return new FaceState(
        machined ? Condition.CLEAN : Condition.RAW,
        skin.value(),
        machined ? limits.length(Limit.FLATNESS) : null,
        Length.ZERO,
        skin.value() == Skin.SAWN ? skin.origin() : null,
        skin.origin());
  }

  public FaceState face(Face face) {
    FaceState state = faces.get(face);
    if (state == null) {
      throw new IllegalStateException("a block has six faces");
    }
    return state;
  }

  public @Nullable SizeState size(PartDimension dimension) {
    return sizes.get(dimension);
  }

  public @Nullable Relation relation(Face a, Face b) {
    return relations.get(new FacePair(a, b));
  }

  /**
   * Why it is not known how two faces lie: the mistake of an earlier setup that a rule reports
   * there, so that what follows from it is not reported again, or else the reason given.
   */
  Obstacle rootOr(Face a, Face b, Obstacle otherwise) {
    Obstacle root = obstacles.get(new FacePair(a, b));
    return root != null && root.kind().isReportedElsewhere() ? root : otherwise;
  }

  Workpiece withFace(Face face, FaceState state) {
    Map<Face, FaceState> next = new EnumMap<>(faces);
    next.put(face, state);
    return new Workpiece(sizes, next, relations, obstacles, removed, holes);
  }

  Workpiece withSize(PartDimension dimension, SizeState state) {
    Map<PartDimension, SizeState> next = new HashMap<>(sizes);
    next.put(dimension, state);
    return new Workpiece(next, faces, relations, obstacles, removed, holes);
  }

  Workpiece withoutSize(PartDimension dimension) {
    Map<PartDimension, SizeState> next = new HashMap<>(sizes);
    next.remove(dimension);
    return new Workpiece(next, faces, relations, obstacles, removed, holes);
  }

  Workpiece withRelations(Map<FacePair, Relation> next, Map<FacePair, Obstacle> nextObstacles) {
    return new Workpiece(sizes, faces, next, nextObstacles, removed, holes);
  }

  /** The work with more taken out of it. */
  public Workpiece withRemoved(List<Removed> more) {
    if (more.isEmpty()) {
      return this;
    }
    List<Removed> all = new ArrayList<>(removed);
    all.addAll(more);
    return new Workpiece(sizes, faces, relations, obstacles, all, holes);
  }

  /**
   * The work after a line on holes.
   *
   * @param states what has been made of each hole, earlier ones included
   * @param more what the line took out
   */
  public Workpiece withHoles(Map<String, HoleState> states, List<Removed> more) {
    return new Workpiece(sizes, faces, relations, obstacles, removed, states).withRemoved(more);
  }
}
