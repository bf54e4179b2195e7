package org.handwheel.work.feature;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.model.Axis;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthText;
import org.handwheel.work.DialMove.Stop;
import org.handwheel.work.Orientation;
import org.handwheel.work.feature.DrawnFeature.Form.Sunk;
import org.jspecify.annotations.Nullable;

/**
 * What a line on a slot, pocket or step makes of a size between two walls for which the drawing
 * writes a tolerance.
 *
 * <p>Between two walls that are cut along, it is the way between the two stops and the cutter's
 * diameter. One line down the middle makes it as wide as the cutter, and more by the limit {@code
 * cutter-oversize} at most (common practice, no source).
 *
 * @param size as drawn
 * @param along the machine's axis across it
 * @param reached what it becomes; how exactly a dial is set is not in it
 */
public record OpeningSize(FeatureSizes.Size size, Axis along, LengthRange reached, By by) {
  /** What makes it. */
  public enum By {
    /** The cutter alone. */
    CUTTER,
    /** The dials: a wall on either side. */
    DIALS
  }

  public LengthRange limits() {
    return size.limits().limits();
  }

  /** The sizes that a line makes; none where the dials are not described. */
  public static List<OpeningSize> of(FeatureTable table, Limits limits) {
    FeatureRun run = table.run();
    Orientation lies = table.setup().orientation();
    List<OpeningSize> sizes = new ArrayList<>();
    if (table.rows().isEmpty() || run.cutter() == null) {
      return sizes;
    }
    for (FeatureSizes.Size size : FeatureSizes.written(run.spec())) {
      Axis axis = axis(run, lies, size.word());
      if (axis != null) {
        List<Stop> stops =
            table.rows().stream().map(row -> axis == Axis.X ? row.x() : row.y()).toList();
        Length across = across(stops);
        Length dia = run.cutter().dia();
        sizes.add(
            across.isZero()
                ? new OpeningSize(
                    size,
                    axis,
                    new LengthRange(dia, dia.plus(limits.length(Limit.CUTTER_OVERSIZE))),
                    By.CUTTER)
                : new OpeningSize(size, axis, LengthRange.exactly(across.plus(dia)), By.DIALS));
      }
    }
    return sizes;
  }

  /** How far the outermost stops of an axis are apart. */
  static Length across(List<Stop> stops) {
    Length low = null;
    Length high = null;
    for (Stop stop : stops) {
      low = low == null ? stop.reached() : Length.min(low, stop.reached());
      high = high == null ? stop.reached() : Length.max(high, stop.reached());
    }
    return low == null || high == null ? Length.ZERO : high.minus(low);
  }

  /** What the drawing writes for the size along a machine's axis, if walls bound it there. */
  static @Nullable LengthRange limits(FeatureRun run, @Nullable Orientation lies, Axis along) {
    if (axis(run, lies, "length") == along) {
      return run.spec().lengthLimits();
    }
    return axis(run, lies, "width") == along ? run.spec().widthLimits() : null;
  }

  /** The axis along which a size between two walls lies; nothing if there are none. */
  private static @Nullable Axis axis(FeatureRun run, @Nullable Orientation lies, String word) {
    if (lies == null
        || run.drawn() == null
        || !(run.drawn().form() instanceof Sunk sunk)
        || run.refusal().isPresent()) {
      return null;
    }
    boolean isLength = word.equals("length");
    if (isLength ? !sunk.hasFirst() : !sunk.hasSecond()) {
      return null;
    }
    return isLength == Lying.of(run.drawn().frame(), lies).alongX() ? Axis.X : Axis.Y;
  }

  /** For example {@code 4.98..5.00 mm, as wide as the cutter cuts; the drawing allows ...}. */
  public String words() {
    return LengthText.range(reached)
        + (by == By.CUTTER ? ", as wide as the cutter cuts" : "")
        + "; the drawing allows "
        + LengthText.range(limits());
  }

  public boolean isWithin() {
    return limits().contains(reached);
  }
}
