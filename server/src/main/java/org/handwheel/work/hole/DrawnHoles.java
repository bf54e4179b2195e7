package org.handwheel.work.hole;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.handwheel.model.Part;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Part.Mirror;
import org.handwheel.model.Part.PatternSpec;
import org.handwheel.model.Part.Position;
import org.handwheel.model.Part.Shape;
import org.handwheel.model.PartDimension;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.thread.ScrewThread;
import org.handwheel.units.Length;
import org.handwheel.work.FaceFrame;
import org.handwheel.work.FaceFrame.Place;
import org.handwheel.work.PartBox;
import org.jspecify.annotations.Nullable;

/**
 * Every hole of a drawing at its place, patterns written out.
 *
 * @param all in the drawing's order
 */
public record DrawnHoles(List<DrawnHole> all) {
  /** Two places of a mirrored pattern that are as near as this are one. */
  private static final Length ROUNDING = new Length(100);

  public DrawnHoles {
    all = List.copyOf(all);
  }

  /** The holes of a part; those whose place is not given are left out. */
  public static DrawnHoles of(Part part, PartBox box, StandardTables tables) {
    List<DrawnHole> all = new ArrayList<>();
    for (HoleSpec spec : part.holes()) {
      FaceFrame frame = new FaceFrame(spec.face(), box);
      ScrewThread thread =
          spec.thread() == null ? null : tables.threads().find(spec.thread()).orElse(null);
      if (spec.position() != null) {
        all.add(new DrawnHole(spec, null, 0, frame, frame.of(spec.position()), Set.of(), thread));
      }
      for (PatternSpec pattern : part.patterns()) {
        if (pattern.shape() != null && same(pattern.hole(), spec.name())) {
          addPattern(spec, pattern, frame, thread, all);
        }
      }
    }
    return new DrawnHoles(all);
  }

  private static void addPattern(
      HoleSpec spec,
      PatternSpec pattern,
      FaceFrame frame,
      @Nullable ScrewThread thread,
      List<DrawnHole> all) {
    int number = 1;
    for (Placed placed : placed(pattern, frame)) {
      all.add(
          new DrawnHole(spec, pattern, number, frame, placed.place(), placed.mirrored(), thread));
      number++;
    }
  }

  /** A place of a pattern, and in which dimensions it is the other side of the part's middle. */
  private record Placed(Place place, Set<PartDimension> mirrored) {}

  /** The places of a pattern in its own order; those that are mirrored follow. */
  public static List<Place> places(PatternSpec pattern, FaceFrame frame) {
    return placed(pattern, frame).stream().map(Placed::place).toList();
  }

  private static List<Placed> placed(PatternSpec pattern, FaceFrame frame) {
    List<Placed> places = new ArrayList<>();
    unmirrored(pattern, frame).forEach(place -> places.add(new Placed(place, Set.of())));
    for (Mirror mirror : pattern.mirrors()) {
      for (Placed placed : List.copyOf(places)) {
        Place image = image(placed.place(), mirror, frame);
        // A hole on the line, or one whose image is a hole already, is drilled once.
        if (places.stream().noneMatch(one -> isSame(one.place(), image))) {
          places.add(new Placed(image, mirrored(placed, mirror)));
        }
      }
    }
    return places;
  }

  private static Set<PartDimension> mirrored(Placed placed, Mirror mirror) {
    if (!(mirror instanceof Mirror.Centre centre)) {
      // About a line of its own the image is as far from the pattern's start as it comes out.
      return Set.of();
    }
    Set<PartDimension> mirrored = new HashSet<>(placed.mirrored());
    mirrored.add(centre.across());
    return mirrored;
  }

  private static boolean isSame(Place one, Place other) {
    return one.first().minus(other.first()).abs().compareTo(ROUNDING) <= 0
        && one.second().minus(other.second()).abs().compareTo(ROUNDING) <= 0;
  }

  /**
   * A place on the other side of a line. About the part's middle it is exact; about any line P - 2
   * ((P - A) . n) n with the unit normal n (elementary geometry), rounded once to a picometre.
   */
  private static Place image(Place place, Mirror mirror, FaceFrame frame) {
    if (mirror instanceof Mirror.Centre centre) {
      return centre.across() == frame.firstAlong()
          ? new Place(frame.firstSize().minus(place.first()), place.second())
          : new Place(place.first(), frame.secondSize().minus(place.second()));
    }
    Mirror.Line line = (Mirror.Line) mirror;
    Place from = frame.of(line.from());
    Place to = frame.of(line.to());
    if (from.first().equals(to.first())) {
      return new Place(from.first().plus(from.first()).minus(place.first()), place.second());
    }
    if (from.second().equals(to.second())) {
      return new Place(place.first(), from.second().plus(from.second()).minus(place.second()));
    }
    double alongFirst = to.first().minus(from.first()).millimetres();
    double alongSecond = to.second().minus(from.second()).millimetres();
    double length = Math.hypot(alongFirst, alongSecond);
    double normalFirst = -alongSecond / length;
    double normalSecond = alongFirst / length;
    double off =
        place.first().minus(from.first()).millimetres() * normalFirst
            + place.second().minus(from.second()).millimetres() * normalSecond;
    return place.plus(
        Length.ofMillimetres(-2 * off * normalFirst),
        Length.ofMillimetres(-2 * off * normalSecond));
  }

  private static List<Place> unmirrored(PatternSpec pattern, FaceFrame frame) {
    Shape shape = pattern.shape();
    List<Place> places = new ArrayList<>();
    if (shape instanceof Shape.Circle circle) {
      for (int i = 0; i < circle.count(); i++) {
        places.add(onCircle(circle, i, frame));
      }
    } else if (shape instanceof Shape.Single single) {
      places.add(frame.of(single.start()));
    } else if (shape instanceof Shape.Row row) {
      for (int i = 0; i < row.count(); i++) {
        places.add(
            stepped(row.start(), row.stepFirst().times(i), row.stepSecond().times(i), frame));
      }
    } else if (shape instanceof Shape.Grid grid) {
      for (int row = 0; row < grid.rows(); row++) {
        for (int column = 0; column < grid.columns(); column++) {
          places.add(
              stepped(
                  grid.start(),
                  grid.stepFirst().times(column),
                  grid.stepSecond().times(row),
                  frame));
        }
      }
    }
    return places;
  }

  /**
   * Steps count as the start does: away from its corner, or with the dimensions from the centre.
   */
  private static Place stepped(Position start, Length first, Length second, FaceFrame frame) {
    return frame.of(start, start.first().plus(first), start.second().plus(second));
  }

  /**
   * Hole {@code index} of a circle: the centre plus D/2 cos a along the first coordinate and D/2
   * sin a along the second, a = start + index x 360/count, counter-clockwise as one looks at the
   * face. The product is rounded once to a picometre. Source of the formula: tables of hole
   * coordinates in shop handbooks; elementary trigonometry.
   */
  private static Place onCircle(Shape.Circle circle, int index, FaceFrame frame) {
    double degrees = circle.firstDegrees() + 360.0 * index / circle.count();
    double angle = Math.toRadians(degrees);
    double radius = circle.dia().millimetres() / 2;
    return frame
        .of(circle.about())
        .plus(
            Length.ofMillimetres(frame.firstToRight() * radius * Math.cos(angle)),
            Length.ofMillimetres(radius * Math.sin(angle)));
  }

  /** The holes that a name means: a hole, or all of a pattern. */
  public List<DrawnHole> named(String name) {
    return all.stream()
        .filter(
            hole ->
                same(hole.spec().name(), name)
                    || (hole.pattern() != null && same(hole.pattern().name(), name)))
        .toList();
  }

  private static boolean same(String a, String b) {
    return a.toLowerCase(Locale.ROOT).equals(b.toLowerCase(Locale.ROOT));
  }
}
