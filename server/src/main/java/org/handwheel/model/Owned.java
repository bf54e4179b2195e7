package org.handwheel.model;

import java.util.List;
import java.util.Map;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.Slope;
import org.jspecify.annotations.Nullable;

/** A thing of the shop, as its {@code own} section describes it. */
public sealed interface Owned {
  OwnKind kind();

  String name();

  /** Where its name is declared. */
  Origin origin();

  /**
   * A milling machine.
   *
   * @param speeds the spindle's real steps in turns a minute, rising; empty if it is stepless
   * @param topSpeed the highest speed, 0 if not said
   * @param watts the motor's power, 0 if not said
   * @param daylight the most there is between the spindle's nose and the table, if said
   * @param chuck how far the drill chuck stands below the nose, if said
   */
  record Machine(
      String name,
      Origin origin,
      Map<Axis, Screw> screws,
      Column column,
      ZDrive zDrive,
      List<Double> speeds,
      double topSpeed,
      double watts,
      @Nullable Length daylight,
      @Nullable Length chuck)
      implements Owned {
    public Machine {
      screws = Map.copyOf(screws);
      speeds = List.copyOf(speeds);
    }

    @Override
    public OwnKind kind() {
      return OwnKind.MACHINE;
    }

    /** The screw and dial of an axis, if the shop describes it. */
    public @Nullable Screw screw(Axis axis) {
      return screws.get(axis);
    }
  }

  /** What the Z handle moves: the cutter, or the table the other way. */
  enum ZDrive {
    QUILL,
    HEAD,
    KNEE
  }

  /** How the head is carried; on a round column, moving it loses the place in X and Y. */
  enum Column {
    ROUND,
    DOVETAIL,
    FIXED
  }

  /**
   * The screw and the dial of one axis.
   *
   * @param lead travel for one turn of the handle
   * @param divisions marks on the collar, not always a whole number (62.5)
   * @param backlash lost motion when the direction is turned round
   * @param handle where the handle is, if said
   * @param clockwise where the table (on Z: what the handle moves) goes when that handle turns
   *     clockwise, if said; there is no default for handedness
   * @param readable the part of a division that can be set by eye, a whole one unless the shop says
   *     otherwise
   */
  record Screw(
      Axis axis,
      Length lead,
      BigFraction divisions,
      Length backlash,
      @Nullable Length travel,
      @Nullable Direction handle,
      @Nullable Direction clockwise,
      BigFraction readable) {
    /** The travel of one division, exact to a picometre. */
    public Length division() {
      return lead.times(divisions.reciprocal());
    }

    /** How far a careful reading may be off: the readable part of a division, halved. */
    public Length readingError() {
      return division().times(readable).half();
    }
  }

  /**
   * A vise.
   *
   * @param jawDepth from the bed to the top of the jaws
   * @param opening the widest it opens
   * @param jawSquare how far the fixed jaw may be from square to the bed
   * @param fixedJaw on which side the fixed jaw is
   * @param lift how far the moving jaw may lift untapped work
   * @param slack how far the moving jaw may swivel without harm
   * @param trued how true it is known to stand to the table, if it is keyed or was set for good
   * @param bedHeight how high its bed is above the table, if said
   */
  record Vise(
      String name,
      Origin origin,
      Length jawWidth,
      Length jawDepth,
      Length opening,
      Slope jawSquare,
      Direction fixedJaw,
      Length lift,
      Slope slack,
      @Nullable Slope trued,
      @Nullable Length bedHeight)
      implements Owned {
    @Override
    public OwnKind kind() {
      return OwnKind.VISE;
    }
  }

  /**
   * A set of parallels.
   *
   * @param mismatch how far their heights may differ
   */
  record Parallels(
      String name,
      Origin origin,
      Length thickness,
      Length height,
      Length length,
      int count,
      Length mismatch)
      implements Owned {
    @Override
    public OwnKind kind() {
      return OwnKind.PARALLELS;
    }
  }

  /**
   * A milling cutter.
   *
   * @param flute length of the cutting edges along the axis
   * @param reach how far below the holder it can go, if said
   * @param corner corner radius or chamfer, zero for sharp corners
   * @param shank diameter of its shank, if said
   * @param holder diameter of what holds it at the end it stands out of, if said
   * @param middle whether it is said to cut at its middle or not; nothing if its kind says so
   */
  record Cutter(
      String name,
      Origin origin,
      CutterKind cutterKind,
      Length dia,
      int teeth,
      Length flute,
      @Nullable Length reach,
      Length corner,
      Hand hand,
      ToolMaterial madeOf,
      @Nullable Length shank,
      @Nullable Length holder,
      @Nullable Middle middle)
      implements Owned {
    @Override
    public OwnKind kind() {
      return OwnKind.CUTTER;
    }

    /** Whether it can go straight down into the metal: a slot drill does, if nothing is said. */
    public boolean cutsAtItsMiddle() {
      return middle == null ? cutterKind == CutterKind.SLOT_DRILL : middle == Middle.YES;
    }

    public Length radius() {
      return dia.half();
    }
  }

  /** What kind of cutter it is. */
  enum CutterKind {
    END_MILL,
    SLOT_DRILL,
    FACE_MILL,
    FLY_CUTTER,
    SHELL_MILL,
    CHAMFER_MILL
  }

  /** Whether a cutter's teeth reach the middle of its end. */
  enum Middle {
    YES,
    NO
  }

  /** Right-hand cutters cut turning clockwise seen from above. */
  enum Hand {
    RIGHT,
    LEFT
  }

  /** What the cutting edges are made of. */
  enum ToolMaterial {
    HSS,
    CARBIDE
  }

  /**
   * A measuring instrument.
   *
   * @param range what it can measure, if limited
   * @param resolution the least difference it shows
   * @param accuracy how far a careful reading may be off
   */
  record Instrument(
      String name,
      Origin origin,
      InstrumentKind instrumentKind,
      @Nullable LengthRange range,
      Length resolution,
      Length accuracy)
      implements Owned {
    @Override
    public OwnKind kind() {
      return OwnKind.INSTRUMENT;
    }
  }

  /** What an instrument is for. */
  enum InstrumentKind {
    CALIPER,
    MICROMETER,
    DEPTH_MICROMETER,
    HEIGHT_GAUGE,
    RULE,
    INDICATOR,
    SQUARE,
    PLUG_GAUGE,
    FEELER;

    /** Whether it gives a size, not just a deviation or a go and a no. */
    public boolean measuresSizes() {
      return switch (this) {
        case CALIPER, MICROMETER, DEPTH_MICROMETER, HEIGHT_GAUGE, RULE -> true;
        case INDICATOR, SQUARE, PLUG_GAUGE, FEELER -> false;
      };
    }
  }

  /** An edge finder with the diameter of its tip. */
  record Finder(String name, Origin origin, Length dia) implements Owned {
    @Override
    public OwnKind kind() {
      return OwnKind.FINDER;
    }
  }

  /**
   * A material described by the shop; what is not said comes from the material it is like, or from
   * the one of the tables that has its name.
   *
   * @param like the material of the tables it is like, if said
   * @param speedHss usual cutting speeds for high-speed steel, if said
   * @param speedCarbide usual cutting speeds for carbide, if said
   * @param speedDrill usual cutting speeds for drills of high-speed steel, if said
   * @param feedPerTooth usual feed per tooth for any cutter, if said
   * @param force specific cutting force kc1.1 in N/mm2, for a chip 1 mm thick, if said
   * @param forceExponent the exponent mc by which the force falls with the chip's thickness
   * @param density kilograms per cubic metre, if said
   */
  record Material(
      String name,
      Origin origin,
      @Nullable Located<String> like,
      @Nullable SurfaceSpeeds speedHss,
      @Nullable SurfaceSpeeds speedCarbide,
      @Nullable SurfaceSpeeds speedDrill,
      @Nullable Length feedPerTooth,
      @Nullable Double force,
      @Nullable Double forceExponent,
      @Nullable Double density)
      implements Owned {
    @Override
    public OwnKind kind() {
      return OwnKind.MATERIAL;
    }
  }

  /** Cutting speeds in metres a minute, from cautious to brisk. */
  record SurfaceSpeeds(double low, double high) {}

  /** What a drill is made for. */
  enum DrillKind {
    /** Makes holes. */
    TWIST_DRILL,
    /** Short and stiff: starts holes where they are to be, and goes no deeper. */
    SPOTTING_DRILL,
    /** A pilot and a cone: starts holes, and makes centres. */
    CENTRE_DRILL
  }

  /**
   * Anything of one size: packing, spacers, bars, clamps, drills, taps, reamers and the rest.
   *
   * @param pointDegrees the included angle of a drill's point, if said
   * @param drillKind what a drill is made for; nothing for other things
   */
  record Piece(
      OwnKind kind,
      String name,
      Origin origin,
      Map<String, Length> sizes,
      @Nullable Double pointDegrees,
      @Nullable DrillKind drillKind)
      implements Owned {
    public Piece {
      sizes = Map.copyOf(sizes);
    }

    /** Whether it is a single drill that makes holes, not one that only starts them. */
    public boolean isTwistDrill() {
      return kind == OwnKind.DRILL && drillKind == DrillKind.TWIST_DRILL;
    }

    /** A size by its property's name, such as {@code thickness}. */
    public @Nullable Length size(String property) {
      return sizes.get(property);
    }
  }
}
