package org.handwheel.ide;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.grammar.HandwheelParser.CleanLineContext;
import org.handwheel.grammar.HandwheelParser.DimensionContext;
import org.handwheel.grammar.HandwheelParser.DrillSizeContext;
import org.handwheel.grammar.HandwheelParser.FaceContext;
import org.handwheel.grammar.HandwheelParser.FaceOrDatumContext;
import org.handwheel.grammar.HandwheelParser.FinishLineContext;
import org.handwheel.grammar.HandwheelParser.FitContext;
import org.handwheel.grammar.HandwheelParser.HoldInViseLineContext;
import org.handwheel.grammar.HandwheelParser.HoldOnLineContext;
import org.handwheel.grammar.HandwheelParser.HoleCutLineContext;
import org.handwheel.grammar.HandwheelParser.MaterialRefContext;
import org.handwheel.grammar.HandwheelParser.NameContext;
import org.handwheel.grammar.HandwheelParser.RoughLineContext;
import org.handwheel.grammar.HandwheelParser.SetupHeaderContext;
import org.handwheel.grammar.HandwheelParser.ThreadContext;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.model.build.ValueReader;
import org.handwheel.syntax.Ignore;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.jspecify.annotations.Nullable;

/** What is told of the place under the cursor. */
public final class Hovers {
  private final View view;
  private final RulePages pages;

  private Hovers(View view, RulePages pages) {
    this.view = view;
    this.pages = pages;
  }

  /**
   * A text about a place.
   *
   * @param start first UTF-16 unit of the place in the file
   * @param end one past the last
   */
  public record Hover(int start, int end, HoverText text) {}

  /**
   * What is told at an offset, if there is anything to tell.
   *
   * @param offset UTF-16 units from the start of the file
   */
  public static Optional<Hover> at(View view, int offset, RulePages pages) {
    return Spot.at(view.tree(), offset).flatMap(new Hovers(view, pages)::at);
  }

  private Optional<Hover> at(Spot spot) {
    if (spot.token().getType() == HandwheelLexer.COMMENT) {
      return ignore(spot);
    }
    if (spot.line() == null || spot.token().getType() == Token.EOF) {
      return Optional.empty();
    }
    Here here = new Here(view, spot);
    Optional<Hover> special =
        drill(spot, new StandardHover(view.tables()))
            .map(text -> hover(spot.origin(), text))
            .or(() -> length(here))
            .or(() -> property(spot))
            .or(() -> standard(spot))
            .or(() -> name(here))
            .or(() -> place(here))
            .or(() -> line(here));
    return special.or(() -> word(spot)).or(() -> begun(spot));
  }

  private Hover hover(Origin origin, HoverText text) {
    SyntaxTree tree = view.tree();
    return new Hover(tree.start(origin), tree.end(origin), text);
  }

  private Optional<Hover> length(Here here) {
    return LengthHover.text(here)
        .map(shown -> hover(here.spot().section().origin(shown.node()), shown.text()));
  }

  private Optional<Hover> property(Spot spot) {
    boolean word = spot.nearest(HandwheelParser.PropertyContext.class).isPresent();
    return !word || spot.isBroken()
        ? Optional.empty()
        : spot.nearest(HandwheelParser.PropertyLineContext.class)
            .flatMap(line -> PropertyHover.text(view, spot.section(), line, pages))
            .map(text -> hover(spot.origin(), text));
  }

  // ---- Threads, fits, drills, materials ---------------------------------------------------------

  private Optional<Hover> standard(Spot spot) {
    StandardHover standard = new StandardHover(view.tables());
    Optional<HoverText> thread =
        spot.nearest(ThreadContext.class).flatMap(node -> standard.thread(node.getText()));
    Optional<HoverText> text =
        thread
            .or(() -> fit(spot, standard))
            .or(
                () ->
                    spot.nearest(MaterialRefContext.class)
                        .map(node -> node.getText())
                        .filter(name -> !isOwn(name))
                        .flatMap(standard::material));
    return text.map(found -> hover(spot.origin(), found));
  }

  /** Whether the shop describes a material of that name itself: what it says goes first. */
  private boolean isOwn(String name) {
    return view.plan() != null && view.plan().shop().find(Owned.Material.class, name).isPresent();
  }

  /** A drill by number or letter, or by a diameter that one is sold with. */
  private Optional<HoverText> drill(Spot spot, StandardHover standard) {
    Optional<DrillSizeContext> size = spot.nearest(DrillSizeContext.class);
    if (size.isEmpty() || spot.isBroken()) {
      return Optional.empty();
    }
    if (size.get().quantity() == null) {
      return standard.drill(spot.section().origin(size.get()).text());
    }
    return ThingHover.values(view, view.tree())
        .length(spot.section(), size.get().quantity())
        .flatMap(
            dia ->
                view.tables().drills().all().stream()
                    .filter(drill -> drill.diameter().equals(dia))
                    .findFirst())
        .flatMap(drill -> standard.drill(drill.words()));
  }

  private Optional<HoverText> fit(Spot spot, StandardHover standard) {
    Optional<FitContext> fit = spot.nearest(FitContext.class);
    if (fit.isEmpty() || !(fit.get().getParent() instanceof HandwheelParser.HoleDiaContext dia)) {
      return Optional.empty();
    }
    ValueReader values = ThingHover.values(view, view.tree());
    return values
        .length(spot.section(), dia.nominal())
        .flatMap(nominal -> standard.fit(fit.get().getText(), nominal));
  }

  // ---- Names
  // -------------------------------------------------------------------------------------

  private Optional<Hover> name(Here here) {
    Spot spot = here.spot();
    Optional<Hover> declared =
        NameIndex.of(view)
            .at(spot)
            .flatMap(declaration -> new ThingHover(view).text(declaration))
            .map(text -> hover(spot.origin(), withPlace(here, text)));
    return declared.or(() -> dimensionName(here)).or(() -> datum(here));
  }

  /** In a line that cuts holes, a hole's name tells where it is on the dials, too. */
  private HoverText withPlace(Here here, HoverText text) {
    Spot spot = here.spot();
    boolean isHole =
        spot.nearest(HandwheelParser.HoleRefContext.class).isPresent()
            || spot.nearest(HandwheelParser.FurtherHoleRefContext.class).isPresent();
    SetupRun setup = here.setup().orElse(null);
    StepRun step = here.step().orElse(null);
    if (!isHole || view.run() == null || setup == null || step == null) {
      return text;
    }
    HoverText.Builder both = HoverText.titled(text.title());
    HoleHover.addOwn(both, view.run(), setup, step, spot.token().getText());
    return both.addParts(text).build();
  }

  /** A size of the part used in a sum: {@code width/2}. */
  private Optional<Hover> dimensionName(Here here) {
    Spot spot = here.spot();
    boolean inValue =
        spot.nearest(NameContext.class).isPresent()
            && spot.path().stream()
                .anyMatch(
                    rule ->
                        rule instanceof HandwheelParser.FactorContext
                            || rule instanceof HandwheelParser.DivisorContext
                            || rule instanceof HandwheelParser.NominalContext);
    if (!inValue && spot.nearest(DimensionContext.class).isEmpty()) {
      return Optional.empty();
    }
    return dimension(spot.token().getText())
        .map(dimension -> hover(spot.origin(), DimensionHover.text(here, dimension)));
  }

  static Optional<PartDimension> dimension(String word) {
    for (PartDimension dimension : PartDimension.values()) {
      if (dimension.word().equals(word.toLowerCase(Locale.ROOT))) {
        return Optional.of(dimension);
      }
    }
    return Optional.empty();
  }

  private Optional<Hover> datum(Here here) {
    Plan plan = view.plan();
    boolean named =
        here.spot().nearest(FaceOrDatumContext.class).isPresent()
            || here.spot().nearest(HandwheelParser.DatumFaceContext.class).isPresent();
    if (plan == null || plan.part() == null || !named) {
      return Optional.empty();
    }
    String letter = here.spot().token().getText().toUpperCase(Locale.ROOT);
    Face face = plan.part().datums().get(letter);
    return face == null
        ? Optional.empty()
        : Optional.of(
            hover(
                here.spot().origin(),
                HoverText.titled("datum " + letter + ": the " + face.word())
                    .add(FaceHover.text(here, face))
                    .build()));
  }

  // ---- Faces, axes and places
  // ----------------------------------------------------------------------

  private Optional<Hover> place(Here here) {
    Spot spot = here.spot();
    if (spot.isBroken()) {
      // The tree of a broken line may hold anything anywhere.
      return Optional.empty();
    }
    if (spot.nearest(FaceContext.class).isPresent()) {
      Face face = Face.valueOf(spot.token().getText().toUpperCase(Locale.ROOT));
      return Optional.of(hover(spot.origin(), FaceHover.text(here, face)));
    }
    if (spot.nearest(HandwheelParser.AxisContext.class).isPresent()) {
      return Optional.of(hover(spot.origin(), axis(here)));
    }
    if (spot.nearest(HandwheelParser.OperatorPlaceContext.class).isPresent()) {
      String word = spot.token().getText().toUpperCase(Locale.ROOT).replace('-', '_');
      return Optional.of(hover(spot.origin(), operatorPlace(here, Direction.valueOf(word))));
    }
    return Optional.empty();
  }

  private static HoverText axis(Here here) {
    String word = here.spot().token().getText().toUpperCase(Locale.ROOT);
    Axis axis = word.equals("Y") ? Axis.Y : word.equals("Z") ? Axis.Z : Axis.X;
    String way =
        switch (axis) {
          case X -> "along the jaws; + is to your right";
          case Y -> "across the table; + is away from you";
          case Z -> "up and down; + is up";
        };
    HoverText.Builder text = HoverText.titled(axis.name() + ", " + way);
    Owned.@Nullable Machine machine = here.machine();
    Owned.Screw screw = machine == null ? null : machine.screw(axis);
    if (screw != null) {
      text.fact("Dial", DialText.screw(screw));
      text.fact("Backlash", screw.backlash().toString());
      if (screw.travel() != null) {
        text.fact("Travel", screw.travel().toString());
      }
    }
    return text.build();
  }

  private static HoverText operatorPlace(Here here, Direction direction) {
    HoverText.Builder text =
        HoverText.titled("a place at the machine as you stand before it: " + direction.words());
    here.setup()
        .flatMap(setup -> Optional.ofNullable(setup.orientation()))
        .ifPresent(lies -> text.fact("In this setup there is the", lies.facing(direction).word()));
    return text.build();
  }

  // ---- Lines and words
  // --------------------------------------------------------------------------------

  /** The first word of a line tells what the whole line does. */
  private Optional<Hover> line(Here here) {
    Spot spot = here.spot();
    ParserRuleContext parent = spot.parent().orElse(null);
    boolean first = parent != null && parent.getStart() == spot.token();
    if (parent == null || !first) {
      return Optional.empty();
    }
    if (parent instanceof SetupHeaderContext
        || parent instanceof HoldInViseLineContext
        || parent instanceof HoldOnLineContext) {
      return here.setup()
          .map(
              setup -> {
                HoverText.Builder text = HoverText.titled(HoldHover.text(setup).title());
                text.addParts(HoldHover.text(setup));
                if (parent instanceof SetupHeaderContext) {
                  SetupSummary.add(text, view, setup);
                }
                return hover(spot.origin(), withForm(spot, text.build(), parent));
              });
    }
    if (parent instanceof HandwheelParser.MeasureLineContext
        || parent instanceof HandwheelParser.CheckLineContext) {
      return MeasureHover.text(view, spot.section().origin(parent))
          .map(text -> hover(spot.origin(), withForm(spot, text, parent)));
    }
    if (parent instanceof HandwheelParser.GeneralToleranceLineContext
        || parent instanceof HandwheelParser.PlacesToleranceLineContext) {
      return GeneralToleranceHover.text(view)
          .map(text -> hover(spot.origin(), withForm(spot, text, parent)));
    }
    ParserRuleContext named = named(spot, parent);
    if (named != null) {
      return declared(spot, named).map(text -> hover(spot.origin(), withForm(spot, text, parent)));
    }
    if (parent instanceof HoleCutLineContext) {
      SetupRun setup = here.setup().orElse(null);
      StepRun made = here.step().orElse(null);
      return view.run() == null || setup == null || made == null
          ? Optional.empty()
          : HoleHover.text(view.run(), setup, made)
              .map(text -> hover(spot.origin(), withForm(spot, text, parent)));
    }
    if (parent instanceof HandwheelParser.FeatureLineContext) {
      SetupRun setup = here.setup().orElse(null);
      StepRun made = here.step().orElse(null);
      return view.run() == null || setup == null || made == null
          ? Optional.empty()
          : FeatureHover.text(view.run(), setup, made)
              .map(text -> hover(spot.origin(), withForm(spot, text, parent)));
    }
    boolean cut =
        parent instanceof CleanLineContext
            || parent instanceof RoughLineContext
            || parent instanceof FinishLineContext;
    Plan plan = view.plan();
    StepRun step = here.step().orElse(null);
    if (!cut) {
      return step == null ? Optional.empty() : bench(spot, parent, step);
    }
    if (plan == null || step == null || step.cut() == null) {
      return Optional.empty();
    }
    return Optional.of(
        hover(spot.origin(), withForm(spot, CutHover.text(view, plan, step, step.cut()), parent)));
  }

  /** A line that sets dials, locks or the head: how they stand after it. */
  private Optional<Hover> bench(Spot spot, ParserRuleContext line, StepRun step) {
    return form(spot, line)
        .flatMap(
            form -> new BenchHover(view).text(form, step).map(text -> hover(spot.origin(), text)));
  }

  /** The name that a line declares, or that all of it is about. */
  private static @Nullable ParserRuleContext named(Spot spot, ParserRuleContext line) {
    if (line instanceof HandwheelParser.FeatureLineContext feature
        && spot.section().kind() == SectionKind.PART) {
      return feature.featureTarget();
    } else if (line instanceof HandwheelParser.HoleLineContext hole) {
      return hole.name();
    } else if (line instanceof HandwheelParser.PatternLineContext pattern) {
      return pattern.name();
    } else if (line instanceof HandwheelParser.LetLineContext let) {
      return let.name();
    } else if (line instanceof HandwheelParser.OwnHeaderContext own) {
      return own.name();
    } else if (line instanceof HandwheelParser.CutterLineContext cutter) {
      return cutter.cutterRef();
    }
    return null;
  }

  private Optional<HoverText> declared(Spot line, ParserRuleContext name) {
    int offset = view.tree().start(line.section().origin(name));
    return Spot.at(view.tree(), offset)
        .flatMap(NameIndex.of(view)::at)
        .flatMap(declaration -> new ThingHover(view).text(declaration));
  }

  private static Optional<WrittenForms.Form> form(Spot spot, ParserRuleContext node) {
    boolean described =
        node instanceof HandwheelParser.FeatureLineContext
            && spot.section().kind() == SectionKind.PART;
    return described
        ? WrittenForms.ofPart(node.getStart().getText().toLowerCase(Locale.ROOT))
        : WrittenForms.of(node);
  }

  private static HoverText withForm(Spot spot, HoverText text, ParserRuleContext node) {
    HoverText.Builder both = HoverText.titled(text.title());
    both.addParts(text);
    form(spot, node).ifPresent(form -> both.code("Form", form.shown()));
    return both.build();
  }

  /** The first word of a line that cannot be read: how a line is written that begins so. */
  private Optional<Hover> begun(Spot spot) {
    boolean first =
        spot.isBroken() && spot.line() != null && spot.line().getStart() == spot.token();
    return first
        ? Signatures.form(List.of(spot.token()), spot.section().kind())
            .map(form -> HoverText.titled(form.shown()).note(form.meaning()).build())
            .map(text -> hover(spot.origin(), text))
        : Optional.empty();
  }

  private Optional<Hover> word(Spot spot) {
    for (int i = spot.path().size() - 1; i >= 0; i--) {
      Optional<WrittenForms.Form> form = form(spot, spot.path().get(i));
      if (form.isPresent()) {
        return form.map(
            found ->
                hover(
                    spot.origin(), HoverText.titled(found.shown()).note(found.meaning()).build()));
      }
    }
    return Optional.empty();
  }

  /** The rule that a comment silences. */
  private Optional<Hover> ignore(Spot spot) {
    for (Ignore ignore : spot.section().ignores()) {
      if (ignore.origin().equals(spot.origin())) {
        String paragraph = pages.page(ignore.rule()).map(RulePages::firstParagraph).orElse("");
        HoverText.Builder text =
            HoverText.titled("silences the rule " + ignore.rule() + " on one line");
        if (!paragraph.isEmpty()) {
          text.markup(paragraph);
        }
        text.code("Written", "# ignore RULE: reason");
        return Optional.of(hover(spot.origin(), text.build()));
      }
    }
    return Optional.empty();
  }
}
