package org.handwheel.ide;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.antlr.v4.runtime.tree.ParseTree;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.LetLineContext;
import org.handwheel.grammar.HandwheelParser.OwnHeaderContext;
import org.handwheel.grammar.HandwheelParser.PropertyLineContext;
import org.handwheel.model.Limit;
import org.handwheel.model.Names.Declaration;
import org.handwheel.model.Part;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Plan;
import org.handwheel.model.build.ValueReader;
import org.handwheel.rules.Checker;
import org.handwheel.shop.drill.DrillPoint;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Dimension;
import org.handwheel.units.Length;
import org.handwheel.units.Quantity;
import org.handwheel.work.DrawnLimits;
import org.handwheel.work.feature.FeatureSizes;
import org.jspecify.annotations.Nullable;

/** What a name stands for: an owned thing with its properties, a value, a hole or a feature. */
final class ThingHover {
  /** Properties of the shop that count or compare, and are no lengths. */
  private static final Pattern PLAIN =
      Pattern.compile("divisions-[xyz]|readable-[xyz]|count|teeth|force|force-exponent|density");

  private final View view;

  ThingHover(View view) {
    this.view = view;
  }

  Optional<HoverText> text(Declaration declaration) {
    return switch (declaration.kind()) {
      case VALUE -> value(declaration);
      case HOLE, FEATURE -> hole(declaration);
      case SETUP -> Here.setup(view.run(), declaration.origin().section()).map(HoldHover::text);
      default -> owned(declaration);
    };
  }

  private @Nullable SyntaxTree treeOf(Origin origin) {
    if (view.tree().contains(origin)) {
      return view.tree();
    }
    return view.workspace()
        .file(origin.section().path())
        .filter(tree -> tree.contains(origin))
        .orElse(null);
  }

  /** The values of whichever file a place is in. */
  private Optional<ValueReader> values(Origin origin) {
    SyntaxTree tree = treeOf(origin);
    return tree == null ? Optional.empty() : Optional.of(values(view, tree));
  }

  static ValueReader values(View view, SyntaxTree tree) {
    return Checker.isShop(tree)
        ? ValueReader.ofShop(tree)
        : ValueReader.ofPlan(view.workspace(), tree);
  }

  // ---- Values -----------------------------------------------------------------------------------

  private Optional<HoverText> value(Declaration declaration) {
    Section section = declaration.origin().section();
    for (ContentContext line : section.lines()) {
      if (line.statement() instanceof LetLineContext let
          && section.origin(let.name()).equals(declaration.origin())) {
        return values(declaration.origin())
            .flatMap(values -> values.quantity(section, let.expr()))
            .map(value -> value(declaration.name(), section.origin(let.expr()).text(), value));
      }
    }
    return Optional.empty();
  }

  private static HoverText value(String name, String written, Quantity value) {
    HoverText.Builder text = HoverText.titled(name + " = " + QuantityText.of(value));
    text.code("Written", "let " + name + " = " + written);
    if (value.is(Dimension.LENGTH)) {
      text.fact("Exactly", QuantityText.exact(value.toLength()));
      InchFraction.words(value.toLength()).ifPresent(near -> text.fact("Fraction", near));
    }
    return text.build();
  }

  // ---- Owned things
  // -------------------------------------------------------------------------------

  private Optional<HoverText> owned(Declaration declaration) {
    Section section = declaration.origin().section();
    if (section.lines().isEmpty()
        || !(section.lines().get(0).header() instanceof OwnHeaderContext header)) {
      return Optional.empty();
    }
    String kind = header.ownKind().getText();
    HoverText.Builder text =
        HoverText.titled(
            kind
                + " "
                + declaration.name()
                + (header.title() == null ? "" : ": " + unquoted(header.title().getText())));
    Optional<ValueReader> values = values(declaration.origin());
    for (ContentContext line : section.lines()) {
      if (line.statement() instanceof PropertyLineContext property && !section.isBroken(line)) {
        text.fact(property.property().getText(), property(section, property, values));
      }
    }
    if (view.plan() != null) {
      computed(text, declaration, view.plan());
    }
    if (!view.tree().contains(declaration.origin())) {
      text.note("Owned in " + section.path() + ".");
    }
    return Optional.of(text.build());
  }

  private static String unquoted(String text) {
    return text.replace("\"", "");
  }

  /** Whether a property is a plain number and no length. */
  static boolean isNumber(String property) {
    return PLAIN.matcher(property).matches()
        || Limit.named(property)
            .filter(limit -> !limit.fallback().is(Dimension.LENGTH))
            .isPresent();
  }

  /** The values of a property as written, or in both units if they are lengths. */
  static String property(Section section, PropertyLineContext line, Optional<ValueReader> values) {
    String written =
        section
            .origin(line.value(0))
            .to(section.origin(line.value(line.value().size() - 1)))
            .text();
    List<? extends ParseTree> nodes =
        line.value().stream().flatMap(value -> value.expr().stream()).toList();
    boolean words = line.value().stream().anyMatch(value -> value.expr().isEmpty());
    if (isNumber(line.property().getText()) || values.isEmpty() || words) {
      return written;
    }
    String between = line.value(0).expr().size() > 1 ? " over " : " to ";
    boolean otherUnit =
        nodes.stream()
            .map(node -> values.get().quantity(section, node))
            .anyMatch(
                quantity ->
                    quantity.isEmpty()
                        || !(quantity.get().is(Dimension.LENGTH)
                            || quantity.get().is(Dimension.NUMBER)));
    if (otherUnit) {
      return written;
    }
    return values
        .get()
        .lengths(section, nodes)
        .map(lengths -> String.join(between, lengths.stream().map(Length::toString).toList()))
        .orElse(written);
  }

  /** What follows from the properties: the dials of the machine. */
  private static void computed(HoverText.Builder text, Declaration declaration, Plan plan) {
    if (plan.machine() != null && plan.machine().origin().equals(declaration.origin())) {
      plan.machine().screws().values().stream()
          .sorted((a, b) -> a.axis().compareTo(b.axis()))
          .forEach(screw -> text.formula(screw.axis().name() + ": " + DialText.screw(screw)));
    }
  }

  // ---- Holes and features
  // ---------------------------------------------------------------------------

  private Optional<HoverText> hole(Declaration declaration) {
    Part part = view.plan() == null ? null : view.plan().part();
    if (part == null) {
      return Optional.empty();
    }
    Optional<HoverText> hole =
        part.holes().stream()
            .filter(spec -> same(spec.origin(), declaration))
            .findFirst()
            .map(this::hole);
    Optional<HoverText> other =
        hole.or(
            () ->
                part.features().stream()
                    .filter(spec -> same(spec.origin(), declaration))
                    .findFirst()
                    .map(this::feature));
    return other.or(() -> written(declaration));
  }

  private static boolean same(Origin line, Declaration declaration) {
    Origin name = declaration.origin();
    return line.section() == name.section()
        && line.start() <= name.start()
        && name.end() <= line.end();
  }

  private HoverText hole(HoleSpec spec) {
    HoverText.Builder text =
        HoverText.titled("hole " + spec.name() + " in the " + spec.face().word());
    StandardHover standard = new StandardHover(view.tables());
    if (spec.dia() != null) {
      text.fact("Diameter", spec.dia().toString());
      limits(text, spec);
      if (spec.fit() != null) {
        standard.fit(spec.fit(), spec.dia()).ifPresent(text::add);
      }
    }
    text.fact("Depth", depth(spec));
    if (spec.threadDepth() != null) {
      text.fact("Full thread", spec.threadDepth().toString());
    }
    if (spec.drillDepth() != null) {
      text.fact("Tapping drill goes", spec.drillDepth().value() + " deep");
    }
    seats(text, spec);
    if (spec.position() != null) {
      text.fact(
          "At",
          spec.position().first()
              + " and "
              + spec.position().second()
              + (spec.position().isFromCentre()
                  ? " from the centre"
                  : " from the "
                      + String.join(
                          " ", spec.position().corner().stream().map(f -> f.word()).toList())));
    }
    ChainHover.add(text, view, spec);
    if (spec.thread() != null) {
      standard.thread(spec.thread()).ifPresent(text::add);
    }
    return text.build();
  }

  /** Spotface, counterbore and countersink, and how deep a drill's point goes. */
  private void seats(HoverText.Builder text, HoleSpec spec) {
    fact(text, "Spotface", spec.spotface());
    if (spec.counterboreDia() != null && spec.counterboreDepth() != null) {
      text.fact("Counterbore", spec.counterboreDia() + ", " + spec.counterboreDepth() + " deep");
    }
    if (spec.countersink() != null
        && spec.dia() != null
        && !spec.countersink().isLessThan(spec.dia())) {
      text.fact(
          "Countersink",
          spec.countersink()
              + ", "
              + new DrillPoint(90).countersinkDepth(spec.countersink(), spec.dia())
              + " deep at 90 deg, "
              + new DrillPoint(82).countersinkDepth(spec.countersink(), spec.dia())
              + " at 82 deg");
    }
    Length full = spec.drillDepth() != null ? spec.drillDepth().value() : spec.depth();
    Length drill =
        spec.thread() == null
            ? spec.dia()
            : view.tables()
                .threads()
                .find(spec.thread())
                .map(thread -> thread.tapDrill().diameter())
                .orElse(null);
    if (!spec.through() && full != null && drill != null) {
      text.fact(
          "The drill's point",
          "reaches "
              + DrillPoint.GENERAL.tipDepth(drill, full)
              + " at 118 deg, "
              + DrillPoint.TOUGH.tipDepth(drill, full)
              + " at 135 deg");
    }
  }

  private void limits(HoverText.Builder text, HoleSpec spec) {
    Plan plan = view.plan();
    if (plan == null || plan.part() == null || spec.fit() != null) {
      return;
    }
    DrawnLimits.of(spec, plan.part(), plan.shop().limits(), view.tables())
        .ifPresent(found -> text.fact("Limits", limits(found)));
  }

  private static String limits(DrawnLimits found) {
    return found.limits()
        + (found.source() == DrawnLimits.Source.OWN ? "" : " (" + found.source().words() + ")");
  }

  private static String depth(HoleSpec spec) {
    if (spec.through()) {
      return "through";
    }
    return spec.depth() == null ? "as the thread needs" : spec.depth().toString();
  }

  private HoverText feature(Part.FeatureSpec spec) {
    HoverText.Builder text =
        HoverText.titled(spec.featureKind().name().toLowerCase(Locale.ROOT) + " " + spec.name());
    fact(text, "Width", spec.width());
    fact(text, "Length", spec.length());
    Plan plan = view.plan();
    if (plan != null && plan.part() != null) {
      for (FeatureSizes.Size size :
          FeatureSizes.of(spec, plan.part(), plan.shop().limits(), view.tables())) {
        text.fact("Limits of the " + size.word(), limits(size.limits()));
      }
    }
    fact(text, "Depth", spec.depth());
    fact(text, "Radius", spec.radius());
    fact(text, "Tolerance", spec.tolerance());
    return text.build();
  }

  private static void fact(HoverText.Builder text, String label, @Nullable Length length) {
    if (length != null) {
      text.fact(label, length.toString());
    }
  }

  /** Whatever else declares a name is shown as it is written. */
  private static Optional<HoverText> written(Declaration declaration) {
    Origin origin = declaration.origin();
    String line = origin.section().source().line(origin.section().source().lineAt(origin.start()));
    return Optional.of(HoverText.titled(declaration.name()).code("Written", line.strip()).build());
  }
}
