package org.handwheel.plan.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.plan.picture.Picture.Datum;
import org.handwheel.plan.picture.Picture.Look;
import org.handwheel.work.Orientation;
import org.locationtech.jts.geom.Coordinate;

/** The datums of the drawing, each in one view, on the edge that its face is there. */
final class DatumMarks {
  /** How far along its edge a mark stands, away from the middle where the face's name is. */
  private static final double ALONG = 0.8;

  private final Map<String, Face> datums;
  private final Orientation lies;
  private final Solid work;

  DatumMarks(Map<String, Face> datums, Orientation lies, Solid work) {
    this.datums = new TreeMap<>(datums);
    this.lies = lies;
    this.work = work;
  }

  List<Datum> seen(Look look) {
    List<Datum> marks = new ArrayList<>();
    datums.forEach(
        (letter, face) -> {
          Direction out = lies.directionOf(face);
          if (look == (out.axis() == Axis.Z ? Look.FROM_FRONT : Look.FROM_ABOVE)) {
            marks.add(mark(letter, out, look));
          }
        });
    return marks;
  }

  private Datum mark(String letter, Direction out, Look look) {
    double x = out.axis() == Axis.X ? work.side(out) : at(work.x());
    double y = out.axis() == Axis.Y ? work.side(out) : at(work.y());
    double z = out.axis() == Axis.Z ? work.side(out) : at(work.z());
    Coordinate at = Solid.seen(look, x, y, z);
    return new Datum(
        letter, at, out.axis() == Axis.X ? out.sign() : 0, out.axis() == Axis.X ? 0 : out.sign());
  }

  private static double at(Solid.Span span) {
    return span.from() + span.size() * ALONG;
  }
}
