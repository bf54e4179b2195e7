package org.handwheel.plan.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.handwheel.plan.picture.Drawing.Anchor;
import org.handwheel.plan.picture.Drawing.Arrow;
import org.handwheel.plan.picture.Drawing.Circle;
import org.handwheel.plan.picture.Drawing.Course;
import org.handwheel.plan.picture.Drawing.End;
import org.handwheel.plan.picture.Drawing.Group;
import org.handwheel.plan.picture.Drawing.Item;
import org.handwheel.plan.picture.Drawing.Lettering;
import org.handwheel.plan.picture.Drawing.Line;
import org.handwheel.plan.picture.Drawing.Path;
import org.handwheel.plan.picture.Drawing.Point;
import org.handwheel.plan.picture.Drawing.Words;
import org.handwheel.plan.picture.Picture.Along;
import org.handwheel.plan.picture.Picture.Datum;
import org.handwheel.plan.picture.Picture.Dimension;
import org.handwheel.plan.picture.Picture.Look;
import org.handwheel.plan.picture.Picture.Mark;
import org.handwheel.plan.picture.Picture.Style;
import org.handwheel.plan.picture.Picture.View;
import org.handwheel.syntax.SyntaxTree;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/** Lays out one view of a picture: its shapes, sizes and numbers. */
final class ViewLayout {
  private static final double BALLOON = 11;

  private final Picture picture;
  private final SyntaxTree tree;
  private final List<String> parts;
  private final Frame frame;
  private final List<Group> groups = new ArrayList<>();

  /**
   * For a view.
   *
   * @param parts the list of parts, which gives each its number
   */
  ViewLayout(Picture picture, SyntaxTree tree, List<String> parts, Frame frame) {
    this.picture = picture;
    this.tree = tree;
    this.parts = parts;
    this.frame = frame;
  }

  /** How much higher the words over a view are, for the datums on its upper edge. */
  static double lift(View view) {
    return view.datums().stream().anyMatch(datum -> datum.outY() > 0) ? 18 : 0;
  }

  List<Group> draw() {
    View view = frame.view();
    List<Item> items = new ArrayList<>();
    items.add(left(frame.left(), frame.top() - 22 - lift(view), "Seen " + view.look().words()));
    add(items);
    List<Integer> seen = new ArrayList<>();
    for (Mark mark : view.marks()) {
      int line = line(mark);
      boolean first = line > 0 && !seen.contains(line);
      if (first) {
        seen.add(line);
      }
      groups.add(
          new Group(
              first ? PictureLayout.id(picture, view.look(), line) : null, line, shape(mark)));
    }
    add(face());
    double lowest = balloons();
    view.dimensions().forEach(dimension -> add(dimension(dimension, lowest)));

    view.datums().forEach(datum -> add(datum(datum)));
    if (view.look() == Look.FROM_ABOVE) {
      double x = frame.left();
      double y = frame.bottom() + 46;
      List<Item> here = new ArrayList<>();
      here.add(
          path(
              Line.SOLID,
              End.CLOSED,
              new Point(x, y),
              new Point(x + 5, y - 10),
              new Point(x + 10, y)));
      here.add(left(x + 14, y, "you stand here"));
      add(here);
    }
    return groups;
  }

  private void add(List<Item> items) {
    if (!items.isEmpty()) {
      groups.add(new Group(null, 0, items));
    }
  }

  private static Words left(double x, double y, String words) {
    return new Words(Lettering.NAME, Anchor.LEFT, x, y, words);
  }

  private static Path path(Line line, End end, Point... points) {
    return new Path(line, List.of(new Course(Arrays.asList(points), end)), Arrow.NONE);
  }

  private int line(Mark mark) {
    return mark.origin() == null || !tree.contains(mark.origin())
        ? 0
        : tree.line(mark.origin()) + 1;
  }

  // ---- Shapes

  private List<Item> shape(Mark mark) {
    if (mark.style() == Style.ZERO) {
      Coordinate at = mark.shape().getCoordinate();
      double x = frame.x(at.getX());
      double y = frame.y(at.getY());
      return List.of(
          new Circle(Line.ZERO, x, y, 6),
          path(Line.THIN, End.OPEN, new Point(x - 11, y), new Point(x + 11, y)),
          path(Line.THIN, End.OPEN, new Point(x, y - 11), new Point(x, y + 11)));
    }
    Line line =
        mark.part().startsWith("cutter ") && mark.style() == Style.OUTLINE
            ? Line.CUTTER
            : Line.valueOf(mark.style().name());
    Arrow arrow = mark.style() == Style.WAY ? Arrow.AT_END : Arrow.NONE;
    return List.of(new Path(line, courses(mark.shape()), arrow));
  }

  /** All rings and lines of a shape. */
  private List<Course> courses(Geometry shape) {
    List<Course> courses = new ArrayList<>();
    for (int i = 0; i < shape.getNumGeometries(); i++) {
      Geometry part = shape.getGeometryN(i);
      if (part instanceof Polygon polygon) {
        courses.add(course(polygon.getExteriorRing(), End.CLOSED));
        for (int k = 0; k < polygon.getNumInteriorRing(); k++) {
          courses.add(course(polygon.getInteriorRingN(k), End.CLOSED));
        }
      } else {
        courses.add(course(part, End.OPEN));
      }
    }
    return courses;
  }

  private Course course(Geometry line, End end) {
    List<Point> points = new ArrayList<>();
    for (Coordinate at : line.getCoordinates()) {
      points.add(new Point(frame.x(at.getX()), frame.y(at.getY())));
    }
    return new Course(points, end);
  }

  private List<Item> face() {
    List<Item> items = new ArrayList<>();
    frame.view().marks().stream()
        .filter(mark -> mark.part().startsWith("the work,"))
        .findFirst()
        .ifPresent(
            mark -> {
              Coordinate middle = mark.shape().getEnvelopeInternal().centre();
              double low = frame.view().look() == Look.FROM_ABOVE ? 20 : 5;
              items.add(
                  new Words(
                      Lettering.FACE,
                      Anchor.MIDDLE,
                      frame.x(middle.getX()),
                      frame.y(middle.getY()) + low,
                      frame.view().face()));
            });
    return items;
  }

  private List<Item> dimension(Dimension dimension, double lowest) {
    // Below the numbers beside the view, which may reach further down than it.
    double base = Math.max(frame.bottom(), frame.view().look() == Look.FROM_ABOVE ? 0 : lowest - 6);

    if (dimension.along() == Along.UP) {
      // Written out: an upright line would cross the leaders of the numbers.
      double middle = (frame.left() + frame.right()) / 2;
      return List.of(
          new Words(Lettering.SIZE, Anchor.MIDDLE, middle, base + 50, "high: " + dimension.text()));
    }
    double a = frame.x(dimension.from());
    double b = frame.x(dimension.to());
    double y = frame.bottom() + 14;
    Course course = new Course(List.of(new Point(a, y), new Point(b, y)), End.OPEN);
    return List.of(
        new Path(Line.THIN, List.of(course), Arrow.AT_BOTH),
        new Words(Lettering.SIZE, Anchor.MIDDLE, (a + b) / 2, base + 32, dimension.text()));
  }

  /** A filled triangle on the face, and its letter in a frame. Source: ISO 5459. */
  private List<Item> datum(Datum datum) {
    double x = frame.x(datum.at().getX());
    double y = frame.y(datum.at().getY());
    // Outward on the paper, where up is less.
    double dx = datum.outX();
    double dy = -datum.outY();
    Point base = new Point(x + dx * 9, y + dy * 9);
    Point end = new Point(x + dx * 18, y + dy * 18);
    Point middle = new Point(x + dx * 27, y + dy * 27);
    return List.of(
        path(Line.THIN, End.OPEN, base, end),
        path(
            Line.SOLID,
            End.CLOSED,
            new Point(x + dy * 6, y + dx * 6),
            base,
            new Point(x - dy * 6, y - dx * 6)),
        path(
            Line.BALLOON,
            End.CLOSED,
            new Point(middle.x() - 9, middle.y() - 9),
            new Point(middle.x() + 9, middle.y() - 9),
            new Point(middle.x() + 9, middle.y() + 9),
            new Point(middle.x() - 9, middle.y() + 9)),
        new Words(Lettering.NUMBER, Anchor.MIDDLE, middle.x(), middle.y() + 5, datum.letter()));
  }

  // ---- Numbers

  /**
   * Numbers in columns left and right of a view, as high as what they point to, none on another.
   * Says how far down they reach.
   */
  private double balloons() {
    List<Balloon> left = new ArrayList<>();
    List<Balloon> right = new ArrayList<>();
    List<String> done = new ArrayList<>();
    double middle = (frame.left() + frame.right()) / 2;
    for (Mark mark : frame.view().marks()) {
      if (mark.part().isEmpty() || done.contains(mark.part())) {
        continue;
      }
      done.add(mark.part());
      Envelope box = mark.shape().getEnvelopeInternal();
      Coordinate at = mark.style() == Style.WAY ? mark.shape().getCoordinates()[1] : box.centre();
      boolean toLeft = frame.x(at.getX()) < middle;
      if (mark.shape().getDimension() == 2 && !mark.part().startsWith("cutter ")) {
        // Near the edge, where little lies over it.
        double inset = Math.min(2, box.getWidth() / 2);
        at = new Coordinate(toLeft ? box.getMinX() + inset : box.getMaxX() - inset, at.getY());
      }
      double x = frame.x(at.getX());
      Balloon balloon = new Balloon(parts.indexOf(mark.part()) + 1, x, frame.y(at.getY()));
      (toLeft ? left : right).add(balloon);
    }
    return Math.max(place(left, frame.left() - 22), place(right, frame.right() + 22));
  }

  /** A number and the point it tells of. */
  private record Balloon(int number, double x, double y) {}

  private double place(List<Balloon> balloons, double x) {

    balloons.sort((a, b) -> Double.compare(a.y(), b.y()));
    double apart = 2 * BALLOON + 4;
    double next = frame.top() - 4;
    double least = frame.bottom() - (balloons.size() - 1) * apart;
    List<Item> items = new ArrayList<>();
    for (Balloon balloon : balloons) {
      double y = Math.max(next, Math.min(balloon.y(), Math.max(next, least)));
      next = y + apart;
      least += apart;
      double edge = x < balloon.x() ? x + BALLOON : x - BALLOON;
      Point from = new Point(edge, y);
      Point to = new Point(balloon.x(), balloon.y());
      items.add(path(Line.THIN, End.OPEN, from, to));
      items.add(new Circle(Line.SOLID, balloon.x(), balloon.y(), 2));
      items.add(new Circle(Line.BALLOON, x, y, BALLOON));
      String number = Integer.toString(balloon.number());
      items.add(new Words(Lettering.NUMBER, Anchor.MIDDLE, x, y + 5, number));
    }
    add(items);
    return balloons.isEmpty() ? 0 : next - apart + BALLOON;
  }
}
