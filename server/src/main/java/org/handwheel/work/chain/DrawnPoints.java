package org.handwheel.work.chain;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.handwheel.model.Face;
import org.handwheel.model.Part;
import org.handwheel.model.Part.FeatureKind;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Part.Notation;
import org.handwheel.model.Part.Position;
import org.handwheel.model.Part.Shape;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.Drawing;
import org.handwheel.work.DrawnLimits;
import org.handwheel.work.DrawnLimits.Source;
import org.handwheel.work.FaceFrame;
import org.handwheel.work.PartBox;
import org.handwheel.work.chain.DrawnChain.Link;
import org.handwheel.work.chain.DrawnChain.Size;
import org.handwheel.work.feature.DrawnFeature;
import org.handwheel.work.feature.FeatureSizes;
import org.handwheel.work.hole.DrawnHole;
import org.handwheel.work.hole.DrawnHoles;
import org.jspecify.annotations.Nullable;

/**
 * Faces, middles of holes, their walls and floors, each by the sizes that lead to it.
 *
 * <p>A point is a sum of the drawing's sizes, counted from the left, front or bottom: the middle of
 * a hole dimensioned from the right is the length less its coordinate. The chain between two points
 * is the difference of their sums, so a size that both rest on drops out, and one that counts twice
 * is not taken for two that err on their own.
 */
public final class DrawnPoints {
  private final Plan plan;
  private final Part part;
  private final StandardTables tables;
  private final Map<PartDimension, Size> sizes = new EnumMap<>(PartDimension.class);
  private final Map<String, Map<PartDimension, Map<Size, Integer>>> points = new LinkedHashMap<>();

  private DrawnPoints(Plan plan, Part part, Drawing drawing, StandardTables tables) {
    this.plan = plan;
    this.part = part;
    this.tables = tables;
    for (Drawing.Demand demand : drawing.demands()) {
      sizes.put(
          demand.dimension(),
          new Size(
              demand.dimension().word(),
              demand.nominal(),
              demand.limits(),
              demand.source(),
              demand.origin()));
    }
  }

  /** The points of a plan's drawing; nothing if it has no part. */
  public static Optional<DrawnPoints> of(Plan plan, Drawing drawing, StandardTables tables) {
    if (plan.part() == null) {
      return Optional.empty();
    }
    DrawnPoints points = new DrawnPoints(plan, plan.part(), drawing, tables);
    points.addFaces();
    points.addHoles();
    points.addFeatures();
    return Optional.of(points);
  }

  /** The names of all points, in the drawing's order; upper and lower case are one. */
  public Set<String> names() {
    return points.keySet();
  }

  /** The directions in which both points have a place. */
  public List<PartDimension> directions(String from, String to) {
    return List.of(PartDimension.values()).stream()
        .filter(along -> sums(from).containsKey(along) && sums(to).containsKey(along))
        .toList();
  }

  /**
   * What lies between two points, counted so that it is not below zero as drawn; nothing if one of
   * them has no place in that direction.
   */
  public Optional<DrawnChain> chain(String from, String to, PartDimension along) {
    Map<Size, Integer> start = sums(from).get(along);
    Map<Size, Integer> end = sums(to).get(along);
    if (start == null || end == null) {
      return Optional.empty();
    }
    Map<Size, Integer> difference = new LinkedHashMap<>(end);
    start.forEach((size, halves) -> difference.merge(size, -halves, Integer::sum));
    DrawnChain chain =
        new DrawnChain(
            along,
            difference.entrySet().stream()
                .filter(entry -> entry.getValue() != 0)
                .map(entry -> new Link(entry.getKey(), entry.getValue()))
                .toList());
    return Optional.of(chain.nominal().isNegative() ? chain.reversed() : chain);
  }

  private Map<PartDimension, Map<Size, Integer>> sums(String name) {
    return points.getOrDefault(key(name), Map.of());
  }

  private static String key(String name) {
    return name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
  }

  private void put(String name, PartDimension along, Map<Size, Integer> sum) {
    points
        .computeIfAbsent(key(name), any -> new EnumMap<>(PartDimension.class))
        .putIfAbsent(along, sum);
  }

  // ---- Faces

  private void addFaces() {
    for (Face face : Face.all()) {
      Map<Size, Integer> sum = face(face);
      if (sum != null) {
        put(face.word(), face.dimension(), sum);
      }
    }
  }

  private @Nullable Map<Size, Integer> face(Face face) {
    if (face.sign() < 0) {
      return Map.of();
    }
    Size size = sizes.get(face.dimension());
    return size == null ? null : Map.of(size, 2);
  }

  // ---- Holes

  private void addHoles() {
    for (DrawnHole hole : DrawnHoles.of(part, box(), tables).all()) {
      Position position = position(hole);
      if (position != null) {
        addMiddle(hole, position, 0);
        addMiddle(hole, position, 1);
      }
      addFloor(hole);
    }
  }

  private PartBox box() {
    return new PartBox(
        nominal(PartDimension.LENGTH), nominal(PartDimension.WIDTH), nominal(PartDimension.HEIGHT));
  }

  private Length nominal(PartDimension dimension) {
    Size size = sizes.get(dimension);
    return size == null ? Length.ZERO : size.nominal();
  }

  /** The position that places a hole, or its pattern. */
  private static @Nullable Position position(DrawnHole hole) {
    if (hole.pattern() == null) {
      return hole.spec().position();
    }
    Shape shape = hole.pattern().shape();
    if (shape instanceof Shape.Circle circle) {
      return circle.about();
    }
    if (shape instanceof Shape.Single single) {
      return single.start();
    }
    return shape instanceof Shape.Row row
        ? row.start()
        : shape instanceof Shape.Grid grid ? grid.start() : null;
  }

  /** The middle of a hole along the first (0) or second (1) coordinate of its face. */
  private void addMiddle(DrawnHole hole, Position position, int which) {
    FaceFrame frame = hole.frame();
    PartDimension along = which == 0 ? frame.firstAlong() : frame.secondAlong();
    Map<Size, Integer> sum = base(position, which, along);
    if (sum == null) {
      return;
    }
    Length coordinate = which == 0 ? position.first() : position.second();
    Notation notation = which == 0 ? position.firstNotation() : position.secondNotation();
    boolean back = !position.isFromCentre() && position.corner().get(which).sign() > 0;
    String owner = hole.pattern() == null ? hole.name() : hole.pattern().name();
    String from = position.isFromCentre() ? "centre" : position.corner().get(which).word();
    add(
        sum,
        size(owner + " from the " + from, coordinate, notation, position.origin()),
        back ? -2 : 2);
    Length place = which == 0 ? hole.place().first() : hole.place().second();
    // What the mirror shows is as far from the other side.
    boolean isMirrored = hole.mirrored().contains(along);
    Length placed = isMirrored ? nominal(along).minus(place) : place;
    FaceFrame.Place start = frame.of(position);
    Length offset = placed.minus(which == 0 ? start.first() : start.second());
    if (hole.pattern() != null && !offset.isZero()) {
      add(sum, size(hole.name() + " in its pattern", offset, null, hole.origin()), 2);
    }
    if (isMirrored) {
      sum = fromOtherSide(sum, along);
      if (sum == null) {
        return;
      }
    }
    put(hole.name(), along, sum);
    addWalls(hole, along, sum);
  }

  /** The whole size less a chain; null if the drawing does not give that size. */
  private @Nullable Map<Size, Integer> fromOtherSide(Map<Size, Integer> sum, PartDimension along) {
    Size whole = sizes.get(along);
    if (whole == null) {
      return null;
    }
    Map<Size, Integer> other = new LinkedHashMap<>();
    add(other, whole, 2);
    sum.forEach((size, halves) -> add(other, size, -halves));
    return other;
  }

  /** The edge or centre a position counts from; null if the drawing does not give its size. */
  private @Nullable Map<Size, Integer> base(Position position, int which, PartDimension along) {
    if (!position.isFromCentre()) {
      Map<Size, Integer> edge = face(position.corner().get(which));
      return edge == null ? null : new LinkedHashMap<>(edge);
    }
    Size size = sizes.get(along);
    return size == null ? null : new LinkedHashMap<>(Map.of(size, 1));
  }

  private void addWalls(DrawnHole hole, PartDimension along, Map<Size, Integer> middle) {
    Length dia = hole.dia();
    if (dia == null) {
      return;
    }
    Size bore =
        DrawnLimits.of(hole.spec(), part, plan.shop().limits(), tables)
            .map(
                found ->
                    new Size(
                        "dia of " + hole.spec().name(),
                        dia,
                        found.limits(),
                        found.source(),
                        hole.spec().origin()))
            .orElseGet(
                () ->
                    new Size(
                        "dia of " + hole.spec().name(),
                        dia,
                        LengthRange.exactly(dia),
                        Source.OWN,
                        hole.spec().origin()));
    for (Face side : List.of(Face.of(along, -1), Face.of(along, 1))) {
      Map<Size, Integer> wall = new LinkedHashMap<>(middle);
      add(wall, bore, side.sign());
      put(side.word() + " of " + hole.name(), along, wall);
    }
  }

  /** The floor of a blind hole, at full diameter. */
  private void addFloor(DrawnHole hole) {
    Length depth = hole.depth();
    Face face = hole.spec().face();
    Map<Size, Integer> top = face(face);
    if (hole.spec().through() || depth == null || top == null) {
      return;
    }
    Map<Size, Integer> sum = new LinkedHashMap<>(top);
    add(
        sum,
        size("depth of " + hole.spec().name(), depth, null, hole.spec().origin()),
        face.sign() > 0 ? -2 : 2);
    put("floor of " + hole.name(), face.dimension(), sum);
  }

  // ---- Slots, pockets, outlines

  /**
   * Their middles and floors, the sides of slots and pockets, and those of outlines and windows
   * with a tolerance.
   */
  private void addFeatures() {
    for (FeatureSpec spec : part.features()) {
      if (spec.face() == null) {
        continue;
      }
      FaceFrame frame = new FaceFrame(spec.face(), box());
      addMiddle(spec, frame.firstAlong(), 0);
      addMiddle(spec, frame.secondAlong(), 1);
      Map<Size, Integer> top = face(spec.face());
      if (spec.depth() != null && top != null && spec.depth().isLessThan(frame.thickness())) {
        Map<Size, Integer> sum = new LinkedHashMap<>(top);
        add(
            sum,
            size("depth of " + spec.name(), spec.depth(), null, spec.origin()),
            spec.face().sign() > 0 ? -2 : 2);
        put("floor of " + spec.name(), spec.face().dimension(), sum);
      }
    }
  }

  private void addMiddle(FeatureSpec spec, PartDimension along, int which) {
    boolean isCorner =
        spec.featureKind() == FeatureKind.CORNER
            || spec.featureKind() == FeatureKind.PROFILE
            || spec.featureKind() == FeatureKind.CHAMFER;
    Position position = spec.position();
    if (isCorner || position == null) {
      return;
    }
    Map<Size, Integer> sum = base(position, which, along);
    if (sum == null) {
      return;
    }
    boolean isFromCentre = position.isFromCentre();
    boolean back = !isFromCentre && position.corner().get(which).sign() > 0;
    String from = isFromCentre ? "centre" : position.corner().get(which).word();
    add(
        sum,
        size(
            spec.name() + " from the " + from,
            which == 0 ? position.first() : position.second(),
            which == 0 ? position.firstNotation() : position.secondNotation(),
            position.origin()),
        back ? -2 : 2);
    put(spec.name(), along, sum);
    String word = which == 0 ? "length" : "width";
    FeatureSizes.of(spec, part, plan.shop().limits(), tables).stream()
        .filter(size -> size.word().equals(word) || size.word().equals("diameter"))
        .findFirst()
        .ifPresent(size -> addSides(spec, along, sum, size));
  }

  private void addSides(
      FeatureSpec spec, PartDimension along, Map<Size, Integer> middle, FeatureSizes.Size size) {
    Size over =
        new Size(
            size.word() + " of " + spec.name(),
            size.nominal(),
            size.limits().limits(),
            size.limits().source(),
            spec.origin());
    for (Face side : List.of(Face.of(along, -1), Face.of(along, 1))) {
      if (!isOpen(spec, side)) {
        Map<Size, Integer> wall = new LinkedHashMap<>(middle);
        add(wall, over, side.sign());
        put(side.word() + " of " + spec.name(), along, wall);
      }
    }
  }

  /** Whether a slot or pocket runs out at a face: then it has no wall there. */
  private boolean isOpen(FeatureSpec spec, Face side) {
    return DrawnFeature.of(spec, box())
        .map(
            drawn ->
                drawn.form() instanceof DrawnFeature.Form.Sunk sunk && drawn.runsOutAt(sunk, side))
        .orElse(false);
  }

  /** A size without a tolerance of its own. */
  private Size size(String words, Length nominal, @Nullable Notation notation, Origin origin) {
    DrawnLimits found =
        DrawnLimits.general(nominal.abs(), notation, part, plan.shop().limits(), tables);
    return new Size(
        words,
        nominal,
        LengthRange.around(nominal, found.limits().spread()),
        found.source(),
        origin);
  }

  private static void add(Map<Size, Integer> sum, Size size, int halves) {
    sum.merge(size, halves, Integer::sum);
  }
}
