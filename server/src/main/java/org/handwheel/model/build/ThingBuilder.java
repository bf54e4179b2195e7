package org.handwheel.model.build;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Owned;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Dimension;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;
import org.handwheel.units.Quantity;
import org.handwheel.units.Slope;
import org.jspecify.annotations.Nullable;

/** Builds an owned thing from its properties; the property names of each kind stand here. */
final class ThingBuilder {
  private static final Slope DEFAULT_JAW_SQUARE = Slope.of(Length.mm("0.02"), Length.mm("100"));
  private static final Slope DEFAULT_SLACK = Slope.of(Length.mm("0.005"), Length.mm("1"));
  private static final BigFraction MOST_FEED = BigFraction.of(100);
  private static final List<String> PIECE_SIZES =
      List.of("dia", "thickness", "width", "height", "length", "pitch", "point");

  private final String name;
  private final Origin origin;
  private final Properties properties;

  ThingBuilder(String name, Origin origin, Properties properties) {
    this.name = name;
    this.origin = origin;
    this.properties = properties;
  }

  /** The thing, or nothing if its properties are not sound (which has then been reported). */
  @Nullable Owned build(OwnKind kind) {
    Owned thing =
        switch (kind) {
          case MACHINE -> machine();
          case VISE -> vise();
          case PARALLELS -> parallels();
          case CUTTER -> cutter();
          case INSTRUMENT -> instrument();
          case FINDER ->
              new Owned.Finder(name, origin, properties.requiredLength("dia", "tip dia"));
          case MATERIAL -> material();
          default -> piece(kind);
        };
    // A material is known by its name even if a property of it is wrong.
    return properties.areSound() || kind == OwnKind.MATERIAL ? thing : null;
  }

  private Owned machine() {
    Map<Axis, Owned.Screw> screws = new EnumMap<>(Axis.class);
    for (Axis axis : Axis.values()) {
      Owned.Screw screw = screw(axis);
      if (screw != null) {
        screws.put(axis, screw);
      }
    }
    List<Double> speeds =
        properties.quantities("speeds", Dimension.SPINDLE_SPEED).stream()
            .map(speed -> speed.value().doubleValue())
            .sorted()
            .toList();
    Quantity top = properties.quantity("top-speed", Dimension.SPINDLE_SPEED);
    double topSpeed =
        top != null
            ? top.value().doubleValue()
            : speeds.isEmpty() ? 0 : speeds.get(speeds.size() - 1);
    Quantity power = properties.quantity("power", Dimension.POWER);
    Owned.Column column = properties.word("column", Owned.Column.FIXED);
    return new Owned.Machine(
        name,
        origin,
        screws,
        column,
        properties.word("z-moves", Owned.ZDrive.QUILL),
        speeds,
        topSpeed,
        power == null ? 0 : power.value().doubleValue(),
        properties.length("daylight"),
        properties.length("chuck"));
  }

  private Owned.@Nullable Screw screw(Axis axis) {
    String suffix = "-" + axis.word();
    Length travel = properties.length("travel" + suffix);
    Length backlash = properties.length("backlash" + suffix, Length.ZERO);
    Direction handle = properties.direction("handle" + suffix);
    Direction clockwise = properties.direction("clockwise" + suffix);
    BigFraction readable = properties.number("readable" + suffix);
    properties.expect("lead" + suffix);
    properties.expect("divisions" + suffix);
    if (!properties.has("lead" + suffix) && !properties.has("divisions" + suffix)) {
      return null;
    }
    Length lead =
        properties.requiredLength("lead" + suffix, "travel of one turn on " + axis.word());
    BigFraction divisions = properties.number("divisions" + suffix);
    if (divisions == null || divisions.signum() <= 0) {
      properties.requireNumber("divisions" + suffix, "divisions on the " + axis.word() + " dial");
      return null;
    }
    return new Owned.Screw(
        axis,
        lead,
        divisions,
        backlash,
        travel,
        handle,
        clockwise,
        readable == null ? BigFraction.ONE : readable);
  }

  private Owned vise() {
    Slope jawSquare = properties.slope("jaw-square");
    Slope slack = properties.slope("slack");
    Direction fixedJaw = properties.direction("fixed-jaw");
    return new Owned.Vise(
        name,
        origin,
        properties.requiredLength("jaw-width", "jaw width"),
        properties.requiredLength("jaw-depth", "jaw depth, from the bed to the top of the jaws"),
        properties.requiredLength("opening", "widest opening"),
        jawSquare == null ? DEFAULT_JAW_SQUARE : jawSquare,
        fixedJaw == null ? Direction.OPERATOR_BACK : fixedJaw,
        properties.length("lift", Length.mm("0.05")),
        slack == null ? DEFAULT_SLACK : slack,
        properties.slope("trued"),
        properties.length("bed-height"));
  }

  private Owned parallels() {
    return new Owned.Parallels(
        name,
        origin,
        properties.requiredLength("thickness", "thickness"),
        properties.requiredLength("height", "height"),
        properties.requiredLength("length", "length"),
        properties.count("count", 2),
        properties.length("mismatch", Length.mm("0.005")));
  }

  private Owned cutter() {
    Owned.CutterKind kind = properties.word("kind", Owned.CutterKind.END_MILL);
    Length dia = properties.requiredLength("dia", "diameter");
    return new Owned.Cutter(
        name,
        origin,
        kind,
        dia,
        properties.count("teeth", 2),
        properties.requiredLength("flute", "flute length"),
        properties.length("reach"),
        properties.length("corner", Length.ZERO),
        properties.word("hand", Owned.Hand.RIGHT),
        properties.word("made-of", Owned.ToolMaterial.HSS),
        properties.length("shank"),
        properties.length("holder"),
        middle());
  }

  /**
   * What is said of the cutter's middle; the word that stands in where nothing is does not count.
   */
  private Owned.@Nullable Middle middle() {
    Owned.Middle said = properties.word("centre-cutting", Owned.Middle.NO);
    return properties.has("centre-cutting") ? said : null;
  }

  private Owned instrument() {
    Owned.InstrumentKind kind = properties.word("kind", Owned.InstrumentKind.CALIPER);
    List<Length> range = properties.pair("range");
    Length resolution = properties.length("resolution", Length.mm("0.01"));
    return new Owned.Instrument(
        name,
        origin,
        kind,
        range == null ? null : new LengthRange(range.get(0), range.get(1)),
        resolution,
        properties.length("accuracy", resolution));
  }

  private Owned material() {
    Quantity feed = properties.positive("feed-per-tooth", Dimension.FEED_PER_TOOTH);
    Quantity force = properties.positive("force", Dimension.NUMBER);
    Quantity exponent = properties.positive("force-exponent", Dimension.NUMBER);
    Quantity density = properties.positive("density", Dimension.NUMBER);
    if (exponent != null && exponent.value().compareTo(BigFraction.ONE) >= 0) {
      properties.refuse("force-exponent", "lies between 0 and 1");
    }
    if (feed != null && feed.value().compareTo(MOST_FEED) > 0) {
      properties.refuse("feed-per-tooth", "is at most 100 mm (3.937 in)");
      feed = null;
    }
    return new Owned.Material(
        name,
        origin,
        properties.nameOf("like", "a material"),
        surfaceSpeeds("speed-hss"),
        surfaceSpeeds("speed-carbide"),
        surfaceSpeeds("speed-drill"),
        feed == null ? null : Length.of(feed.value(), LengthUnit.MM),
        number(force),
        number(exponent),
        number(density));
  }

  private static @Nullable Double number(@Nullable Quantity quantity) {
    return quantity == null ? null : quantity.value().doubleValue();
  }

  /** One cutting speed, or two: from, to. */
  private Owned.@Nullable SurfaceSpeeds surfaceSpeeds(String property) {
    List<Double> speeds =
        properties.quantities(property, Dimension.SURFACE_SPEED).stream()
            .map(speed -> speed.value().doubleValue())
            .toList();
    if (speeds.isEmpty()) {
      return null;
    }
    double low = speeds.get(0);
    double high = speeds.get(speeds.size() - 1);
    if (speeds.size() > 2 || low <= 0 || high < low) {
      properties.refuse(property, "takes one speed, or two: from, to");
      return null;
    }
    return new Owned.SurfaceSpeeds(low, high);
  }

  /** The angle of a drill's point; nothing for other things. */
  private @Nullable Double pointDegrees(OwnKind kind) {
    if (kind != OwnKind.DRILL && kind != OwnKind.DRILLS) {
      return null;
    }
    Double degrees = number(properties.positive("angle", Dimension.ANGLE));
    if (degrees != null && degrees >= 180) {
      properties.refuse("angle", "lies between 0 and 180 degrees");
      return null;
    }
    return degrees;
  }

  private Owned piece(OwnKind kind) {
    Map<String, Length> sizes = new LinkedHashMap<>();
    for (String size : PIECE_SIZES) {
      Length length = properties.length(size);
      if (length != null) {
        sizes.put(size, length);
      }
    }
    if (kind == OwnKind.PACKING && !sizes.containsKey("thickness")) {
      properties.requiredLength("thickness", "thickness");
    }
    if (kind == OwnKind.DRILLS && !sizes.containsKey("dia")) {
      properties.requiredLength("dia", "dia, that of the largest");
    }
    if (kind == OwnKind.CLAMP && !sizes.containsKey("width")) {
      properties.requiredLength("width", "width");
    }
    Owned.DrillKind drillKind =
        kind == OwnKind.DRILL ? properties.word("kind", Owned.DrillKind.TWIST_DRILL) : null;
    return new Owned.Piece(kind, name, origin, sizes, pointDegrees(kind), drillKind);
  }
}
