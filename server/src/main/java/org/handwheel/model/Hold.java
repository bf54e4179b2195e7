package org.handwheel.model;

import java.util.List;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * How the work is held in a setup.
 *
 * @param rest what it is held in or on
 * @param up the face that looks up
 * @param fixed the face against the fixed jaw, or against the angle plate
 * @param support what it sits on, if said
 * @param bar a round bar at the moving jaw
 * @param beside a second parallel or packing piece beside the work, at the moving jaw
 * @param spacer a piece at the other end of the jaws that keeps the moving jaw straight
 * @param overhang how far one end stands out beyond the jaws
 * @param place at which end of the jaws it sits, if not in the middle
 * @param stop at which end a work stop is
 */
public record Hold(
    Origin origin,
    Rest rest,
    @Nullable Located<Face> up,
    @Nullable Located<Face> fixed,
    @Nullable Located<Support> support,
    @Nullable Located<Bar> bar,
    @Nullable Located<Beside> beside,
    @Nullable Located<Spacer> spacer,
    @Nullable Located<Overhang> overhang,
    @Nullable Located<Direction> place,
    @Nullable Located<Direction> stop,
    List<Clamping> clamps) {
  public Hold {
    clamps = List.copyOf(clamps);
  }

  /** What holds or carries the work. */
  public sealed interface Rest {
    /** Between the jaws of a vise. */
    record InVise(Owned.Vise vise) implements Rest {}

    /** On the table, an angle plate, a V-block or a subplate, held by clamps. */
    record OnPlate(PlateKind plate, String name) implements Rest {}
  }

  /** Plates and blocks work may be clamped to. */
  public enum PlateKind {
    TABLE,
    ANGLE_PLATE,
    V_BLOCK,
    SUBPLATE
  }

  /** What lies under the work in the vise. */
  public sealed interface Support {
    /** Two parallels of one set, one at each jaw. */
    record Pair(Owned.Parallels parallels) implements Support {}

    /** A single parallel. */
    record One(Owned.Parallels parallels) implements Support {}

    /** The vise's bed. */
    record Bed() implements Support {}

    /** A strip of soft metal or card of the given thickness, which lets a raw face settle. */
    record SoftStrip(Length thickness) implements Support {}
  }

  /**
   * A round bar between the moving jaw and the work.
   *
   * @param height above the vise's bed, or nothing for the middle of the grip
   */
  public record Bar(Length dia, @Nullable Length height) {}

  /** Something of a known thickness between the work and the moving jaw. */
  public record Beside(String name, Length thickness) {}

  /** A piece as wide as the work at the other end of the jaws. */
  public record Spacer(Length width, Direction at) {}

  /** The end that stands out and how far. */
  public record Overhang(Side end, Length length) {}

  /** A clamp and the point of the work it bears on, from the left front corner as it lies. */
  public record Clamping(Owned.Piece clamp, Length x, Length y, Origin origin) {}
}
