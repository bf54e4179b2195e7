package org.handwheel.model;

import java.util.List;
import java.util.Set;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.Quantity;
import org.handwheel.units.Slope;
import org.jspecify.annotations.Nullable;

/** One line of a setup, in the order it is done. */
public sealed interface Step {
  Origin origin();

  /** Tapping the work down and proving that it sits. */
  record Seat(Origin origin, boolean tapped, boolean bothTight, @Nullable Upright upright)
      implements Step {}

  /** Work set upright by a square against a face. */
  record Upright(Face face, Owned.Instrument square) {}

  /** Setting the vise true to the table. */
  record TrueVise(
      Origin origin, Owned.Vise vise, Owned.Instrument instrument, @Nullable Slope error)
      implements Step {}

  /** Setting the head square to the table. */
  record Tram(Origin origin, Slope error) implements Step {}

  /**
   * Putting a cutter in the spindle.
   *
   * @param rpm stated spindle speed, or nothing
   * @param feedPerTooth stated feed, or nothing
   */
  record UseCutter(
      Origin origin,
      Owned.Cutter cutter,
      @Nullable Located<Double> rpm,
      @Nullable Located<Length> feedPerTooth)
      implements Step {}

  /**
   * Bringing the cutter to touch a face.
   *
   * @param paper thickness of the feeler between, zero if none
   * @param zeroed the axes whose dials are set to zero there
   */
  record Touch(Origin origin, Face face, Length paper, Set<Axis> zeroed) implements Step {
    public Touch {
      zeroed = Set.copyOf(zeroed);
    }
  }

  /**
   * Finding an edge or a hole with a finder or an indicator.
   *
   * @param face the edge's face, or nothing for the centre of a hole
   * @param from the side it is approached from
   * @param finder the edge finder, if one is used
   * @param place where the spindle's axis stands when the dials are set to zero
   */
  record Find(
      Origin origin,
      @Nullable Face face,
      @Nullable String centreOf,
      @Nullable Located<Direction> from,
      Owned.@Nullable Finder finder,
      Set<Axis> zeroed,
      ZeroPlace place)
      implements Step {
    public Find {
      zeroed = Set.copyOf(zeroed);
    }
  }

  /** Where the spindle's axis stands when a dial is set to zero after a search. */
  enum ZeroPlace {
    /** Over the edge or the centre that was found. */
    FOUND,
    /** Where the finder touches: half its tip before the edge. */
    TOUCH
  }

  /** Setting dials to zero where the machine stands. */
  record Zero(Origin origin, Set<Axis> axes) implements Step {
    public Zero {
      axes = Set.copyOf(axes);
    }
  }

  /** Setting an axis to a depth below a face: {@code set z 21 below top}. */
  record SetDepth(Origin origin, Axis axis, Length depth, Face face) implements Step {}

  record Lock(Origin origin, Set<Axis> axes) implements Step {
    public Lock {
      axes = Set.copyOf(axes);
    }
  }

  record Unlock(Origin origin, Set<Axis> axes) implements Step {
    public Unlock {
      axes = Set.copyOf(axes);
    }
  }

  /** Moving the head on its column, to make room for a longer tool. */
  record MoveHead(Origin origin, Direction direction, Length distance) implements Step {}

  /**
   * A cut over a face.
   *
   * @param faceOrigin the word that names the face
   * @param purpose what it is for and how deep
   * @param direction stated direction, or nothing
   * @param travel stated travel of the cutter, or nothing
   * @param offset how far the cutter's axis is off the middle, toward a side
   * @param stepOver distance between neighbouring passes where one does not cover the face
   * @param springPasses how often the last pass is repeated without a new depth
   */
  record Cut(
      Origin origin,
      Face face,
      Origin faceOrigin,
      Purpose purpose,
      @Nullable Located<CutDirection> direction,
      @Nullable Located<Travel> travel,
      @Nullable Located<Offset> offset,
      @Nullable Located<Length> stepOver,
      @Nullable Located<Double> rpm,
      @Nullable Located<Length> feedPerTooth,
      int springPasses)
      implements Step {}

  /** What a cut is for. */
  sealed interface Purpose {
    /**
     * Skimming until the marks are gone.
     *
     * @param at depth of the first and each further skim
     * @param atMost the most that may come off
     */
    record Clean(Located<Length> at, Located<Length> atMost) implements Purpose {}

    /** Roughing to a size. */
    record Rough(Target target, @Nullable Located<Length> leaving, @Nullable Passes passes)
        implements Purpose {}

    /** Finishing to a size. */
    record Finish(Target target, @Nullable Passes passes) implements Purpose {}
  }

  /**
   * The size a cut goes to.
   *
   * @param dimension the drawing's size if it is named alone ({@code to height}): the cut then aims
   *     at the middle of its tolerance
   * @param size the size if it is written out
   */
  record Target(@Nullable PartDimension dimension, @Nullable Length size, Origin origin) {}

  /** How the depth is divided: by a depth, by a count and a depth, or in one pass. */
  sealed interface Passes {
    Origin origin();

    record EachAtMost(Length depth, Origin origin) implements Passes {}

    record Counted(int count, Length depth, Origin origin) implements Passes {}

    record Single(Origin origin) implements Passes {}
  }

  /** The way the teeth meet the work. */
  enum CutDirection {
    CONVENTIONAL,
    CLIMB
  }

  /** The way the cutter travels, always the cutter relative to the work. */
  record Travel(Side from, Side to) {}

  /** The cutter's axis off the middle of the face. */
  record Offset(Length distance, Side toward) {}

  /**
   * Spotting, drilling, reaming and the rest, on holes or patterns.
   *
   * @param sizes one after the other, each with a tool of its own; empty where the drawing says it
   */
  record HoleCut(
      Origin origin, HoleVerb verb, List<Located<String>> holes, List<HoleSize> sizes, HoleWay way)
      implements Step {
    public HoleCut {
      holes = List.copyOf(holes);
      sizes = List.copyOf(sizes);
    }
  }

  /**
   * A size of a drill or another tool for holes.
   *
   * @param text as written: {@code 8.5}, {@code no 7}
   * @param length the diameter if it is written as a length; a number or letter means a drill of
   *     the tables
   */
  record HoleSize(String text, @Nullable Length length, Origin origin) {}

  /**
   * How a hole is cut, as far as its line says.
   *
   * @param tool the tool named with {@code with}: a cutter, drill, reamer or tap
   * @param byHand whether it is turned by hand
   * @param guided whether the spindle guides it
   * @param depth how deep at full diameter
   * @param peck how far it goes in at once
   * @param feed by the turn, or as a rate
   */
  record HoleWay(
      @Nullable Located<Owned> tool,
      boolean byHand,
      boolean guided,
      @Nullable Located<Length> depth,
      @Nullable Located<Length> peck,
      @Nullable Located<Double> rpm,
      @Nullable Located<Quantity> feed) {}

  /** The operations on holes. */
  enum HoleVerb {
    SPOT,
    DRILL,
    REAM,
    TAP,
    BORE,
    COUNTERBORE,
    COUNTERSINK
  }

  /** Cutting a slot, pocket, outline or chamfer of the part. */
  record FeatureCut(Origin origin, Part.FeatureKind verb, Located<String> feature, FeatureWay way)
      implements Step {}

  /**
   * How a feature is cut, as far as its line says.
   *
   * @param cutter the cutter named with {@code with}; otherwise the one in the spindle cuts
   * @param leaving what stays on for the next cut, zero or more
   * @param pass how deep each level is at most
   * @param cusp how much the ridges between steps may stand out at most
   * @param rpm stated spindle speed, or nothing
   * @param feedPerTooth stated feed, or nothing
   */
  record FeatureWay(
      Owned.@Nullable Cutter cutter,
      @Nullable Located<Length> leaving,
      @Nullable Located<Length> pass,
      @Nullable Located<Length> cusp,
      @Nullable Located<CutDirection> direction,
      @Nullable Located<Double> rpm,
      @Nullable Located<Length> feedPerTooth) {}

  /**
   * Taking burrs off.
   *
   * @param faces the faces whose edges are done; all six for {@code all edges}
   */
  record Deburr(Origin origin, Set<Face> faces) implements Step {
    public Deburr {
      faces = Set.copyOf(faces);
    }
  }

  /** Wiping chips off faces, jaws or parallels. */
  record Wipe(Origin origin) implements Step {}

  record Measure(Origin origin, PartDimension dimension, Owned.Instrument instrument)
      implements Step {}

  record Note(Origin origin, String text) implements Step {}
}
