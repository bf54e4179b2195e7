package org.handwheel.ide;

import java.util.Locale;
import java.util.Optional;
import org.handwheel.model.Face;
import org.handwheel.model.PartDimension;
import org.handwheel.units.Length;
import org.handwheel.work.FacePair;
import org.handwheel.work.FaceState;
import org.handwheel.work.Obstacle;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.Relation;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;

/** What a face is like at a point of the plan, and what is known of how it lies. */
final class FaceHover {
  private FaceHover() {}

  static HoverText text(Here here, Face face) {
    Optional<Workpiece> work = here.work();
    if (work.isEmpty()) {
      return HoverText.titled(face.word()).note(meaning(face)).build();
    }
    boolean inSetup = here.setup().isPresent();
    FaceState state = work.get().face(face);
    HoverText.Builder text =
        HoverText.titled(
            face.word() + ", " + (inSetup ? "before this line: " : "at the end: ") + state.words());
    Optional<Orientation> orientation =
        here.setup().flatMap(setup -> Optional.ofNullable(setup.orientation()));
    orientation.ifPresent(
        lies -> text.fact("In this setup it looks", lies.directionOf(face).words()));
    if (state.flatness() != null) {
      text.fact("Flat within", state.flatness().toString());
    }
    if (state.removed().isPositive()) {
      text.fact("Has come off, at least", state.removed().toString());
    }
    if (state.burr() != null) {
      text.fact("Burrs", "on its edges, not taken off yet");
    }
    SizeState size = work.get().size(face.dimension());
    if (size != null) {
      text.fact(
          "The " + face.dimension().word() + " to the " + face.opposite().word(),
          CutHover.size(size));
    }
    for (Face other : Face.all()) {
      if (other != face) {
        relation(text, work.get(), face, other);
      }
    }
    return text.build();
  }

  private static void relation(HoverText.Builder text, Workpiece work, Face face, Face other) {
    String how = face.adjoins(other) ? "Square to the " : "Parallel to the ";
    Relation relation = work.relation(face, other);
    if (relation != null) {
      Length zone = relation.zone(face, other, work.sizes());
      text.fact(how + other.word(), "within " + zone + ": " + relation.reason());
      return;
    }
    Obstacle obstacle = work.obstacles().get(new FacePair(face, other));
    if (obstacle != null && work.face(face).isMachined()) {
      text.fact("Not proved " + how.toLowerCase(Locale.ROOT) + other.word(), obstacle.why());
    }
  }

  private static String meaning(Face face) {
    PartDimension dimension = face.dimension();
    return "The "
        + face.word()
        + " face of the part as the drawing shows it; the "
        + dimension.word()
        + " lies between it and the "
        + face.opposite().word()
        + ".";
  }

  /** Which face looks which way, in the order a person looks. */
  static void directions(HoverText.Builder text, SetupRun setup) {
    Orientation lies = setup.orientation();
    if (lies == null) {
      return;
    }
    text.fact(
        "Lies",
        lies.up().word()
            + " up, "
            + lies.back().word()
            + " away from you, "
            + lies.back().opposite().word()
            + " toward you, "
            + lies.back().cross(lies.up()).opposite().word()
            + " at your left, "
            + lies.back().cross(lies.up()).word()
            + " at your right");
  }
}
