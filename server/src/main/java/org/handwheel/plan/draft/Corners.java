package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.handwheel.model.Axis;
import org.handwheel.model.Face;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Owned;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.PartDimension;
import org.handwheel.units.Length;
import org.handwheel.work.Orientation;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/**
 * Rounded corners: the work lies on a subplate under a strap in its middle, so that the cutter gets
 * round all of them (common practice, no source).
 */
final class Corners {
  private final Task task;
  private final Cutters cutters;

  Corners(Task task) {
    this.task = task;
    this.cutters = new Cutters(task);
  }

  /** The setup that cuts a corner or all of them, or nothing with the reason in why. */
  Optional<SetupDraft> setup(FeatureSpec corner, Workpiece work, Why why) {
    Face face = corner.face();
    if (face == null) {
      why.add("it is not said from where it is seen");
      return Optional.empty();
    }
    Face fixed = task.byRank().stream().filter(one -> one.adjoins(face)).findFirst().orElseThrow();
    Orientation orientation = new Orientation(face, fixed);
    Length alongX = size(work, orientation.along(Axis.X));
    Length alongY = size(work, orientation.along(Axis.Y));
    Length height = size(work, face.dimension());
    if (alongX == null || alongY == null || height == null) {
      why.add("the size of the work is not known");
      return Optional.empty();
    }
    Length narrow = Length.min(alongX, alongY);
    Optional<Owned.Piece> plate =
        piece(OwnKind.SUBPLATE).filter(one -> Outlines.carries(one, alongX, alongY)).findFirst();
    Optional<Owned.Piece> clamp =
        piece(OwnKind.CLAMP)
            .filter(one -> one.size("width") != null && one.size("width").isLessThan(narrow))
            .findFirst();
    Optional<Owned.Finder> finder = Continued.finder(task);
    Optional<Owned.Cutter> cutter =
        cutters.sideways(height).stream()
            .min(Comparator.comparing(Owned.Cutter::dia).thenComparing(Owned.Cutter::name));
    lacks(plate, "no subplate of " + alongX + " by " + alongY + " to lay the work on", why);
    lacks(clamp, "no clamp narrower than " + narrow, why);
    lacks(finder, "no edge finder", why);
    lacks(cutter, "no cutter with flutes of " + height.plus(cutters.below()), why);
    return plate.isEmpty() || clamp.isEmpty() || finder.isEmpty() || cutter.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new SetupDraft(
                "corner " + corner.name(),
                "Corners, on the subplate under a strap",
                Words.filled(
                    List.of(
                        "Under a strap in its middle the cutter gets round the corners.",
                        "The subplate has a skin to spare for the cutter's end.")),
                List.of(),
                lines(
                    corner,
                    orientation,
                    plate.get(),
                    clamp.get(),
                    finder.get(),
                    cutter.get(),
                    middle(work, face)),
                null,
                cutter.get().name(),
                null,
                Holds.SETUP + 30));
  }

  private List<String> lines(
      FeatureSpec corner,
      Orientation orientation,
      Owned.Piece plate,
      Owned.Piece clamp,
      Owned.Finder finder,
      Owned.Cutter cutter,
      String middle) {
    Numbers numbers = task.numbers();
    Face face = orientation.up();
    List<String> lines = new ArrayList<>();
    lines.add(
        "hold on subplate "
            + plate.name()
            + ", up "
            + face.word()
            + ", fixed "
            + orientation.back().word()
            + ", clamp "
            + clamp.name()
            + " at "
            + middle);
    for (Axis axis : new Axis[] {Axis.X, Axis.Y}) {
      lines.add(OpeningLines.find(Face.of(orientation.along(axis), -1), orientation, finder));
    }
    lines.add("cutter " + cutter.name());
    lines.add(
        "touch "
            + face.word()
            + " with paper "
            + numbers.write(numbers.usual("0.05", "0.002"))
            + ", zero z");
    lines.add(
        "corner "
            + corner.name()
            + " with "
            + cutter.name()
            + ", pass "
            + numbers.write(numbers.usual("2", "0.080"))
            + ", cusp "
            + numbers.write(numbers.usual("0.1", "0.004"))
            + ", conventional");
    lines.add("deburr all edges");
    return lines;
  }

  /** The middle of a face, as a place on it is written. */
  private String middle(Workpiece work, Face face) {
    List<String> halves = new ArrayList<>();
    for (PartDimension dimension : PartDimension.values()) {
      if (dimension != face.dimension()) {
        Length size = size(work, dimension);
        halves.add(task.numbers().write(size == null ? Length.ZERO : size.half()));
      }
    }
    return "(" + String.join(", ", halves) + ")";
  }

  private Stream<Owned.Piece> piece(OwnKind kind) {
    return task.shop().all(Owned.Piece.class).stream()
        .filter(one -> one.kind() == kind)
        .sorted(Comparator.comparing(Owned.Piece::name));
  }

  private static void lacks(Optional<?> found, String what, Why why) {
    if (found.isEmpty()) {
      why.add("the shop has " + what);
    }
  }

  private static @Nullable Length size(Workpiece work, PartDimension dimension) {
    SizeState state = work.size(dimension);
    return state == null ? null : state.range().middle();
  }
}
