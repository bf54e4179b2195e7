package org.handwheel.work.hole;

import java.util.Optional;
import org.handwheel.model.Axis;
import org.handwheel.model.Hold;
import org.handwheel.model.Owned;
import org.handwheel.units.Length;
import org.handwheel.work.Grip;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.SizeState;

/**
 * The room under the spindle: how much there is and how much a drill in its chuck needs above the
 * work.
 *
 * @param room from the spindle's nose to the table, at the most
 * @param top how high the top of the work is above the table
 * @param chuck how far the chuck stands below the nose
 * @param stickOut how far the drill stands out of the chuck
 * @param bit the drill
 */
public record Daylight(Length room, Length top, Length chuck, Length stickOut, Bit bit) {
  /** How much of a shank the chuck holds; common practice, no source. */
  private static final Length GRIPPED = Length.mm("25");

  /** What a drill must clear the work by to be brought over it; common practice, no source. */
  public static final Length CLEARANCE = Length.mm("2");

  /** What the whole stack needs. */
  public Length needed() {
    return top.plus(chuck).plus(stickOut).plus(CLEARANCE);
  }

  /** What is left over; negative if there is too little. */
  public Length left() {
    return room.minus(needed());
  }

  /** The room for one drill; nothing where the shop does not say enough. */
  public static Optional<Daylight> of(PlanRun run, SetupRun setup, StepRun step, Bit bit) {
    Owned.Machine machine = run.plan().machine();
    Orientation lies = setup.orientation();
    if (machine == null
        || machine.daylight() == null
        || machine.chuck() == null
        || lies == null
        || bit.length() == null) {
      return Optional.empty();
    }
    Length room = machine.daylight();
    Length chuck = machine.chuck();
    Length stickOut = Length.max(Length.ZERO, bit.length().minus(GRIPPED));
    return top(setup, step, lies).map(top -> new Daylight(room, top, chuck, stickOut, bit));
  }

  private static Optional<Length> top(SetupRun setup, StepRun step, Orientation lies) {
    SizeState up = step.before().size(lies.along(Axis.Z));
    Hold hold = setup.setup().hold();
    if (up == null || hold == null) {
      return Optional.empty();
    }
    Length height = up.range().middle();
    Grip grip = setup.grip();
    if (grip != null) {
      Length bed = grip.vise().bedHeight();
      return bed == null ? Optional.empty() : Optional.of(bed.plus(grip.seat()).plus(height));
    }
    boolean onTable =
        hold.rest() instanceof Hold.Rest.OnPlate plate && plate.plate() == Hold.PlateKind.TABLE;
    return onTable ? Optional.of(Grip.seat(hold).plus(height)) : Optional.empty();
  }
}
