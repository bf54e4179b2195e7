package org.handwheel.work.feature;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.handwheel.model.Limits;
import org.handwheel.model.Part;
import org.handwheel.model.Part.FeatureKind;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Part.Notation;
import org.handwheel.model.Part.OutlineForm;
import org.handwheel.shop.StandardTables;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.DrawnLimits;
import org.handwheel.work.DrawnLimits.Source;
import org.jspecify.annotations.Nullable;

/** What the drawing lets the sizes of slots, pockets, steps, outlines and windows be. */
public final class FeatureSizes {
  private FeatureSizes() {}

  /**
   * A size of a feature.
   *
   * @param word what it is: {@code width}, {@code length} or {@code diameter}
   * @param nominal as drawn
   */
  public record Size(String word, Length nominal, DrawnLimits limits) {
    public boolean isOwn() {
      return limits.source() == Source.OWN;
    }
  }

  /**
   * The sizes that a person can measure across, widths first.
   *
   * @param shop says what holds for sizes of which the drawing says nothing
   */
  public static List<Size> of(FeatureSpec spec, Part part, Limits shop, StandardTables tables) {
    List<Size> sizes = new ArrayList<>();
    boolean isSunk =
        spec.featureKind() == FeatureKind.SLOT
            || spec.featureKind() == FeatureKind.POCKET
            || spec.featureKind() == FeatureKind.STEP;
    if (isSunk) {
      size("width", spec.width(), spec.widthLimits(), spec.widthNotation(), part, shop, tables)
          .ifPresent(sizes::add);
      size("length", spec.length(), spec.lengthLimits(), spec.lengthNotation(), part, shop, tables)
          .ifPresent(sizes::add);
    } else {
      sizes.addAll(written(spec));
    }
    return sizes;
  }

  /** The sizes with a tolerance beside them, or that follow from one of the form. */
  public static List<Size> written(FeatureSpec spec) {
    if (spec.form() == OutlineForm.CIRCLE && spec.formFirst() != null) {
      LengthRange limits =
          spec.diaLimits() == null ? ofForm(spec, spec.formFirst()) : spec.diaLimits();
      return own("diameter", spec.formFirst(), limits).stream().toList();
    }
    return Stream.of(
            own("width", spec.width(), spec.widthLimits()),
            own("length", spec.length(), spec.lengthLimits()),
            own("width", spec.formSecond(), ofForm(spec, spec.formSecond())),
            own("length", spec.formFirst(), ofForm(spec, spec.formFirst())))
        .flatMap(Optional::stream)
        .toList();
  }

  /** A form may be off by its tolerance on either side. */
  private static @Nullable LengthRange ofForm(FeatureSpec spec, @Nullable Length over) {
    return over == null || spec.tolerance() == null
        ? null
        : LengthRange.around(over, spec.tolerance().times(2));
  }

  private static Optional<Size> own(
      String word, @Nullable Length nominal, @Nullable LengthRange limits) {
    return nominal == null || limits == null
        ? Optional.empty()
        : Optional.of(new Size(word, nominal, new DrawnLimits(limits, Source.OWN)));
  }

  private static Optional<Size> size(
      String word,
      @Nullable Length nominal,
      @Nullable LengthRange limits,
      @Nullable Notation notation,
      Part part,
      Limits shop,
      StandardTables tables) {
    if (nominal == null || limits != null) {
      return own(word, nominal, limits);
    }
    return Optional.of(
        new Size(word, nominal, DrawnLimits.general(nominal, notation, part, shop, tables)));
  }

  /** The width of the narrowest tolerance that is written, in all. */
  public static Optional<Length> narrowest(FeatureSpec spec) {
    Optional<Length> form = Optional.ofNullable(spec.formTolerance()).map(one -> one.times(2));
    return Stream.concat(
            form.stream(),
            Stream.of(
                    Optional.ofNullable(spec.widthLimits()),
                    Optional.ofNullable(spec.lengthLimits()))
                .flatMap(Optional::stream)
                .map(LengthRange::width))
        .min(Length::compareTo);
  }

  /**
   * How far one wall may stand off the form that is aimed at, by what the drawing writes: the
   * tolerance of the form, or a quarter of what a width or length may vary; nothing if it writes
   * none.
   */
  public static Length slack(FeatureSpec spec) {
    Length form = spec.formTolerance() == null ? Length.ZERO : spec.formTolerance();
    return Stream.of(
            Optional.ofNullable(spec.widthLimits()), Optional.ofNullable(spec.lengthLimits()))
        .flatMap(Optional::stream)
        .map(limits -> limits.width().half().half())
        .reduce(form, Length::max);
  }
}
