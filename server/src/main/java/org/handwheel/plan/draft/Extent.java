package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.handwheel.model.Face;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Part.PatternSpec;
import org.handwheel.model.Part.Position;
import org.handwheel.model.Part.Shape;
import org.handwheel.model.PartDimension;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.FaceFrame;
import org.handwheel.work.PartBox;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.handwheel.work.hole.DrawnHoles;
import org.jspecify.annotations.Nullable;

/**
 * Where a hole, a pattern or a slot lies on its face: how far it reaches along each of the face's
 * two dimensions, from the part's left, front or bottom.
 *
 * @param corner the two faces it is measured from; empty if from the middle
 */
record Extent(Map<PartDimension, LengthRange> along, List<Face> corner) {
  Extent {
    along = Map.copyOf(along);
    corner = List.copyOf(corner);
  }

  /** How far a point is from where a pattern or a slot is said to be. */
  private record Shift(Length first, Length second) {
    static final Shift NONE = new Shift(Length.ZERO, Length.ZERO);
  }

  /** The dimension the first coordinate on a face runs along; the second runs along the other. */
  private static PartDimension first(Face face) {
    return face.dimension() == PartDimension.LENGTH ? PartDimension.WIDTH : PartDimension.LENGTH;
  }

  private static PartDimension second(Face face) {
    return face.dimension() == PartDimension.HEIGHT ? PartDimension.WIDTH : PartDimension.HEIGHT;
  }

  static Optional<Extent> of(HoleSpec hole, Workpiece work) {
    Position position = hole.position();
    return position == null
        ? Optional.empty()
        : at(hole.face(), position, List.of(Shift.NONE), work);
  }

  static Optional<Extent> of(PatternSpec pattern, Face face, Workpiece work) {
    Shape shape = pattern.shape();
    if (!pattern.mirrors().isEmpty() && shape != null) {
      return mirrored(pattern, shape, face, work);
    }
    List<Shift> shifts = new ArrayList<>();
    Position start;
    if (shape instanceof Shape.Circle circle) {
      start = circle.about();
      for (int i = 0; i < circle.count(); i++) {
        double angle = Math.toRadians(circle.firstDegrees() + 360.0 * i / circle.count());
        double radius = circle.dia().millimetres() / 2;
        shifts.add(
            new Shift(
                Length.ofMillimetres(radius * Math.cos(angle)),
                Length.ofMillimetres(radius * Math.sin(angle))));
      }
    } else if (shape instanceof Shape.Row row) {
      start = row.start();
      shifts.add(Shift.NONE);
      shifts.add(
          new Shift(
              row.stepFirst().times(row.count() - 1L), row.stepSecond().times(row.count() - 1L)));
    } else if (shape instanceof Shape.Grid grid) {
      start = grid.start();
      shifts.add(Shift.NONE);
      shifts.add(
          new Shift(
              grid.stepFirst().times(grid.columns() - 1L),
              grid.stepSecond().times(grid.rows() - 1L)));
    } else {
      return Optional.empty();
    }
    return at(face, start, shifts, work);
  }

  /** A pattern with its images, each place worked out. */
  private static Optional<Extent> mirrored(
      PatternSpec pattern, Shape shape, Face face, Workpiece work) {
    Map<PartDimension, Length> sizes = new EnumMap<>(PartDimension.class);
    for (PartDimension dimension : PartDimension.values()) {
      SizeState size = work.size(dimension);
      if (size == null) {
        return Optional.empty();
      }
      sizes.put(dimension, size.range().middle());
    }
    FaceFrame frame =
        new FaceFrame(
            face,
            new PartBox(
                sizes.getOrDefault(PartDimension.LENGTH, Length.ZERO),
                sizes.getOrDefault(PartDimension.WIDTH, Length.ZERO),
                sizes.getOrDefault(PartDimension.HEIGHT, Length.ZERO)));
    List<FaceFrame.Place> places = DrawnHoles.places(pattern, frame);
    List<Length> firsts = places.stream().map(FaceFrame.Place::first).sorted().toList();
    List<Length> seconds = places.stream().map(FaceFrame.Place::second).sorted().toList();
    return Optional.of(
        new Extent(
            Map.of(
                first(face), new LengthRange(firsts.get(0), firsts.get(firsts.size() - 1)),
                second(face), new LengthRange(seconds.get(0), seconds.get(seconds.size() - 1))),
            start(shape).corner()));
  }

  private static Position start(Shape shape) {
    if (shape instanceof Shape.Circle circle) {
      return circle.about();
    } else if (shape instanceof Shape.Row row) {
      return row.start();
    }
    return shape instanceof Shape.Grid grid ? grid.start() : ((Shape.Single) shape).start();
  }

  /** A slot or a pocket: its length runs along the first coordinate. */
  static Optional<Extent> of(FeatureSpec feature, Workpiece work) {
    Face face = feature.face();
    Position position = feature.position();
    if (face == null || position == null) {
      return Optional.empty();
    }
    Length length = half(feature.length());
    Length width = half(feature.width());
    return at(
        face,
        position,
        List.of(new Shift(length.negated(), width.negated()), new Shift(length, width)),
        work);
  }

  private static Length half(@Nullable Length length) {
    return length == null ? Length.ZERO : length.half();
  }

  private static Optional<Extent> at(
      Face face, Position position, List<Shift> shifts, Workpiece work) {
    Map<PartDimension, LengthRange> along = new EnumMap<>(PartDimension.class);
    for (int i = 0; i < 2; i++) {
      PartDimension dimension = i == 0 ? first(face) : second(face);
      Length base = i == 0 ? position.first() : position.second();
      SizeState size = work.size(dimension);
      if (size == null) {
        return Optional.empty();
      }
      Length whole = size.range().middle();
      Length low = null;
      Length high = null;
      for (Shift shift : shifts) {
        Length place =
            fromLow(base.plus(i == 0 ? shift.first() : shift.second()), dimension, position, whole);
        low = low == null ? place : Length.min(low, place);
        high = high == null ? place : Length.max(high, place);
      }
      if (low != null && high != null) {
        along.put(dimension, new LengthRange(low, high));
      }
    }
    return Optional.of(new Extent(along, position.corner()));
  }

  private static Length fromLow(
      Length value, PartDimension dimension, Position position, Length whole) {
    if (position.isFromCentre()) {
      return whole.half().plus(value);
    }
    boolean fromHigh =
        position.corner().stream()
            .anyMatch(face -> face.dimension() == dimension && face.sign() > 0);
    return fromHigh ? whole.minus(value) : value;
  }

  /**
   * The least left of the part beside it along a dimension.
   *
   * @param half how far it reaches to each side of its middle
   */
  Optional<Length> beside(PartDimension dimension, Length half, Workpiece work) {
    LengthRange range = along.get(dimension);
    SizeState size = work.size(dimension);
    if (range == null || size == null) {
      return Optional.empty();
    }
    Length low = range.low().minus(half);
    Length high = size.range().low().minus(range.high()).minus(half);
    return Optional.of(Length.min(low, high));
  }
}
