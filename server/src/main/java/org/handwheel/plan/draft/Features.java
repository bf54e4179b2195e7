package org.handwheel.plan.draft;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.handwheel.model.Owned;
import org.handwheel.model.Part.FeatureKind;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.units.Length;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;

/** Slots, pockets, steps and chamfers: the cutter for each and the line that cuts it. */
final class Features {
  private static final Length TENTH = Length.mm("0.1");

  private final Task task;
  private final Cutters cutters;

  Features(Task task) {
    this.task = task;
    this.cutters = new Cutters(task);
  }

  /**
   * What makes a feature of the drawing.
   *
   * @param leftOut gets a sentence, by the feature's name, where a draft makes no such feature
   * @param missing gets what the drawing or the shop lacks for it
   */
  Optional<Opening> opening(
      FeatureSpec feature, Workpiece work, Map<String, String> leftOut, Set<String> missing) {
    if (feature.featureKind() == FeatureKind.CHAMFER) {
      return chamfer(feature, missing);
    }
    boolean cuttable =
        switch (feature.featureKind()) {
              case SLOT, POCKET, STEP -> true;
              case OUTLINE, WINDOW, CORNER, CHAMFER, PROFILE -> false;
            }
            && feature.face() != null;
    String word = feature.featureKind().name().toLowerCase(Locale.ROOT);
    if (!cuttable) {
      leftOut.put(
          feature.name(),
          "the "
              + word
              + " "
              + feature.name()
              + " is left to you: a draft squares the block and makes holes, slots,"
              + " pockets, steps, chamfers, outlines, windows and rounded corners");
      return Optional.empty();
    }
    Optional<Extent> extent = Extent.of(feature, work);
    SizeState size = feature.face() == null ? null : work.size(feature.face().dimension());
    if (extent.isEmpty() || feature.width() == null || size == null) {
      missing.add("it is not said where the " + word + " " + feature.name() + " is, or how wide");
      return Optional.empty();
    }
    Length narrow =
        feature.length() == null ? feature.width() : Length.min(feature.width(), feature.length());
    Length whole = size.range().middle();
    boolean through =
        feature.through()
            || (feature.depth() != null && !feature.depth().isLessThan(whole.minus(TENTH)));
    Length depth = feature.depth() == null ? whole : feature.depth();
    boolean step = feature.featureKind() == FeatureKind.STEP;
    // A step is open at its outer side: the cutter may be wider than it.
    List<Owned.Cutter> choices = step ? cutters.sideways(depth) : cutters.between(narrow, depth);
    if (choices.isEmpty()) {
      missing.add(
          "no slot drill or end mill for the "
              + word
              + " "
              + feature.name()
              + (step
                  ? ": its flutes have to be at least "
                  : ": it may be " + narrow + " thick at most, with flutes of at least ")
              + (step ? depth.plus(cutters.below()) : depth));
      return Optional.empty();
    }
    Owned.Cutter cutter = choices.get(0);
    Length pass = task.numbers().usual("0.5", "0.020");
    String line =
        word
            + " "
            + feature.name()
            + " with "
            + cutter.name()
            + ", pass "
            + task.numbers().write(pass);
    Length below = through ? task.numbers().usual("0.5", "0.020") : Length.ZERO;
    return Optional.of(
        new Opening(
            feature.name(),
            extent.get(),
            null,
            line,
            cutter,
            Length.ZERO,
            below,
            step ? depth : Length.ZERO,
            depth,
            true));
  }

  /** A slope along the edges of a face: the cutter's end comes below it, outside of the work. */
  private Optional<Opening> chamfer(FeatureSpec feature, Set<String> missing) {
    Length width = feature.width();
    if (feature.face() == null || width == null) {
      missing.add(
          "it is not said in which face the chamfer " + feature.name() + " is, or how wide");
      return Optional.empty();
    }
    Optional<Owned.Cutter> cutter =
        task.shop().all(Owned.Cutter.class).stream()
            .filter(one -> one.cutterKind() == Owned.CutterKind.CHAMFER_MILL)
            .filter(one -> !one.flute().isLessThan(width))
            .min(Comparator.comparing(Owned.Cutter::dia).thenComparing(Owned.Cutter::name));
    if (cutter.isEmpty()) {
      missing.add(
          "no chamfering cutter with flutes of " + width + " for the chamfer " + feature.name());
      return Optional.empty();
    }
    String line = "chamfer " + feature.name() + " with " + cutter.get().name();
    Extent extent = new Extent(Map.of(), List.of());
    return Optional.of(
        new Opening(
            feature.name(),
            extent,
            null,
            line,
            cutter.get(),
            Length.ZERO,
            Length.ZERO,
            width.plus(cutters.below()),
            width,
            true));
  }
}
