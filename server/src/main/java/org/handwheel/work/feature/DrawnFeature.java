package org.handwheel.work.feature;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.handwheel.model.Face;
import org.handwheel.model.Part;
import org.handwheel.model.Part.FeatureKind;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Part.OutlineForm;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.FaceFrame;
import org.handwheel.work.FaceFrame.Place;
import org.handwheel.work.PartBox;
import org.handwheel.work.outline.Contour;
import org.handwheel.work.outline.FreeOutline;
import org.handwheel.work.outline.Outline;
import org.handwheel.work.outline.RoundOutline;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * A slot, pocket, outline, corner or chamfer of the drawing at its place on the part.
 *
 * @param frame the coordinates of its face
 * @param depth how deep below the face; the whole thickness if it goes through
 */
public record DrawnFeature(FeatureSpec spec, FaceFrame frame, Length depth, Form form) {
  /** What is taken away. */
  public sealed interface Form {
    /**
     * All that lies outside a form: outlines, profiles, and all four corners at once.
     *
     * @param middle the zero of the outline's own coordinates
     */
    record Round(Outline outline, Place middle) implements Form {}

    /**
     * All that lies within a form, right through the part.
     *
     * @param middle the zero of the outline's own coordinates
     */
    record Window(Contour contour, Place middle) implements Form {}

    /**
     * What lies outside the arc of one corner.
     *
     * @param arc the arc's middle
     * @param towardFirst +1 if the corner lies on the high side of the first coordinate, else -1
     * @param towardSecond the same for the second
     */
    record OneCorner(Place arc, Length radius, int towardFirst, int towardSecond) implements Form {}

    /**
     * A sunk rectangle: slots, pockets and steps. A side that reaches the part's edge is open.
     *
     * <p>A size with limits of its own is drawn in the middle of them: there both errors are
     * equally far away.
     *
     * @param radius of the corners between two walls; nothing if the drawing leaves it to the
     *     cutter
     */
    record Sunk(Place low, Place high, @Nullable Length radius, Open open) implements Form {
      public Place middle() {
        return new Place(
            low.first().plus(high.first()).half(), low.second().plus(high.second()).half());
      }

      /** Whether the first coordinate has a wall at either end, so that there is a length. */
      public boolean hasFirst() {
        return !open.lowFirst() && !open.highFirst();
      }

      /** Whether the second coordinate has a wall at either end, so that there is a width. */
      public boolean hasSecond() {
        return !open.lowSecond() && !open.highSecond();
      }

      /** The same, as long and as wide as this between its walls about its middle. */
      Sunk sized(@Nullable Length first, @Nullable Length second) {
        Place middle = middle();
        Length a = first == null || !hasFirst() ? high.first().minus(low.first()) : first;
        Length b = second == null || !hasSecond() ? high.second().minus(low.second()) : second;
        return new Sunk(
            middle.plus(a.half().negated(), b.half().negated()),
            middle.plus(a.half(), b.half()),
            radius,
            open);
      }

      /** Whether two walls meet at each corner, in the order of {@link Plane#rounded}. */
      List<Boolean> corners() {
        boolean lowFirst = !open.lowFirst();
        boolean highFirst = !open.highFirst();
        boolean lowSecond = !open.lowSecond();
        boolean highSecond = !open.highSecond();
        return List.of(
            lowFirst && lowSecond,
            highFirst && lowSecond,
            highFirst && highSecond,
            lowFirst && highSecond);
      }
    }

    /** All edges of the face broken. */
    record Edges(Length width) implements Form {}
  }

  /** Which sides of a sunk rectangle have no wall. */
  public record Open(boolean lowFirst, boolean highFirst, boolean lowSecond, boolean highSecond) {
    public boolean any() {
      return lowFirst || highFirst || lowSecond || highSecond;
    }
  }

  public String name() {
    return spec.name();
  }

  /** For example {@code slot keyway}. */
  public String words() {
    return spec.featureKind().name().toLowerCase(Locale.ROOT) + " " + spec.name();
  }

  public boolean isThrough() {
    return !depth.isLessThan(frame.thickness());
  }

  /** The feature of a name. */
  public static Optional<FeatureSpec> named(Part part, String name) {
    return part.features().stream().filter(spec -> spec.name().equalsIgnoreCase(name)).findFirst();
  }

  /** A feature at its place; nothing if the drawing leaves out what it needs. */
  public static Optional<DrawnFeature> of(FeatureSpec spec, PartBox box) {
    if (spec.face() == null) {
      return Optional.empty();
    }
    FaceFrame frame = new FaceFrame(spec.face(), box);
    Form form = form(spec, frame);
    Length depth = depth(spec, frame);
    return form == null || depth == null
        ? Optional.empty()
        : Optional.of(new DrawnFeature(spec, frame, depth, form));
  }

  private static @Nullable Length depth(FeatureSpec spec, FaceFrame frame) {
    if (spec.depth() != null && spec.featureKind() != FeatureKind.WINDOW) {
      return Length.min(spec.depth(), frame.thickness());
    }
    return switch (spec.featureKind()) {
      case OUTLINE, WINDOW, PROFILE, CORNER -> frame.thickness();
      case SLOT, POCKET, STEP -> spec.through() ? frame.thickness() : null;
      case CHAMFER -> spec.width();
    };
  }

  private static @Nullable Form form(FeatureSpec spec, FaceFrame frame) {
    return switch (spec.featureKind()) {
      case OUTLINE ->
          spec.form() == OutlineForm.FREE
              ? free(spec)
                  .<Form>map(contour -> new Form.Round(contour, zero(spec, frame)))
                  .orElse(null)
              : RoundOutline.of(spec)
                  .<Form>map(outline -> new Form.Round(outline, middle(spec, frame)))
                  .orElse(null);
      case WINDOW ->
          spec.form() == OutlineForm.FREE
              ? free(spec)
                  .<Form>map(contour -> new Form.Window(contour, zero(spec, frame)))
                  .orElse(null)
              : RoundOutline.of(spec)
                  .<Form>map(one -> new Form.Window(Contour.of(one), middle(spec, frame)))
                  .orElse(null);
      case PROFILE -> allCorners(spec, frame);
      case CORNER -> spec.position() == null ? allCorners(spec, frame) : oneCorner(spec, frame);
      case SLOT, POCKET, STEP -> sunk(spec, frame);
      case CHAMFER -> spec.width() == null ? null : new Form.Edges(spec.width());
    };
  }

  /** A free outline in the directions of its face. */
  private static Optional<Contour> free(FeatureSpec spec) {
    if (spec.vertices().isEmpty()) {
      return Optional.empty();
    }
    Contour contour = FreeOutline.of(spec).contour();
    if (contour == null || spec.position() == null || spec.position().isFromCentre()) {
      return Optional.ofNullable(contour);
    }
    // Its places count as its zero does: away from the corner.
    return Optional.of(
        contour.placed(
            /* alongX= */ true,
            -spec.position().corner().get(0).sign(),
            -spec.position().corner().get(1).sign()));
  }

  /** Where a free outline counts from: the low corner of its face if nothing is said. */
  private static Place zero(FeatureSpec spec, FaceFrame frame) {
    return spec.position() == null
        ? new Place(Length.ZERO, Length.ZERO)
        : frame.of(spec.position());
  }

  private static Place middle(FeatureSpec spec, FaceFrame frame) {
    return spec.position() == null
        ? new Place(frame.firstSize().half(), frame.secondSize().half())
        : frame.of(spec.position());
  }

  private static @Nullable Form allCorners(FeatureSpec spec, FaceFrame frame) {
    Length radius = spec.radius();
    Length lesser = Length.min(frame.firstSize(), frame.secondSize()).half();
    if (radius == null || radius.isMoreThan(lesser) || !lesser.isPositive()) {
      return null;
    }
    RoundOutline outline =
        new RoundOutline.Rounded(
            frame.firstSize().half().millimetres(),
            frame.secondSize().half().millimetres(),
            Math.min(radius.millimetres(), lesser.millimetres()));
    return new Form.Round(outline, new Place(frame.firstSize().half(), frame.secondSize().half()));
  }

  private static @Nullable Form oneCorner(FeatureSpec spec, FaceFrame frame) {
    Length radius = spec.radius();
    if (radius == null || spec.position() == null || spec.position().corner().size() != 2) {
      return null;
    }
    Face first = spec.position().corner().get(0);
    Face second = spec.position().corner().get(1);
    Place at = frame.of(spec.position());
    Place arc =
        at.plus(
            first.sign() > 0 ? radius.negated() : radius,
            second.sign() > 0 ? radius.negated() : radius);
    return new Form.OneCorner(arc, radius, first.sign(), second.sign());
  }

  private static @Nullable Form sunk(FeatureSpec spec, FaceFrame frame) {
    if (spec.length() == null || spec.width() == null) {
      return null;
    }
    Place middle = middle(spec, frame);
    Length first = spec.length().half();
    Length second = spec.width().half();
    Place low = middle.plus(first.negated(), second.negated());
    Place high = middle.plus(first, second);
    Open open =
        new Open(
            !low.first().isPositive(),
            !high.first().isLessThan(frame.firstSize()),
            !low.second().isPositive(),
            !high.second().isLessThan(frame.secondSize()));
    Form.Sunk nominal = new Form.Sunk(low, high, spec.radius(), open);
    return nominal.sized(aim(spec.lengthLimits()), aim(spec.widthLimits()));
  }

  /** Whether a sunk form has no wall toward a face beside its own. */
  public boolean runsOutAt(Form.Sunk sunk, Face side) {
    Open open = sunk.open();
    boolean isFirst = side.dimension() == frame.firstAlong();
    return side.sign() < 0
        ? isFirst ? open.lowFirst() : open.lowSecond()
        : isFirst ? open.highFirst() : open.highSecond();
  }

  private static @Nullable Length aim(@Nullable LengthRange limits) {
    return limits == null ? null : limits.middle();
  }

  /**
   * The same for a cutter that is as wide as the drawing lets the opening be: it makes it as wide
   * as it is itself, with one line.
   */
  DrawnFeature cutBy(Length dia) {
    if (!(form instanceof Form.Sunk sunk)) {
      return this;
    }
    boolean isLong = spec.lengthLimits() != null && spec.lengthLimits().contains(dia);
    boolean isWide = spec.widthLimits() != null && spec.widthLimits().contains(dia);
    return new DrawnFeature(
        spec, frame, depth, sunk.sized(isLong ? dia : null, isWide ? dia : null));
  }

  // ---- As regions of the face

  /** The whole face of the part. */
  public Geometry faceRegion() {
    return Plane.box(0, 0, frame.firstSize().millimetres(), frame.secondSize().millimetres());
  }

  /**
   * What is missing from the face of the finished part.
   *
   * @param corner the radius in millimetres of corners that the drawing leaves to the cutter
   */
  public Geometry gone(double corner) {
    if (form instanceof Form.Round round) {
      return faceRegion().difference(finished(round));
    } else if (form instanceof Form.Window window) {
      return opening(window).intersection(faceRegion());
    } else if (form instanceof Form.OneCorner one) {
      return square(one).difference(Plane.disc(coordinate(one.arc()), one.radius().millimetres()));
    } else if (form instanceof Form.Sunk sunk) {
      double radius = sunk.radius() == null ? corner : sunk.radius().millimetres();
      return Plane.rounded(envelope(sunk), radius, sunk.corners()).intersection(faceRegion());
    }
    double width = ((Form.Edges) form).width().millimetres();
    return faceRegion().difference(Plane.grown(faceRegion(), -width));
  }

  /** What is left standing inside a round form. */
  public Geometry finished(Form.Round round) {
    return at(round.outline(), round.middle());
  }

  /** What is open within a window. */
  public Geometry opening(Form.Window window) {
    return at(window.contour(), window.middle());
  }

  private static Geometry at(Outline outline, Place zero) {
    return org.locationtech.jts.geom.util.AffineTransformation.translationInstance(
            zero.first().millimetres(), zero.second().millimetres())
        .transform(outline.polygon(180));
  }

  static Coordinate coordinate(Place place) {
    return new Coordinate(place.first().millimetres(), place.second().millimetres());
  }

  private static Envelope envelope(Form.Sunk sunk) {
    return new Envelope(coordinate(sunk.low()), coordinate(sunk.high()));
  }

  private static Geometry square(Form.OneCorner one) {
    Coordinate arc = coordinate(one.arc());
    double radius = one.radius().millimetres();
    return Plane.FACTORY.toGeometry(
        new Envelope(
            arc,
            new Coordinate(
                arc.x + one.towardFirst() * radius, arc.y + one.towardSecond() * radius)));
  }
}
