package org.handwheel.work.hole;

import org.handwheel.model.Step.HoleSize;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * What has been made of one hole so far.
 *
 * @param spotted whether it was spotted
 * @param bore the diameter of the bore, nothing before it is drilled
 * @param size how the bore's size was written, if it was
 * @param boredBy the line that made the bore
 * @param depth its full-diameter depth below the hole's own face; nothing if not known
 * @param through whether it comes out on the other side
 * @param reamedBy the line that reamed or bored it to size
 * @param thread depth of full thread, if it is tapped
 * @param tappedBy the line that tapped it
 * @param counterbore diameter of the counterbore or spotface, if there is one
 * @param countersink diameter of the countersink, if there is one
 */
public record HoleState(
    boolean spotted,
    @Nullable Length bore,
    @Nullable HoleSize size,
    @Nullable Origin boredBy,
    @Nullable Length depth,
    boolean through,
    @Nullable Origin reamedBy,
    @Nullable Length thread,
    @Nullable Origin tappedBy,
    @Nullable Length counterbore,
    @Nullable Length countersink) {
  public static final HoleState UNTOUCHED =
      new HoleState(false, null, null, null, null, false, null, null, null, null, null);

  /** In words, for a person: "drilled 7.8 mm (0.3071 in), through". */
  public String words() {
    StringBuilder words = new StringBuilder();
    if (bore != null) {
      words.append(reamedBy != null ? "brought to " : "drilled ").append(bore);
      words.append(through ? ", through" : depth == null ? "" : ", " + depth + " deep");
    } else {
      words.append(spotted ? "spotted" : "not begun");
    }
    if (tappedBy != null) {
      words.append(", tapped");
    }
    if (counterbore != null) {
      words.append(", counterbored ").append(counterbore);
    }
    if (countersink != null) {
      words.append(", countersunk ").append(countersink);
    }
    return words.toString();
  }

  HoleState withSpot() {
    return new HoleState(
        true,
        bore,
        size,
        boredBy,
        depth,
        through,
        reamedBy,
        thread,
        tappedBy,
        counterbore,
        countersink);
  }

  /** After a tool of this diameter went in; a smaller one than the bore changes nothing. */
  HoleState withBore(
      HoleVerb verb,
      Length dia,
      @Nullable HoleSize written,
      Origin line,
      @Nullable Length toDepth,
      boolean goesThrough) {
    if (bore != null && dia.isLessThan(bore)) {
      return this;
    }
    boolean toSize = verb == HoleVerb.REAM || verb == HoleVerb.BORE;
    return new HoleState(
        spotted,
        dia,
        written,
        line,
        toDepth,
        goesThrough,
        toSize ? line : null,
        thread,
        tappedBy,
        counterbore,
        countersink);
  }

  HoleState withThread(Origin line, @Nullable Length deep) {
    return new HoleState(
        spotted,
        bore,
        size,
        boredBy,
        depth,
        through,
        reamedBy,
        deep,
        line,
        counterbore,
        countersink);
  }

  HoleState withCounterbore(Length dia) {
    return new HoleState(
        spotted, bore, size, boredBy, depth, through, reamedBy, thread, tappedBy, dia, countersink);
  }

  HoleState withCountersink(Length dia) {
    return new HoleState(
        spotted, bore, size, boredBy, depth, through, reamedBy, thread, tappedBy, counterbore, dia);
  }
}
