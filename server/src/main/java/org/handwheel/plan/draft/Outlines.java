package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Face;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Owned;
import org.handwheel.model.Part.FeatureKind;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Part.Position;
import org.handwheel.units.Length;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.handwheel.work.outline.Contour;
import org.handwheel.work.outline.FreeOutline;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;

/**
 * Oval and round outlines: the work is screwed to a subplate through its own holes, so that the
 * cutter gets all the way round (common practice, no source).
 */
final class Outlines {
  private final Task task;
  private final Cutters cutters;

  Outlines(Task task) {
    this.task = task;
    this.cutters = new Cutters(task);
  }

  /** The setup that cuts an outline, or nothing with the reason in why. */
  Optional<SetupDraft> setup(FeatureSpec outline, Workpiece work, Why why) {
    Face face = outline.face();
    SizeState height = face == null ? null : work.size(face.dimension());
    if (face == null || height == null || outline.form() == null) {
      why.add("it is not said how it is seen or what form it has");
      return Optional.empty();
    }
    Optional<Owned.Piece> plate = subplate(outline);
    if (plate.isEmpty()) {
      why.add(
          "the shop has no subplate of "
              + first(outline)
              + " by "
              + second(outline)
              + " to screw the work to");
      return Optional.empty();
    }
    Optional<String> holes = holes(face);
    if (holes.isEmpty()) {
      why.add("the part has no two holes through it to be screwed down by");
      return Optional.empty();
    }
    Optional<Owned.Instrument> indicator = task.instrument(Owned.InstrumentKind.INDICATOR);
    if (indicator.isEmpty()) {
      why.add("the shop has no indicator to find a hole with");
      return Optional.empty();
    }
    List<Owned.Cutter> choices = choices(outline, height.range().high());
    if (choices.isEmpty()) {
      why.add(
          (isWindow(outline)
                  ? "the shop has no slot drill thinner than the window, and no end mill that a hole"
                      + " within it lets down,"
                  : "the shop has no end mill")
              + " with flutes of "
              + height.range().high().plus(cutters.below()));
      return Optional.empty();
    }
    return Optional.of(
        setup(outline, face, plate.get(), holes.get(), indicator.get(), choices.get(0)));
  }

  static boolean isWindow(FeatureSpec outline) {
    return outline.featureKind() == FeatureKind.WINDOW;
  }

  /** The cutters that can make it, the thinnest first; into a window they have to get down. */
  private List<Owned.Cutter> choices(FeatureSpec outline, Length height) {
    Length room = Length.min(first(outline), second(outline));
    return cutters.sideways(height).stream()
        .filter(
            one ->
                isWindow(outline)
                    ? one.dia().isLessThan(room) && getsDown(one, outline)
                    : one.cutterKind() == Owned.CutterKind.END_MILL)
        .sorted(Comparator.comparing(Owned.Cutter::dia).thenComparing(Owned.Cutter::name))
        .toList();
  }

  private boolean getsDown(Owned.Cutter cutter, FeatureSpec window) {
    return cutter.cutsAtItsMiddle()
        || task.part().holes().stream()
            .filter(hole -> window.face() != null && isThrough(hole, window.face()))
            .filter(hole -> hole.position() != null && window.position() != null)
            .filter(hole -> isSamePlace(hole.position(), window.position()))
            .anyMatch(hole -> hole.dia() != null && !hole.dia().isLessThan(cutter.dia()));
  }

  private static boolean isSamePlace(@Nullable Position one, @Nullable Position other) {
    return one != null
        && other != null
        && one.first().equals(other.first())
        && one.second().equals(other.second())
        && one.corner().equals(other.corner());
  }

  private SetupDraft setup(
      FeatureSpec outline,
      Face face,
      Owned.Piece plate,
      String holes,
      Owned.Instrument indicator,
      Owned.Cutter cutter) {
    Numbers numbers = task.numbers();
    Face fixed = task.byRank().stream().filter(one -> one.adjoins(face)).findFirst().orElseThrow();
    Length cusp = numbers.usual("0.05", "0.002");
    if (outline.tolerance() != null) {
      Length third = Length.ofMillimetres(outline.tolerance().millimetres() / 3);
      cusp =
          Length.max(
              numbers.usual("0.01", "0.0005"),
              Length.min(cusp, numbers.down(third, "0.005", "0.0002")));
    }
    boolean window = isWindow(outline);
    String profile = (window ? "window " : "profile ") + outline.name() + " with " + cutter.name();
    List<String> lines = new ArrayList<>();
    lines.add(
        "hold on subplate " + plate.name() + ", up " + face.word() + ", fixed " + fixed.word());
    lines.add("find centre of " + holes + " with " + indicator.name() + ", zero x y");
    lines.add("cutter " + cutter.name());
    lines.add(
        "touch "
            + face.word()
            + " with paper "
            + numbers.write(numbers.usual("0.05", "0.002"))
            + ", zero z");
    String pass = ", pass " + numbers.write(numbers.usual("2", "0.080"));
    if (window) {
      // What is inside comes loose at the end of the one cut, not before another.
      lines.add(profile + pass + ", cusp " + numbers.write(cusp) + ", conventional");
    } else {
      lines.add(
          profile
              + ", leaving "
              + numbers.write(numbers.usual("0.25", "0.010"))
              + pass
              + ", conventional");
      lines.add(profile + ", cusp " + numbers.write(cusp) + ", conventional");
    }
    lines.add("deburr all edges");
    return new SetupDraft(
        (window ? "window " : "outline ") + outline.name(),
        (window ? "Window" : "Outline") + ", screwed down on the subplate",
        Words.filled(
            List.of(
                "Screwed to the subplate through " + holes + ", the cutter gets all the way round.",
                "Packing under the work, or a skin of the subplate to spare, for the cutter's end.")),
        List.of(),
        lines,
        null,
        cutter.name(),
        null,
        Holds.SETUP + 30);
  }

  /** The smallest plate that carries the whole form. */
  private Optional<Owned.Piece> subplate(FeatureSpec outline) {
    return task.shop().all(Owned.Piece.class).stream()
        .filter(piece -> piece.kind() == OwnKind.SUBPLATE)
        .filter(piece -> carries(piece, first(outline), second(outline)))
        .min(Comparator.comparing(Owned.Piece::name));
  }

  /** Whether something of two sizes finds room on a plate, one way or the other. */
  static boolean carries(Owned.Piece plate, Length first, Length second) {
    Length length = plate.size("length");
    Length width = plate.size("width");
    return length == null
        || width == null
        || (!Length.max(length, width).isLessThan(Length.max(first, second))
            && !Length.min(length, width).isLessThan(Length.min(first, second)));
  }

  /** An outline's size over all along the first coordinate of its face. */
  static Length first(FeatureSpec outline) {
    return outline.formFirst() == null
        ? Length.ofMillimetres(extent(outline).getWidth())
        : outline.formFirst();
  }

  /** The same along the second. */
  static Length second(FeatureSpec outline) {
    return outline.formSecond() == null
        ? Length.ofMillimetres(extent(outline).getHeight())
        : outline.formSecond();
  }

  private static Envelope extent(FeatureSpec outline) {
    Contour contour = outline.vertices().isEmpty() ? null : FreeOutline.of(outline).contour();
    return contour == null ? new Envelope() : contour.polygon(90).getEnvelopeInternal();
  }

  /** A pattern of holes that go through, or the first of two such holes. */
  private Optional<String> holes(Face face) {
    Optional<String> pattern =
        task.part().patterns().stream()
            .filter(
                one ->
                    task.part().holes().stream()
                        .anyMatch(
                            hole ->
                                hole.name().equalsIgnoreCase(one.hole()) && isThrough(hole, face)))
            .map(one -> one.name())
            .findFirst();
    List<HoleSpec> single =
        task.part().holes().stream()
            .filter(hole -> hole.position() != null && isThrough(hole, face))
            .toList();
    return pattern.or(
        () -> single.size() < 2 ? Optional.empty() : Optional.of(single.get(0).name()));
  }

  private static boolean isThrough(HoleSpec hole, Face face) {
    return hole.through() && hole.face().dimension() == face.dimension();
  }
}
