package org.handwheel.model;

import java.util.List;
import java.util.Map;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.jspecify.annotations.Nullable;

/**
 * The part as the drawing has it.
 *
 * @param datums datum letters and their faces
 * @param general what holds for sizes without a tolerance, such as ISO 2768 m
 */
public record Part(
    Origin origin,
    @Nullable Located<String> material,
    Map<PartDimension, DimensionSpec> dimensions,
    Map<String, Face> datums,
    List<Callout> callouts,
    List<Located<Face>> surfaces,
    @Nullable GeneralTolerance general,
    @Nullable Located<Length> brokenEdges,
    List<HoleSpec> holes,
    List<PatternSpec> patterns,
    List<FeatureSpec> features) {
  public Part {
    dimensions = Map.copyOf(dimensions);
    datums = Map.copyOf(datums);
    callouts = List.copyOf(callouts);
    surfaces = List.copyOf(surfaces);
    holes = List.copyOf(holes);
    patterns = List.copyOf(patterns);
    features = List.copyOf(features);
  }

  public @Nullable DimensionSpec dimension(PartDimension dimension) {
    return dimensions.get(dimension);
  }

  /**
   * A size on the drawing.
   *
   * @param nominal the size as written
   * @param limits what it may be, if a tolerance is given with it
   * @param notation how it is written, if as one number in the file's own unit
   */
  public record DimensionSpec(
      PartDimension dimension,
      Length nominal,
      @Nullable LengthRange limits,
      @Nullable Notation notation,
      Origin origin) {}

  /** How a size is written, as far as a title block cares. */
  public sealed interface Notation {
    /** {@code 12} has no places, {@code 12.50} two. */
    record Decimal(int places) implements Notation {}

    /** {@code 5/16}, {@code 1-3/8}. */
    record Fraction() implements Notation {}
  }

  /** What holds for sizes without a tolerance of their own. */
  public sealed interface GeneralTolerance {
    Origin origin();

    /** {@code tolerance ISO 2768 m}. */
    record Standard(String standard, int number, String grade, Origin origin)
        implements GeneralTolerance {}

    /**
     * A title block: {@code tolerance 0.0 +-0.2, 0.00 +-0.05}.
     *
     * @param deviations plus or minus, by how a size is written
     */
    record ByPlaces(Map<Notation, Length> deviations, Origin origin) implements GeneralTolerance {
      public ByPlaces {
        deviations = Map.copyOf(deviations);
      }
    }
  }

  /** A demand on how faces lie, in the sense of ISO 1101: the width of a zone over the face. */
  public sealed interface Callout {
    Length zone();

    Origin origin();

    /** {@code square back to top 0.03}. */
    record Square(Face face, Face reference, Length zone, Origin origin) implements Callout {}

    /** {@code parallel bottom to top 0.03}. */
    record Parallel(Face face, Face reference, Length zone, Origin origin) implements Callout {}

    /** {@code flat top 0.02}. */
    record Flat(Face face, Length zone, Origin origin) implements Callout {}

    /** {@code square all 0.05}: every two faces that meet, and every two that face each other. */
    record SquareAll(Length zone, Origin origin) implements Callout {}
  }

  /**
   * A position on a face: two coordinates from the named corner, or from the centre.
   *
   * @param firstNotation how the first is written, if as one number in the file's own unit
   * @param secondNotation the same of the second
   */
  public record Position(
      Length first,
      Length second,
      List<Face> corner,
      @Nullable Notation firstNotation,
      @Nullable Notation secondNotation,
      Origin origin) {
    public Position {
      corner = List.copyOf(corner);
    }

    public boolean isFromCentre() {
      return corner.isEmpty();
    }
  }

  /**
   * A hole.
   *
   * @param dia the bore, or nothing for a thread
   * @param limits the bore's limits if a tolerance is written
   * @param notation how the bore is written, if as one number in the file's own unit
   * @param fit ISO 286 code such as H7, as written
   * @param thread designation such as M6, as written
   * @param position where, or nothing if a pattern places it
   * @param depth the full-diameter depth; nothing if it goes through
   * @param threadDepth depth of full thread
   * @param drillDepth depth of the tapping drill
   */
  public record HoleSpec(
      String name,
      Face face,
      @Nullable Length dia,
      @Nullable LengthRange limits,
      @Nullable Notation notation,
      @Nullable String fit,
      @Nullable String thread,
      @Nullable Position position,
      boolean through,
      @Nullable Length depth,
      @Nullable Length threadDepth,
      @Nullable Located<Length> drillDepth,
      @Nullable Length spotface,
      @Nullable Length counterboreDia,
      @Nullable Length counterboreDepth,
      @Nullable Length countersink,
      Origin origin) {}

  /** How a pattern repeats its hole. */
  public sealed interface Shape {
    /** Equally spaced on a circle, counter-clockwise from +x seen on the face. */
    record Circle(Length dia, int count, double firstDegrees, Position about) implements Shape {}

    /** Equally spaced in a line. */
    record Row(int count, Position start, Length stepFirst, Length stepSecond) implements Shape {}

    /** Rows and columns. */
    record Grid(int columns, int rows, Position start, Length stepFirst, Length stepSecond)
        implements Shape {}

    /** One place, to be mirrored. */
    record Single(Position start) implements Shape {}
  }

  /** What a pattern's places are mirrored about; those that fall on each other count once. */
  public sealed interface Mirror {
    /** The part's middle between the two faces across a dimension. */
    record Centre(PartDimension across) implements Mirror {}

    /** A line through two places. */
    record Line(Position from, Position to) implements Mirror {}
  }

  /**
   * A pattern of a hole; it places the hole.
   *
   * @param mirrors each doubles the places before it
   */
  public record PatternSpec(
      String name, String hole, @Nullable Shape shape, List<Mirror> mirrors, Origin origin) {
    public PatternSpec {
      mirrors = List.copyOf(mirrors);
    }
  }

  /** What kind of feature. */
  public enum FeatureKind {
    SLOT,
    POCKET,
    OUTLINE,
    WINDOW,
    CORNER,
    CHAMFER,
    PROFILE,
    STEP
  }

  /** The form of an outline. */
  public enum OutlineForm {
    ELLIPSE,
    OBROUND,
    CIRCLE,
    /** Of straight lines and arcs. */
    FREE
  }

  /**
   * A place that a free outline goes round, and the side from there to the next one.
   *
   * @param first along the first coordinate of the face, from the outline's own zero
   * @param second along the second
   * @param next the side that follows; straight if nothing
   */
  public record Vertex(Length first, Length second, Turn turn, @Nullable Bow next, Origin origin) {}

  /** How a free outline turns at a place. */
  public sealed interface Turn {
    /** In a sharp corner. */
    record Sharp() implements Turn {}

    /** Not at all: its two sides meet there and are tangent. */
    record Tangent() implements Turn {}

    /** In a corner rounded by a radius that is tangent to both sides. */
    record Blend(Length radius) implements Turn {}

    /** Round a circle about the place, with both sides tangent to it. */
    record Boss(Length radius) implements Turn {}
  }

  /** A side that is an arc. */
  public record Bow(Length radius, Bulge bulge, Origin origin) {}

  /** Which way an arc goes. */
  public enum Bulge {
    /** It stands out. */
    ARC,
    HOLLOW
  }

  /**
   * A slot, pocket, outline, corner or chamfer of the drawing.
   *
   * @param widthLimits what its width may be if a tolerance is written with it
   * @param widthNotation how the width is written, if as one number in the file's own unit
   * @param lengthLimits what its length may be if a tolerance is written with it
   * @param lengthNotation how the length is written, if as one number in the file's own unit
   * @param through whether it goes through the part; an outline always does
   * @param formFirst an outline's size along the first coordinate of its face, over all
   * @param formSecond its size along the second coordinate, over all
   * @param diaLimits what a circle's diameter may be if a tolerance is written with it
   * @param tolerance how far an outline may be off, either way, if the drawing says so itself
   * @param vertices what a free outline goes round, in order; empty for any other form
   */
  public record FeatureSpec(
      FeatureKind featureKind,
      String name,
      @Nullable Face face,
      @Nullable Position position,
      @Nullable Length width,
      @Nullable LengthRange widthLimits,
      @Nullable Notation widthNotation,
      @Nullable Length length,
      @Nullable LengthRange lengthLimits,
      @Nullable Notation lengthNotation,
      @Nullable Length depth,
      boolean through,
      @Nullable Length radius,
      @Nullable OutlineForm form,
      @Nullable Length formFirst,
      @Nullable Length formSecond,
      @Nullable LengthRange diaLimits,
      @Nullable Length tolerance,
      List<Vertex> vertices,
      Origin origin) {
    public FeatureSpec {
      vertices = List.copyOf(vertices);
    }

    /**
     * How far the form may be off, either way: as written, or a quarter of what a circle's diameter
     * may vary.
     */
    public @Nullable Length formTolerance() {
      if (tolerance != null) {
        return tolerance;
      }
      return diaLimits == null ? null : diaLimits.width().half().half();
    }
  }
}
