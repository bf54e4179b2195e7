package org.handwheel.ide;

import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.tree.ParseTree;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.grammar.HandwheelParser.ExprContext;
import org.handwheel.grammar.HandwheelParser.FactorContext;
import org.handwheel.grammar.HandwheelParser.FeatureEllipseContext;
import org.handwheel.grammar.HandwheelParser.FeatureObroundContext;
import org.handwheel.grammar.HandwheelParser.FeatureSizeContext;
import org.handwheel.grammar.HandwheelParser.LetLineContext;
import org.handwheel.grammar.HandwheelParser.NominalContext;
import org.handwheel.grammar.HandwheelParser.PointContext;
import org.handwheel.grammar.HandwheelParser.PropertyLineContext;
import org.handwheel.grammar.HandwheelParser.QuantityContext;
import org.handwheel.grammar.HandwheelParser.SizeLineContext;
import org.handwheel.grammar.HandwheelParser.TermContext;
import org.handwheel.model.Direction;
import org.handwheel.model.build.ValueReader;
import org.handwheel.units.Dimension;
import org.handwheel.units.Length;
import org.handwheel.units.Quantity;

/** A number or a sum: both units, the nearest fraction, and what it is at the dial. */
final class LengthHover {
  private LengthHover() {}

  /** A text and the tree node it is about. */
  record Shown(ParserRuleContext node, HoverText text) {}

  static Optional<Shown> text(Here here) {
    Optional<ParserRuleContext> node = whole(here.spot());
    if (node.isEmpty() || here.spot().isBroken()) {
      return Optional.empty();
    }
    ValueReader values = ThingHover.values(here.view(), here.view().tree());
    Optional<Quantity> written = values.quantity(here.spot().section(), node.get());
    if (written.isPresent()
        && !written.get().is(Dimension.LENGTH)
        && !written.get().is(Dimension.NUMBER)) {
      return Optional.of(
          new Shown(node.get(), HoverText.titled(QuantityText.of(written.get())).build()));
    }
    return length(here, values, node.get())
        .map(length -> new Shown(node.get(), text(here, node.get(), length)));
  }

  /** The outermost node of the value the cursor is in: the sum, not its first number. */
  private static Optional<ParserRuleContext> whole(Spot spot) {
    ParserRuleContext whole = null;
    for (ParserRuleContext rule : spot.path()) {
      boolean value =
          rule instanceof ExprContext
              || rule instanceof NominalContext
              || rule instanceof QuantityContext
              || rule instanceof HandwheelParser.BarHeightContext;
      if (whole == null && value) {
        whole = rule;
      }
    }
    boolean part =
        spot.nearest(QuantityContext.class).isPresent()
            || spot.parent()
                .filter(
                    rule ->
                        rule instanceof ExprContext
                            || rule instanceof HandwheelParser.DivisorContext
                            || rule instanceof TermContext
                            || rule instanceof FactorContext
                            || rule instanceof NominalContext)
                .isPresent();
    return part ? Optional.ofNullable(whole) : Optional.empty();
  }

  private static Optional<Length> length(Here here, ValueReader values, ParserRuleContext node) {
    Spot spot = here.spot();
    Optional<LetLineContext> let = spot.nearest(LetLineContext.class);
    Optional<PropertyLineContext> property = spot.nearest(PropertyLineContext.class);
    if (let.isPresent() || property.isPresent()) {
      // What a bare number is here only its use will tell.
      return values
          .quantity(spot.section(), node)
          .filter(quantity -> quantity.is(Dimension.LENGTH))
          .map(Quantity::toLength);
    }
    List<? extends ParseTree> list = list(spot);
    for (int i = 0; i < list.size(); i++) {
      int index = i;
      ParseTree member = list.get(i);
      if (member == node || member == node.getParent()) {
        return values.lengths(spot.section(), list).map(lengths -> lengths.get(index));
      }
    }
    boolean length =
        spot.path().stream()
            .anyMatch(
                rule ->
                    rule instanceof HandwheelParser.LengthValueContext
                        || rule instanceof HandwheelParser.SizeTargetContext
                        || rule instanceof HandwheelParser.SizeToleranceContext
                        || rule instanceof HandwheelParser.PlusMinusContext
                        || rule instanceof HandwheelParser.BarHeightContext
                        || rule instanceof NominalContext
                        || rule instanceof PointContext
                        || rule instanceof HandwheelParser.DrillSizeContext
                        || rule instanceof HandwheelParser.ReadLineContext);
    return length ? values.length(spot.section(), node) : Optional.empty();
  }

  /** The members of a list in which a sole unit on the last holds for all. */
  private static List<? extends ParseTree> list(Spot spot) {
    Optional<PointContext> point = spot.nearest(PointContext.class);
    if (point.isPresent()) {
      return point.get().expr();
    }
    Optional<SizeLineContext> size = spot.nearest(SizeLineContext.class);
    if (size.isPresent()) {
      return size.get().lengthValue();
    }
    return spot.nearest(FeatureSizeContext.class)
        .map(FeatureSizeContext::lengthValue)
        .or(() -> spot.nearest(FeatureEllipseContext.class).map(FeatureEllipseContext::lengthValue))
        .or(() -> spot.nearest(FeatureObroundContext.class).map(FeatureObroundContext::lengthValue))
        .orElse(List.of());
  }

  private static HoverText text(Here here, ParserRuleContext node, Length length) {
    String written = here.spot().section().origin(node).text();
    boolean sum =
        !written.chars().allMatch(c -> c < 128 && (Character.isDigit(c) || c == '.'))
            && written.matches(".*[-+*/(].*");
    HoverText.Builder text = HoverText.titled((sum ? written.strip() + " = " : "") + length);
    text.fact("Exactly", QuantityText.exact(length));
    InchFraction.words(length.abs()).ifPresent(near -> text.fact("Fraction", near));
    Optional<Direction> cutter = here.windsIn();
    cutter.ifPresent(direction -> DialText.add(text, length, direction, here.machine()));
    return text.build();
  }
}
