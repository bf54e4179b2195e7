package org.handwheel.plan.picture;

import java.util.Arrays;
import java.util.List;
import org.handwheel.units.UnitChoice;
import org.jspecify.annotations.Nullable;

/**
 * A picture laid out on its paper: lines, circles and words at places, for whatever draws them.
 * Places count in units from the upper left corner; words are made to be read where a unit is about
 * a fifth of a millimetre.
 *
 * @param key tells this drawing's names from those of others on one page
 * @param description what is to be seen, for those who do not see it
 * @param parts what the numbers stand for, from 1 on
 * @param notes what else has to be known
 */
public record Drawing(
    String key,
    String title,
    String description,
    double width,
    double height,
    List<Group> groups,
    List<String> parts,
    List<String> notes) {
  public Drawing {
    groups = List.copyOf(groups);
    parts = List.copyOf(parts);
    notes = List.copyOf(notes);
  }

  /** The same with its sizes in the chosen units. */
  public Drawing in(UnitChoice units) {
    return units == UnitChoice.BOTH
        ? this
        : new Drawing(
            key,
            title,
            units.of(description),
            width,
            height,
            groups.stream().map(group -> group.in(units)).toList(),
            parts.stream().map(units::of).toList(),
            notes);
  }

  /** What is beside the views. */
  public enum Arrangement {
    /** The picture stands alone: with its title, and the list of its parts below. */
    ALONE,
    /** The views only; title and list stand beside the picture. */
    VIEWS
  }

  /**
   * What one line of the plan draws in one view.
   *
   * @param id stays the same as long as the plan does; nothing where it has none
   * @param line the plan's line, from 1; 0 for none
   */
  public record Group(@Nullable String id, int line, List<Item> items) {
    public Group {
      items = List.copyOf(items);
    }

    private Group in(UnitChoice units) {
      return new Group(id, line, items.stream().map(item -> in(units, item)).toList());
    }

    private static Item in(UnitChoice units, Item item) {
      return item instanceof Words words && words.type() != Lettering.HEAD
          ? new Words(words.type(), words.anchor(), words.x(), words.y(), units.of(words.text()))
          : item;
    }
  }

  /** Something drawn. */
  public sealed interface Item permits Path, Circle, Words {}

  /** Lines through points, filled between where the line's kind says so (even-odd). */
  public record Path(Line line, List<Course> courses, Arrow arrow) implements Item {
    public Path {
      courses = List.copyOf(courses);
    }
  }

  /** A line through points. */
  public record Course(List<Point> points, End end) {
    public Course {
      points = List.copyOf(points);
    }
  }

  /** Whether a line goes back to where it began. */
  public enum End {
    OPEN,
    CLOSED
  }

  /** A place. */
  public record Point(double x, double y) {}

  /** A circle about its middle. */
  public record Circle(Line line, double x, double y, double radius) implements Item {}

  /** Words on their base line. */
  public record Words(Lettering type, Anchor anchor, double x, double y, String text)
      implements Item {}

  /** Where arrow heads are. */
  public enum Arrow {
    NONE,
    AT_END,
    AT_BOTH
  }

  /** What the place of words is. */
  public enum Anchor {
    LEFT,
    MIDDLE
  }

  /** What is inside of a closed line. */
  public enum Fill {
    NONE,
    WHITE,
    BLACK
  }

  /** Lines drawn across what is inside. */
  public enum Hatch {
    NONE("", 0, 0),
    WIDE("fixed", 8, 45),
    STEEP("laid", 5, 135),
    FINE("off", 3.5, 45);

    private final String word;
    private final double apart;
    private final int degrees;

    Hatch(String word, double apart, int degrees) {
      this.word = word;
      this.apart = apart;
      this.degrees = degrees;
    }

    String word() {
      return word;
    }

    /** From line to line. */
    public double apart() {
      return apart;
    }

    /** How far the lines are turned clockwise from upright. */
    public int degrees() {
      return degrees;
    }
  }

  /**
   * Kinds of lines. Wide and narrow two to one, dashes by ISO 128-2 in widths of the line,
   * shortened.
   */
  public enum Line {
    OUTLINE(2, Fill.WHITE, Hatch.NONE),
    CUTTER(2, Fill.NONE, Hatch.NONE),
    FIXED(2, Fill.WHITE, Hatch.WIDE),
    LAID_IN(2, Fill.WHITE, Hatch.STEEP),
    HIDDEN(1, Fill.NONE, Hatch.NONE, 8, 3),
    REMOVED(1, Fill.WHITE, Hatch.FINE, 14, 3, 1, 3, 1, 3),
    FORMER(1, Fill.NONE, Hatch.NONE, 14, 3, 1, 3, 1, 3),
    EDGE(2, Fill.NONE, Hatch.NONE),
    CENTRE(1, Fill.NONE, Hatch.NONE, 10, 3, 1, 3),
    WAY(1, Fill.NONE, Hatch.NONE),
    THIN(1, Fill.NONE, Hatch.NONE),
    ZERO(2, Fill.WHITE, Hatch.NONE),
    BALLOON(1, Fill.WHITE, Hatch.NONE),
    SOLID(0, Fill.BLACK, Hatch.NONE);

    private final double width;
    private final Fill fill;
    private final Hatch hatch;

    @SuppressWarnings("ImmutableEnumChecker") // it is an immutable list
    private final List<Double> dashes;

    Line(double width, Fill fill, Hatch hatch, double... dashes) {
      this.width = width;
      this.fill = fill;
      this.hatch = hatch;
      this.dashes = Arrays.stream(dashes).boxed().toList();
    }

    /** How wide it is; 0 for none. */
    public double width() {
      return width;
    }

    public Fill fill() {
      return fill;
    }

    public Hatch hatch() {
      return hatch;
    }

    /** Lengths of dashes and gaps in turn; empty for a line without gaps. */
    public List<Double> dashes() {
      return dashes;
    }
  }

  /** Kinds of words. */
  public enum Lettering {
    LEGEND(15, Weight.NORMAL, Ground.NONE),
    HEAD(20, Weight.BOLD, Ground.NONE),
    NAME(14, Weight.NORMAL, Ground.NONE),
    FACE(15, Weight.BOLD, Ground.WHITE),
    SIZE(14, Weight.NORMAL, Ground.WHITE),
    NUMBER(14, Weight.BOLD, Ground.NONE);

    private final double size;
    private final Weight weight;
    private final Ground ground;

    Lettering(double size, Weight weight, Ground ground) {
      this.size = size;
      this.weight = weight;
      this.ground = ground;
    }

    /** The height of the type. */
    public double size() {
      return size;
    }

    public Weight weight() {
      return weight;
    }

    public Ground ground() {
      return ground;
    }
  }

  /** How heavy letters are. */
  public enum Weight {
    NORMAL,
    BOLD
  }

  /** What is behind letters. */
  public enum Ground {
    NONE,
    /** White about the letters, so that lines behind them do not disturb. */
    WHITE
  }
}
