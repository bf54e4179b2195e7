package org.handwheel.ide;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.handwheel.grammar.HandwheelParser.OwnHeaderContext;
import org.handwheel.grammar.HandwheelParser.PropertyLineContext;
import org.handwheel.model.Limit;
import org.handwheel.model.OwnKind;
import org.handwheel.model.OwnProperties;
import org.handwheel.model.OwnProperties.Property;
import org.handwheel.rules.Rules;
import org.handwheel.syntax.Section;
import org.handwheel.units.Dimension;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;

/** What is told of a property of an owned thing: what it means, and what it may be. */
final class PropertyHover {
  private static final Pattern RANGE = Pattern.compile("([0-9.]+), ([0-9.]+) mm");

  private PropertyHover() {}

  /** The text about the property of a line; nothing if its thing has no such property. */
  static Optional<HoverText> text(
      View view, Section section, PropertyLineContext line, RulePages pages) {
    String word = line.property().getText().toLowerCase(Locale.ROOT);
    Optional<OwnKind> kind = kind(section);
    if (kind.isEmpty()) {
      return Optional.empty();
    }
    if (kind.get() == OwnKind.SEVERITIES) {
      return severity(word, pages);
    }
    return OwnProperties.find(kind.get(), word)
        .map(property -> text(view, section, line, kind.get(), property));
  }

  private static Optional<OwnKind> kind(Section section) {
    if (section.lines().isEmpty()
        || !(section.lines().get(0).header() instanceof OwnHeaderContext header)
        || header.ownKind() == null) {
      return Optional.empty();
    }
    String word = header.ownKind().getText().toLowerCase(Locale.ROOT);
    return Stream.of(OwnKind.values()).filter(kind -> kind.word().equals(word)).findFirst();
  }

  private static HoverText text(
      View view, Section section, PropertyLineContext line, OwnKind kind, Property property) {
    Optional<Limit> limit =
        kind == OwnKind.LIMITS ? Limit.named(property.word()) : Optional.empty();
    HoverText.Builder text =
        HoverText.titled(
            property.word()
                + (limit.isPresent() ? ": " : " of " + kind.words() + ": ")
                + property.about());
    text.fact(
        "Here",
        ThingHover.property(section, line, Optional.of(ThingHover.values(view, view.tree()))));
    if (limit.isPresent()) {
      text.fact(
          "Without this line",
          limit.get().fallback().is(Dimension.LENGTH)
              ? QuantityText.of(limit.get().fallback())
              : property.usual());
      text.note("Limits are common practice without a source; the shop's own come first.");
    } else if (property.choices().isEmpty()) {
      boolean needed = property.need() == OwnProperties.Need.REQUIRED;
      text.fact(needed ? "Usual" : "Usual, or taken where it is missing", usual(property));
    } else {
      text.fact("May be", String.join(", ", property.choices()));
    }
    if (property.need() == OwnProperties.Need.REQUIRED) {
      text.note("It has to be there.");
    }
    return text.build();
  }

  /** A bare number is in millimetres. */
  private static String usual(Property property) {
    Matcher range = RANGE.matcher(property.usual());
    if (range.matches()) {
      return LengthText.both(Length.mm(range.group(1)))
          + " to "
          + LengthText.both(Length.mm(range.group(2)));
    }
    boolean length = property.usual().matches("[0-9.]+") && !ThingHover.isNumber(property.word());
    return length ? LengthText.both(Length.mm(property.usual())) : property.usual();
  }

  private static Optional<HoverText> severity(String rule, RulePages pages) {
    if (!Rules.severities().containsKey(rule)) {
      return Optional.empty();
    }
    HoverText.Builder text = HoverText.titled("how grave the rule " + rule + " is in this shop");
    String paragraph = pages.page(rule).map(RulePages::firstParagraph).orElse("");
    if (!paragraph.isEmpty()) {
      text.markup(paragraph);
    }
    text.fact("Without this line", Rules.severities().get(rule).name().toLowerCase(Locale.ROOT));
    text.code("Written", rule + ": error, warning, info or off");
    return Optional.of(text.build());
  }
}
