package org.handwheel.plan.diff;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Located;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.model.Step;
import org.handwheel.model.build.LengthParser;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.units.Quantity;
import org.handwheel.units.Slope;
import org.jspecify.annotations.Nullable;

/**
 * What a record of the model says, as labelled facts in the order of its components. Places in the
 * text are left out; a thing of the shop counts by its name.
 */
final class Facts {
  /** Components whose own name would only lengthen the labels of what they hold. */
  private static final Set<String> PLAIN =
      Set.of("Cut.purpose", "FeatureCut.way", "Rough.target", "Finish.target", "Cut.faceOrigin");

  /** How a machinist calls a component, where its own name in words would not do. */
  private static final Map<String, String> LABELS =
      Map.ofEntries(
          Map.entry("Cut.purpose", "work"),
          Map.entry("Target.dimension", "to"),
          Map.entry("Target.size", "to"),
          Map.entry("Clean.at", "depth per pass"),
          Map.entry("EachAtMost.depth", "depth per pass"),
          Map.entry("Counted.depth", "depth per pass"),
          Map.entry("Counted.count", "number of passes"),
          Map.entry("FeatureWay.pass", "depth per pass"),
          Map.entry("HoleCut.verb", "work"),
          Map.entry("FeatureCut.verb", "work"),
          Map.entry("Hold.rest", "held"),
          Map.entry("Hold.support", "resting on"),
          Map.entry("Travel.from", "travel from"),
          Map.entry("Travel.to", "travel to"),
          Map.entry("DimensionSpec.nominal", "size"),
          Map.entry("OfDimension.dimension", "of"),
          Map.entry("Touch.zeroed", "zero"),
          Map.entry("Find.zeroed", "zero"));

  private static final Map<String, String> VARIANTS =
      Map.of(
          "EachAtMost", "as many as the depth needs",
          "Counted", "counted",
          "Single", "one",
          "OfPart", "of the part",
          "AtMachine", "at the machine");

  /** Enough to tell any two numbers a person writes, and blind to how a unit was converted. */
  private static final MathContext NINE_FIGURES = new MathContext(9);

  private final LengthUnit units;
  private final Map<String, Fact> facts = new LinkedHashMap<>();

  private Facts(LengthUnit units) {
    this.units = units;
  }

  /**
   * The facts of a record by their labels.
   *
   * @param units what bare numbers count in that the model keeps as they are written
   */
  static Map<String, Fact> of(Record said, LengthUnit units) {
    Facts all = new Facts(units);
    all.addComponents("", said);
    return Collections.unmodifiableMap(all.facts);
  }

  /** The facts of one value under a label. */
  static Map<String, Fact> of(String label, Object value, LengthUnit units) {
    Facts all = new Facts(units);
    all.add(label, value);
    return Collections.unmodifiableMap(all.facts);
  }

  private void addComponents(String label, Record said) {
    String owner = said.getClass().getSimpleName();
    for (RecordComponent component : said.getClass().getRecordComponents()) {
      String id = owner + "." + component.getName();
      String own = LABELS.getOrDefault(id, words(component.getName()));
      Object value = value(component, said);
      // How a size is written is no fact of the part; where a title block makes it one, the limits
      // that come of it are compared.
      if (value == null || value instanceof Part.Notation) {
        continue;
      }
      if (PLAIN.contains(id)) {
        if (said.getClass().getSimpleName().equals("Cut")) {
          put(own, Fact.of(variant(value)));
        }
        addPlain(label, value);
      } else if (LABELS.containsKey(id)) {
        add(own, value);
      } else {
        add(label.isEmpty() ? own : label + " " + own, value);
      }
    }
  }

  private void addPlain(String label, Object value) {
    if (value instanceof Record inner && !(value instanceof Origin)) {
      addComponents(label, inner);
    }
  }

  static @Nullable Object value(RecordComponent component, Record said) {
    try {
      return component.getAccessor().invoke(said);
    } catch (IllegalAccessException | InvocationTargetException e) {
      throw new IllegalStateException("the model's records are public", e);
    }
  }

  private void add(String label, Object value) {
    Fact simple = simple(value);
    if (simple != null) {
      put(label, simple);
    } else if (value instanceof Located<?> located) {
      add(label, located.value());
    } else if (value instanceof Boolean yes) {
      if (yes) {
        put(label, Fact.of("yes"));
      }
    } else if (value instanceof Collection<?> many) {
      addAll(label, many);
    } else if (value instanceof Map<?, ?> map) {
      Map<String, Object> sorted = new TreeMap<>();
      map.forEach((key, each) -> sorted.put(key instanceof Enum<?> e ? word(e) : key + "", each));
      sorted.forEach((key, each) -> add(label + " " + key, each));
    } else if (value instanceof Record inner && !(value instanceof Origin)) {
      if (inner.getClass().getInterfaces().length > 0) {
        put(label, Fact.of(variant(inner)));
      }
      addComponents(label, inner);
    }
  }

  private void addAll(String label, Collection<?> many) {
    List<Fact> each = new ArrayList<>();
    for (Object one : many) {
      Object bare = one instanceof Located<?> located ? located.value() : one;
      Fact fact = bare instanceof String text ? text(text) : simple(bare);
      if (fact == null) {
        addRecords(label, many);
        return;
      }
      each.add(fact);
    }
    if (each.isEmpty()) {
      return;
    }
    if (many instanceof Set) {
      each.sort((a, b) -> a.key().compareTo(b.key()));
    }
    put(
        label,
        new Fact(
            String.join(", ", each.stream().map(Fact::key).toList()),
            String.join(", ", each.stream().map(Fact::shown).toList())));
  }

  private void addRecords(String label, Collection<?> many) {
    int count = 0;
    for (Object one : many) {
      count++;
      add(label + " " + count, one);
    }
  }

  /** A label that comes twice is numbered, so that nothing is lost. */
  private void put(String label, Fact fact) {
    String free = label;
    for (int i = 2; facts.containsKey(free); i++) {
      free = label + " " + i;
    }
    facts.put(free, fact);
  }

  /** A list may hold sizes as they are written. */
  private Fact text(String text) {
    return LengthParser.parse(text, units) instanceof LengthParser.Parsed parsed
        ? length(parsed.length())
        : Fact.of(text.strip());
  }

  private static @Nullable Fact simple(Object value) {
    if (value instanceof Length length) {
      return length(length);
    }
    if (value instanceof LengthRange range) {
      return new Fact(
          range.low().picometres() + ".." + range.high().picometres(), LengthText.range(range));
    }
    if (value instanceof Slope slope) {
      return new Fact(slope.billionths() + "/1e9", slope.toString());
    }
    if (value instanceof Quantity quantity) {
      return quantity.dimension() == org.handwheel.units.Dimension.LENGTH
          ? length(quantity.toLength())
          : number(quantity.value().doubleValue());
    }
    if (value instanceof BigFraction fraction) {
      return number(fraction.doubleValue());
    }
    if (value instanceof Owned owned) {
      return new Fact(owned.name().toLowerCase(Locale.ROOT), owned.name());
    }
    if (value instanceof Enum<?> word) {
      return Fact.of(word(word));
    }
    if (value instanceof Double real) {
      return number(real);
    }
    if (value instanceof Number || value instanceof Character) {
      return Fact.of(value.toString());
    }
    if (value instanceof Step.HoleSize size) {
      String written = size.text().strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
      return size.length() == null ? Fact.of(written) : length(size.length());
    }
    return value instanceof String text ? Fact.of(text.strip()) : null;
  }

  private static Fact length(Length length) {
    return new Fact(length.picometres() + " pm", LengthText.both(length));
  }

  private static Fact number(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).round(NINE_FIGURES).stripTrailingZeros();
    return Fact.of(rounded.toPlainString());
  }

  static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private static String variant(Object value) {
    String name = value.getClass().getSimpleName();
    return VARIANTS.getOrDefault(name, words(name));
  }

  /** A name of the code in words: {@code stepOver} is "step over". */
  static String words(String name) {
    StringBuilder words = new StringBuilder();
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      if (Character.isUpperCase(c) && !words.isEmpty()) {
        words.append(' ');
      }
      words.append(Character.toLowerCase(c));
    }
    return words.toString();
  }
}
