package org.handwheel.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.handwheel.units.Dimension;
import org.handwheel.units.LengthText;

/** The properties of each kind of owned thing, for those who write them. */
public final class OwnProperties {
  private OwnProperties() {}

  /**
   * A property.
   *
   * @param word as it is written before the colon
   * @param usual a usual value, in millimetres where it is a bare length, or the one that holds
   *     where the property is missing
   * @param need whether it must be there
   * @param about what it means
   * @param choices the words it may be; empty for numbers
   */
  public record Property(String word, String usual, Need need, String about, List<String> choices) {
    public Property {
      choices = List.copyOf(choices);
    }
  }

  /** Whether a thing can do without a property. */
  public enum Need {
    REQUIRED,
    OPTIONAL
  }

  /** The property of a kind with this name. */
  public static Optional<Property> find(OwnKind kind, String word) {
    String wanted = word.toLowerCase(Locale.ROOT);
    return of(kind).stream().filter(property -> property.word().equals(wanted)).findFirst();
  }

  /** The properties of a kind in their usual order; a kind whose properties are free has none. */
  public static List<Property> of(OwnKind kind) {
    return switch (kind) {
      case MACHINE -> machine();
      case VISE ->
          List.of(
              required("jaw-width", "80", "width of the jaws"),
              required("jaw-depth", "25", "from the bed to the top of the jaws"),
              required("opening", "70", "how wide it opens"),
              optional("jaw-square", "0.02 over 100", "how far the fixed jaw is off square"),
              choice("fixed-jaw", "operator-back", "where the fixed jaw is", places()),
              optional("lift", "0.05", "how far the moving jaw may lift untapped work"),
              optional("slack", "0.005 over 1", "how far the moving jaw may swivel unharmed"),
              optional("trued", "0.02 over 100", "how true it is known to stand to the table"),
              optional("bed-height", "50", "how high its bed is above the table"));
      case PARALLELS ->
          List.of(
              required("thickness", "6", "thickness"),
              required("height", "10", "height"),
              required("length", "70", "length"),
              optional("count", "2", "how many there are"),
              optional("mismatch", "0.005", "how far their heights may differ"));
      case CUTTER ->
          List.of(
              choice("kind", "end-mill", "what it is", words(Owned.CutterKind.values())),
              required("dia", "16", "diameter"),
              optional("teeth", "2", "how many teeth"),
              required("flute", "32", "length of the cutting edges"),
              optional("reach", "40", "how far below the holder it can go"),
              optional("corner", "0", "corner radius"),
              choice("hand", "right", "which way it turns", words(Owned.Hand.values())),
              choice("made-of", "HSS", "what its edges are", List.of("HSS", "carbide")),
              choice(
                  "centre-cutting",
                  "yes",
                  "whether it cuts at its middle and can go straight down",
                  words(Owned.Middle.values())),
              optional("shank", "12", "diameter of the shank"),
              optional("holder", "40", "diameter of what holds it, where it stands out"));
      case INSTRUMENT ->
          List.of(
              choice("kind", "caliper", "what it is", words(Owned.InstrumentKind.values())),
              optional("range", "0, 150 mm", "what it can measure"),
              optional("resolution", "0.01", "the least difference it shows"),
              optional("accuracy", "0.01", "how far a careful reading may be off"));
      case FINDER -> List.of(required("dia", "5", "diameter of the tip"));
      case LIMITS ->
          Stream.of(Limit.values())
              .map(limit -> optional(limit.word(), usual(limit), "a threshold of the rules"))
              .toList();
      case SEVERITIES -> List.of();
      case MATERIAL ->
          List.of(
              optional("like", "steel-mild", "the material of the tables it is like"),
              optional("speed-hss", "20, 30 m/min", "the usual speeds of such cutters: from, to"),
              optional("speed-carbide", "60, 100 m/min", "the usual speeds of such cutters"),
              optional("speed-drill", "20, 30 m/min", "the usual speeds of drills"),
              optional("feed-per-tooth", "0.05 mm/tooth", "the usual feed for any cutter"),
              optional("force", "1500", "specific cutting force kc1.1, N/mm2"),
              optional("force-exponent", "0.25", "how it falls with the chip's thickness, mc"),
              optional("density", "7850", "kilograms per cubic metre"));
      case PACKING -> piece("thickness");
      case CLAMP -> piece("width");
      case DRILL ->
          Stream.concat(
                  Stream.of(
                      choice(
                          "kind",
                          "twist-drill",
                          "what it is made for",
                          words(Owned.DrillKind.values()))),
                  drill().stream())
              .toList();
      case DRILLS ->
          drill().stream()
              .map(
                  property ->
                      property.word().equals("dia")
                          ? required("dia", "10", "the largest; they go from 1 mm by tenths")
                          : property)
              .toList();
      default -> piece("");
    };
  }

  private static List<Property> machine() {
    List<Property> properties = new ArrayList<>();
    for (Axis axis : Axis.values()) {
      String suffix = "-" + axis.word();
      properties.add(optional("lead" + suffix, "2.5", "travel of one turn"));
      properties.add(optional("divisions" + suffix, "50", "marks on the dial"));
      properties.add(optional("backlash" + suffix, "0.1", "lost motion when turned round"));
      properties.add(optional("travel" + suffix, "200", "how far it goes"));
      properties.add(optional("readable" + suffix, "1/2", "the part of a division one can read"));
      properties.add(
          choice("handle" + suffix, "operator-front", "where the handle is", directions()));
      properties.add(
          choice(
              "clockwise" + suffix,
              "operator-back",
              "where it goes turned clockwise",
              directions()));
    }
    properties.add(
        choice("z-moves", "quill", "what the Z handle moves", words(Owned.ZDrive.values())));
    properties.add(
        choice("column", "fixed", "how the head is carried", words(Owned.Column.values())));
    properties.add(optional("speeds", "95, 180, 270, 500, 930, 1420 rpm", "the spindle's steps"));
    properties.add(optional("top-speed", "2000 rpm", "the highest speed"));
    properties.add(optional("power", "0.5 kW", "the motor's power"));
    properties.add(optional("daylight", "300", "the most room from spindle nose to table"));
    properties.add(optional("chuck", "75", "how far the drill chuck stands below the nose"));
    return List.copyOf(properties);
  }

  private static List<Property> piece(String needed) {
    return Stream.of("dia", "thickness", "width", "height", "length", "pitch", "point")
        .map(word -> word.equals(needed) ? required(word, "10", word) : optional(word, "10", word))
        .toList();
  }

  private static List<Property> drill() {
    return Stream.concat(
            piece("").stream(),
            Stream.of(optional("angle", "118 deg", "the included angle of the point")))
        .toList();
  }

  private static Property required(String word, String usual, String about) {
    return new Property(word, usual, Need.REQUIRED, about, List.of());
  }

  private static Property optional(String word, String usual, String about) {
    return new Property(word, usual, Need.OPTIONAL, about, List.of());
  }

  private static Property choice(String word, String usual, String about, List<String> choices) {
    return new Property(word, usual, Need.OPTIONAL, about, choices);
  }

  private static List<String> words(Enum<?>[] values) {
    return Stream.of(values)
        .map(value -> value.name().toLowerCase(Locale.ROOT).replace('_', '-'))
        .toList();
  }

  private static List<String> places() {
    return List.of("operator-back", "operator-front", "operator-left", "operator-right");
  }

  private static List<String> directions() {
    return words(Direction.values());
  }

  private static String usual(Limit limit) {
    return limit.fallback().is(Dimension.LENGTH)
        ? LengthText.mm(limit.fallback().toLength())
        : limit.fallback().value().bigDecimalValue().toPlainString();
  }
}
