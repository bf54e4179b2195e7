package org.handwheel.plan.picture;

import java.util.List;
import org.handwheel.syntax.Origin;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/**
 * What a picture of a setup shows, before it is laid out on a sheet.
 *
 * @param key tells this picture from others on one page: the number of the setup's line
 * @param notes lines below the list of parts
 */
public record Picture(
    int key, String title, Projection projection, List<View> views, List<String> notes) {
  public Picture {
    views = List.copyOf(views);
    notes = List.copyOf(notes);
  }

  /** From where one looks. */
  public enum Look {
    FROM_ABOVE("from above"),
    FROM_FRONT("from where you stand"),
    FROM_LEFT("from the left"),
    FROM_RIGHT("from the right");

    private final String words;

    Look(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** How a shape is drawn; line types by ISO 128-2. */
  public enum Style {
    /** Visible outline: continuous wide line. */
    OUTLINE,
    /** The fixed jaw and what carries the work: outline, hatched. */
    FIXED,
    /** Parallels and what is laid in: outline, hatched the other way. */
    LAID_IN,
    /** Hidden outline: dashed narrow line. */
    HIDDEN,
    /** What comes off: long-dashed double-dotted narrow line, hatched. */
    REMOVED,
    /** What an earlier setup took off: long-dashed double-dotted narrow line. */
    FORMER,
    /** An edge of what is left: continuous wide line, nothing filled. */
    EDGE,
    /** A centre line: long-dashed dotted narrow line. */
    CENTRE,
    /** A way with an arrow at its end: continuous narrow line. */
    WAY,
    /** Where a dial stands at zero. */
    ZERO
  }

  /**
   * One shape.
   *
   * @param shape in millimetres, x to the right and y up as one looks
   * @param part what it is, as the list of parts says it; empty for what is not listed
   * @param origin the line of the plan it comes from
   */
  public record Mark(Style style, Geometry shape, String part, @Nullable Origin origin) {}

  /**
   * The size of the work in a view.
   *
   * @param from smallest place in millimetres
   */
  public record Dimension(Along along, double from, double to, String text) {}

  /** The way a dimension runs on the paper. */
  public enum Along {
    ACROSS,
    UP
  }

  /**
   * A datum of the drawing on a face that is seen from its edge. Source: ISO 5459.
   *
   * @param at a place on the face, in millimetres
   * @param outX away from the work: 1, 0 or -1, to the right as one looks
   * @param outY the same, up as one looks
   */
  public record Datum(String letter, Coordinate at, int outX, int outY) {}

  /** One view. */
  public record View(
      Look look, String face, List<Mark> marks, List<Dimension> dimensions, List<Datum> datums) {
    public View {
      marks = List.copyOf(marks);
      dimensions = List.copyOf(dimensions);
      datums = List.copyOf(datums);
    }
  }
}
