package org.handwheel.plan.picture;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.plan.picture.Drawing.Arrow;
import org.handwheel.plan.picture.Drawing.Circle;
import org.handwheel.plan.picture.Drawing.Course;
import org.handwheel.plan.picture.Drawing.End;
import org.handwheel.plan.picture.Drawing.Item;
import org.handwheel.plan.picture.Drawing.Line;
import org.handwheel.plan.picture.Drawing.Path;
import org.handwheel.plan.picture.Drawing.Point;

/** The symbol of the projection, a cone cut off and its end view. Source: ISO 5456-2. */
final class Symbol {
  private Symbol() {}

  static List<Item> of(double x, double y, Projection projection) {
    boolean first = projection == Projection.FIRST;
    double cone = first ? x : x + 42;
    double rings = first ? x + 58 : x + 14;
    List<Item> items = new ArrayList<>();
    List<Point> corners =
        List.of(
            new Point(cone, y - 6),
            new Point(cone + 30, y - 12),
            new Point(cone + 30, y + 12),
            new Point(cone, y + 6));
    items.add(new Path(Line.THIN, List.of(new Course(corners, End.CLOSED)), Arrow.NONE));
    for (int radius : List.of(6, 12)) {
      items.add(new Circle(Line.THIN, rings, y, radius));
    }
    return items;
  }
}
