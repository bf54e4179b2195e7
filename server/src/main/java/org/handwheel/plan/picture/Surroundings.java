package org.handwheel.plan.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Hold;
import org.handwheel.model.Hold.Support;
import org.handwheel.model.Owned;
import org.handwheel.plan.picture.Picture.Style;
import org.handwheel.plan.picture.Solid.Span;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.work.Grip;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.SizeState;
import org.jspecify.annotations.Nullable;

/**
 * The work as it lies and what holds it. Where the plan does not give a size (how thick a jaw is,
 * how long a stop) a usual one is drawn.
 */
record Surroundings(Orientation orientation, Solid work, List<Solid> solids) {
  private static final double JAW = 15;
  private static final double BED = 12;
  private static final double STOP = 8;

  /** Nothing if it is not known how the work lies or how large it is. */
  static @Nullable Surroundings of(SetupRun setup) {
    Hold hold = setup.setup().hold();
    Orientation orientation = setup.orientation();
    if (hold == null || orientation == null) {
      return null;
    }
    Grip grip = setup.grip();
    if (grip != null) {
      return inVise(grip);
    }
    return hold.rest() instanceof Hold.Rest.OnPlate plate
        ? onPlate(hold, plate, orientation, setup)
        : null;
  }

  // ---- In the vise

  private static Surroundings inVise(Grip grip) {
    Hold hold = grip.hold();
    Owned.Vise vise = grip.vise();
    Origin at = hold.origin();
    double toward = vise.fixedJaw() == Direction.OPERATOR_FRONT ? 1 : -1;
    double width = grip.gripped().middle().millimetres();
    double seat = grip.seat().millimetres();
    double half = vise.jawWidth().half().millimetres();
    double top = vise.jawDepth().millimetres();
    Span jaws = new Span(-half, half);
    Span inJaws = new Span(0, top);
    Solid work =
        new Solid(
            Style.OUTLINE,
            "the work, " + grip.orientation().up().word() + " up",
            hold.up() == null ? at : hold.up().origin(),
            new Span(grip.workLeft().millimetres(), grip.workRight().millimetres()),
            Span.of(0, toward * width),
            new Span(seat, seat + grip.height().middle().millimetres()));
    List<Solid> solids = new ArrayList<>();
    double moving =
        toward * (width + grip.clamped().middle().minus(grip.gripped().middle()).millimetres());
    solids.add(
        new Solid(
            Style.FIXED,
            "bed of the vise " + vise.name(),
            at,
            jaws,
            Span.of(-toward * JAW, moving + toward * JAW),
            new Span(-BED, 0)));
    solids.add(
        new Solid(
            Style.FIXED,
            "fixed jaw, against " + grip.fixedFace().word(),
            hold.fixed() == null ? at : hold.fixed().origin(),
            jaws,
            Span.of(0, -toward * JAW),
            inJaws));
    solids.add(
        new Solid(
            Style.OUTLINE,
            "moving jaw, toward " + grip.movingFace().word(),
            at,
            jaws,
            Span.of(moving, moving + toward * JAW),
            inJaws));
    support(grip, toward * width, solids);
    between(grip, toward, width, solids);
    ends(grip, work, toward * width, solids);
    return new Surroundings(grip.orientation(), work, solids);
  }

  private static void support(Grip grip, double movingSide, List<Solid> solids) {
    if (grip.hold().support() == null) {
      return;
    }
    Origin origin = grip.hold().support().origin();
    Span height = new Span(0, grip.seat().millimetres());
    if (grip.hold().support().value() instanceof Support.SoftStrip strip) {
      String part = "soft strip " + LengthText.both(strip.thickness());
      Span x = new Span(grip.gripLeft().millimetres(), grip.gripRight().millimetres());
      solids.add(new Solid(Style.LAID_IN, part, origin, x, Span.of(0, movingSide), height));
    }
    grip.parallels()
        .ifPresent(
            parallels -> {
              double half = parallels.length().half().millimetres();
              double thick = parallels.thickness().millimetres() * Math.signum(movingSide);
              Span x = new Span(-half, half);
              boolean pair = grip.parallelCount() == 2;
              String part = words(parallels, pair ? "parallels " : "parallel ");
              solids.add(new Solid(Style.LAID_IN, part, origin, x, Span.of(0, thick), height));
              if (pair) {
                Span second = Span.of(movingSide, movingSide - thick);
                solids.add(new Solid(Style.LAID_IN, part, origin, x, second, height));
              }
            });
  }

  private static String words(Owned.Parallels parallels, String noun) {
    return noun + parallels.name() + ", " + LengthText.both(parallels.height()) + " high";
  }

  private static void between(Grip grip, double toward, double width, List<Solid> solids) {
    Hold hold = grip.hold();
    double place = toward * width;
    Span x = new Span(grip.gripLeft().millimetres(), grip.gripRight().millimetres());
    double jawTop = grip.vise().jawDepth().millimetres();
    if (hold.beside() != null) {
      double thick = toward * hold.beside().value().thickness().millimetres();
      solids.add(
          new Solid(
              Style.LAID_IN,
              "beside the work: " + hold.beside().value().name(),
              hold.beside().origin(),
              x,
              Span.of(place, place + thick),
              new Span(0, jawTop)));
      place += thick;
    }
    if (hold.bar() != null) {
      double dia = hold.bar().value().dia().millimetres();
      Length height = hold.bar().value().height();
      double middle =
          height == null
              ? grip.seat().millimetres() + grip.depth().middle().millimetres() / 2
              : grip.seat().plus(height).millimetres();
      solids.add(
          new Solid(
              Style.LAID_IN,
              "round bar " + LengthText.both(hold.bar().value().dia()),
              hold.bar().origin(),
              x,
              Span.of(place, place + toward * dia),
              new Span(middle - dia / 2, middle + dia / 2)));
    }
  }

  private static void ends(Grip grip, Solid work, double movingSide, List<Solid> solids) {
    Hold hold = grip.hold();
    if (hold.spacer() != null) {
      double half = grip.vise().jawWidth().half().millimetres();
      int sign = hold.spacer().value().at().sign();
      solids.add(
          new Solid(
              Style.LAID_IN,
              "spacer " + LengthText.both(hold.spacer().value().width()),
              hold.spacer().origin(),
              Span.of(sign * half, sign * (half - STOP)),
              Span.of(0, movingSide),
              new Span(0, grip.vise().jawDepth().millimetres())));
    }
    if (hold.stop() != null && hold.stop().value().axis() == Axis.X) {
      Direction end = hold.stop().value();
      double side = work.side(end);
      solids.add(
          new Solid(
              Style.FIXED,
              "stop",
              hold.stop().origin(),
              Span.of(side, side + end.sign() * STOP),
              new Span(work.y().middle() - STOP / 2, work.y().middle() + STOP / 2),
              new Span(work.z().from(), work.z().middle())));
    }
  }

  // ---- On the table, or on something that stands on it

  private static @Nullable Surroundings onPlate(
      Hold hold, Hold.Rest.OnPlate plate, Orientation orientation, SetupRun setup) {
    SizeState x = setup.before().size(orientation.along(Axis.X));
    SizeState y = setup.before().size(orientation.along(Axis.Y));
    SizeState z = setup.before().size(orientation.along(Axis.Z));
    if (x == null || y == null || z == null) {
      return null;
    }
    Solid work =
        new Solid(
            Style.OUTLINE,
            "the work, " + orientation.up().word() + " up",
            hold.up() == null ? hold.origin() : hold.up().origin(),
            new Span(0, x.range().middle().millimetres()),
            new Span(0, y.range().middle().millimetres()),
            new Span(lift(hold), lift(hold) + z.range().middle().millimetres()));
    List<Solid> solids = new ArrayList<>();
    lifting(hold, work, solids);
    String name =
        switch (plate.plate()) {
          case TABLE -> "table";
          case ANGLE_PLATE -> "angle plate " + plate.name();
          case V_BLOCK -> "V-block " + plate.name();
          case SUBPLATE -> "subplate " + plate.name();
        };
    solids.add(
        new Solid(
            Style.FIXED,
            name,
            hold.origin(),
            new Span(-JAW, work.x().to() + JAW),
            new Span(-JAW, work.y().to() + JAW),
            new Span(-BED, 0)));
    for (Hold.Clamping clamping : hold.clamps()) {
      Length size = clamping.clamp().size("width");
      Length rise = clamping.clamp().size("height");
      double half = size == null ? STOP / 2 : size.half().millimetres();
      double high = rise != null ? rise.millimetres() : 2 * half;
      double cx = clamping.x().millimetres();
      double cy = clamping.y().millimetres();
      solids.add(
          new Solid(
              Style.LAID_IN,
              "clamp " + clamping.clamp().name(),
              clamping.origin(),
              new Span(cx - half, cx + half),
              new Span(cy - half, cy + half),
              new Span(work.z().to(), work.z().to() + high)));
    }
    return new Surroundings(orientation, work, solids);
  }

  /** Parallels under work that is clamped on a plate. */
  private static Optional<Owned.Parallels> under(Hold hold) {
    Support support = hold.support() == null ? null : hold.support().value();
    if (support instanceof Support.Pair pair) {
      return Optional.of(pair.parallels());
    }
    return support instanceof Support.One one ? Optional.of(one.parallels()) : Optional.empty();
  }

  private static double lift(Hold hold) {
    return under(hold).map(parallels -> parallels.height().millimetres()).orElse(0.0);
  }

  private static void lifting(Hold hold, Solid work, List<Solid> solids) {
    Owned.Parallels parallels = under(hold).orElse(null);
    if (parallels == null || hold.support() == null) {
      return;
    }
    double half = parallels.length().half().millimetres();
    double thick = parallels.thickness().millimetres();
    Span x = new Span(work.x().middle() - half, work.x().middle() + half);
    Span z = new Span(0, lift(hold));
    boolean pair = hold.support().value() instanceof Support.Pair;
    String part = words(parallels, pair ? "parallels " : "parallel ");
    Origin origin = hold.support().origin();
    Span near = new Span(work.y().from(), work.y().from() + thick);
    solids.add(new Solid(Style.LAID_IN, part, origin, x, near, z));
    if (pair) {
      Span far = new Span(work.y().to() - thick, work.y().to());
      solids.add(new Solid(Style.LAID_IN, part, origin, x, far, z));
    }
  }
}
