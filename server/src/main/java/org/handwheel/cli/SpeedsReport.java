package org.handwheel.cli;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeMap;
import org.handwheel.cli.Amounts.Size;
import org.handwheel.cli.Amounts.Speeds;
import org.handwheel.model.Owned;
import org.handwheel.shop.cutting.Feed.HandFeed;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.work.CuttingConditions;
import org.handwheel.work.CuttingConditions.Chip;
import org.handwheel.work.CuttingConditions.Load;
import org.handwheel.work.CuttingConditions.Spindle;
import org.handwheel.work.CuttingConditions.Tool;
import org.handwheel.work.CuttingConditions.ToothFeed;
import org.handwheel.work.KnownMaterial;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.feature.FeatureBite;
import org.jspecify.annotations.Nullable;

/**
 * Cutting conditions for people and for programs.
 *
 * @param plan the plan whose cuts they are, or nothing for a single case
 * @param holes the lines on holes, tool by tool
 * @param findings how many findings the plan has
 */
record SpeedsReport(@Nullable String plan, List<Case> cases, List<HoleSpeeds> holes, int findings) {
  static final String CAUTION =
      "Speeds and feeds are starting points: the machine maker's manual and local rules come"
          + " first. Wear eye protection, no gloves and nothing loose near a turning spindle;"
          + " take the key out, and see that the work is held, before it turns.";

  SpeedsReport {
    cases = List.copyOf(cases);
    holes = List.copyOf(holes);
  }

  /**
   * One cut.
   *
   * @param line its line in the plan, from 1
   * @param text the line itself
   * @param cutter the cutter's name in the shop
   * @param takes how much a cut along a feature takes at once, in words
   */
  record Case(
      @Nullable Integer line,
      @Nullable String text,
      @Nullable String cutter,
      @Nullable String takes,
      CuttingConditions conditions) {
    static Case of(SyntaxTree tree, StepRun step, CuttingConditions conditions) {
      return new Case(
          tree.line(step.step().origin()) + 1,
          step.step().origin().text().strip(),
          cutterOf(step),
          takesOf(step),
          conditions);
    }
  }

  private static @Nullable String takesOf(StepRun step) {
    return step.feature() == null
        ? null
        : step.feature().bite().map(FeatureBite::words).orElse(null);
  }

  private static @Nullable String cutterOf(StepRun step) {
    if (step.cut() != null) {
      return step.cut().cutter().name();
    }
    return step.feature() == null || step.feature().cutter() == null
        ? null
        : step.feature().cutter().name();
  }

  // ---- Text

  List<String> lines(int width) {
    List<String> lines = new ArrayList<>();
    boolean none = cases.isEmpty() && holes.isEmpty();
    if (plan != null && none) {
      lines.addAll(Wrapping.wrap("", "", plan + ": no cut of it can be worked out.", width));
    }
    for (Facts facts : inOrder()) {
      lines.addAll(facts.lines(width));
      lines.add("");
    }
    for (String source : sources()) {
      lines.addAll(Wrapping.wrap("", "  ", source, width));
    }
    if (!none) {
      lines.add("");
    }
    if (findings > 0) {
      String words = findings == 1 ? "1 finding" : findings + " findings";
      lines.addAll(
          Wrapping.wrap("", "", "The plan has " + words + ": see handwheel check " + plan, width));
    }
    lines.addAll(Wrapping.wrap("", "", CAUTION, width));
    return lines;
  }

  /** Cuts and holes by their lines. */
  private List<Facts> inOrder() {
    TreeMap<Integer, List<Facts>> byLine = new TreeMap<>();
    cases.forEach(
        one ->
            byLine
                .computeIfAbsent(one.line() == null ? 0 : one.line(), line -> new ArrayList<>())
                .add(facts(one)));
    holes.forEach(
        one ->
            byLine
                .computeIfAbsent(one.line() == null ? 0 : one.line(), line -> new ArrayList<>())
                .add(one.facts()));
    return byLine.values().stream().flatMap(List::stream).toList();
  }

  private static Facts facts(Case one) {
    CuttingConditions conditions = one.conditions();
    Facts facts = new Facts(title(one));
    if (one.line() != null) {
      facts.add("cutter", cutter(one));
    }
    if (one.takes() != null) {
      facts.add("takes", one.takes());
    }
    facts.add(
        "cutting speed",
        conditions.usualSpeed() == null
            ? "not known for this material"
            : Amounts.surfaceSpeeds(conditions.usualSpeed()) + " is usual");
    Spindle spindle = conditions.spindle();
    if (spindle != null) {
      facts.add("spindle", spindle(conditions, spindle));
    }
    ToothFeed feed = conditions.feed();
    facts.add("feed", feed == null ? "not known for this material" : feed(feed));
    if (conditions.table() != null) {
      facts.add("table feed", Amounts.tableFeed(conditions.table().millimetresPerMinute()));
      HandFeed hand = conditions.table().hand();
      if (hand != null) {
        facts.add("by hand, " + conditions.asked().travel().word(), hand(hand));
      }
    }
    if (feed != null && feed.chip() != null) {
      facts.add("chip", chip(feed.chip()));
    }
    if (conditions.load() != null) {
      load(facts, conditions, conditions.load());
    }
    return facts;
  }

  private static String title(Case one) {
    if (one.line() != null) {
      return "line " + one.line() + ": " + one.text();
    }
    KnownMaterial material = one.conditions().asked().material();
    return (material == null ? "unknown material" : material.words()) + ", " + cutter(one);
  }

  private static String cutter(Case one) {
    Tool tool = one.conditions().asked().tool();
    String kind = tool.kind().name().toLowerCase(Locale.ROOT).replace('_', ' ');
    return (one.cutter() == null ? "" : one.cutter() + ", ")
        + kind
        + " "
        + tool.dia()
        + ", "
        + tool.teeth()
        + (tool.teeth() == 1 ? " tooth, " : " teeth, ")
        + KnownMaterial.standard(tool.madeOf()).words();
  }

  private static String spindle(CuttingConditions conditions, Spindle spindle) {
    return Amounts.rpm(spindle.turnsPerMinute())
        + ", "
        + from(spindle, conditions.asked().machine())
        + "; "
        + Amounts.surfaceSpeed(spindle.metresPerMinute())
        + " at the edge";
  }

  /** Where a spindle speed comes from, in words. */
  static String from(Spindle spindle, Owned.@Nullable Machine machine) {
    String name = machine == null ? "the machine" : machine.name();
    String wanted = spindle.wanted() == null ? "" : Amounts.rpm(spindle.wanted());
    return switch (spindle.from()) {
      case STATED -> "as given" + (wanted.isEmpty() ? "" : ", " + wanted + " wanted");
      case STEP -> "the step of " + name + " next below the " + wanted + " wanted";
      case SLOWEST_STEP -> "the slowest step of " + name + ", above the " + wanted + " wanted";
      case WANTED -> "for the middle of that";
      case TOP_SPEED -> "the top speed of " + name + ", below the " + wanted + " wanted";
    };
  }

  private static String feed(ToothFeed feed) {
    String usual = feed.usual() == null ? "" : feed.usual().toString();
    String from =
        switch (feed.from()) {
          case STATED -> ", as given" + (usual.isEmpty() ? "" : "; usual is " + usual);
          case USUAL -> "";
          case RAISED -> ", more than the usual " + usual + " so that the chip is not too thin";
          case BY_HAND -> ", as fast as a hand keeps up; usual is " + usual;
        };
    return feed.perTooth() + " a tooth" + from;
  }

  static String hand(HandFeed hand) {
    String words =
        "one turn in "
            + Amounts.figures(hand.secondsPerTurn())
            + " s, "
            + Amounts.figures(hand.divisionsPerSecond())
            + " divisions a second";
    if (hand.isTooFastToCrank()) {
      return words + ": too fast to keep up by hand";
    }
    return hand.isTooSlowToKeepSteady() ? words + ": slow to keep steady by hand" : words;
  }

  private static String chip(Chip chip) {
    return "at most "
        + chip.greatest()
        + " thick, "
        + (chip.factor() > 0.995
            ? "as much as the feed; "
            : Amounts.figures(chip.factor(), 2) + " of the feed; ")
        + chip.mean()
        + " on the average";
  }

  private static void load(Facts facts, CuttingConditions conditions, Load load) {
    facts.add("metal removed", Amounts.removal(load.cubicCentimetresPerMinute()));
    Owned.Machine machine = conditions.asked().machine();
    Double inHand = conditions.powerInHand();
    facts.add(
        "power",
        Amounts.power(load.motorKilowatts())
            + (machine == null || inHand == null
                ? " of the motor"
                : " of the motor's "
                    + Amounts.power(machine.watts() / 1000)
                    + (inHand < 1 ? ": more than it gives" : "")));
    facts.add(
        "torque",
        Amounts.torque(load.torque())
            + " at the spindle"
            + (load.greatestTorque() == null
                ? ""
                : ", of " + Amounts.torque(load.greatestTorque())));
    facts.add("force", Amounts.force(load.cuttingForce()) + " at the edge while a tooth cuts");
    if (load.deflection() != null && conditions.asked().tool().stickOut() != null) {
      facts.add(
          "bends",
          "at most "
              + load.deflection()
              + " at the tip, standing out "
              + conditions.asked().tool().stickOut());
    }
  }

  /** Where the figures come from, each source once. */
  private Set<String> sources() {
    Set<String> sources = new LinkedHashSet<>();
    for (Case one : cases) {
      KnownMaterial material = one.conditions().asked().material();
      if (material == null) {
        continue;
      }
      if (one.conditions().usualSpeed() != null) {
        sources.add(
            "Speeds: " + material.speedSource(one.conditions().asked().tool().madeOf()) + ".");
      }
      if (one.conditions().feed() != null && one.conditions().feed().usual() != null) {
        sources.add("Feeds: " + material.feedSource() + ".");
      }
      if (one.conditions().load() != null) {
        sources.add("Material: " + material.forceSource() + ".");
      }
    }
    holes.forEach(one -> sources.addAll(one.sources()));
    return sources;
  }

  // ---- JSON

  String json() {
    return Json.of(
        new Root(
            1,
            plan,
            plan == null ? null : findings,
            cases.stream().map(SpeedsReport::json).toList(),
            holes.stream().map(HoleSpeeds::json).toList(),
            List.copyOf(sources()),
            CAUTION));
  }

  private static JsonCut json(Case one) {
    CuttingConditions all = one.conditions();
    Tool tool = all.asked().tool();
    return new JsonCut(
        one.line(),
        one.text(),
        all.asked().material() == null ? null : all.asked().material().name(),
        all.asked().machine() == null ? null : all.asked().machine().name(),
        new JsonCutter(
            one.cutter(),
            word(tool.kind()),
            Size.of(tool.dia()),
            tool.teeth(),
            word(tool.madeOf()),
            Size.ofNullable(tool.stickOut())),
        all.usualSpeed() == null ? null : Speeds.of(all.usualSpeed()),
        all.spindle() == null ? null : json(all.spindle()),
        all.feed() == null ? null : json(all.feed()),
        all.table() == null ? null : Amounts.round(all.table().millimetresPerMinute()),
        all.table() == null || all.table().hand() == null
            ? null
            : new JsonHand(
                all.asked().travel().word(),
                Amounts.round(all.table().hand().secondsPerTurn()),
                Amounts.round(all.table().hand().divisionsPerSecond())),
        all.load() == null ? null : json(all.load(), all.asked().machine()));
  }

  private static JsonSpindle json(Spindle spindle) {
    return new JsonSpindle(
        Amounts.round(spindle.turnsPerMinute()),
        Amounts.roundNullable(spindle.wanted()),
        word(spindle.from()),
        Amounts.round(spindle.metresPerMinute()));
  }

  private static JsonFeed json(ToothFeed feed) {
    Chip chip = feed.chip();
    return new JsonFeed(
        Size.of(feed.perTooth()),
        word(feed.from()),
        Size.ofNullable(feed.usual()),
        chip == null
            ? null
            : new JsonChip(
                Amounts.round(chip.factor()), Size.of(chip.greatest()), Size.of(chip.mean())));
  }

  private static JsonLoad json(Load load, Owned.@Nullable Machine machine) {
    return new JsonLoad(
        Amounts.round(load.cubicCentimetresPerMinute()),
        Amounts.round(load.specificForce()),
        Amounts.round(load.cutterKilowatts()),
        Amounts.round(load.motorKilowatts()),
        machine == null || machine.watts() <= 0 ? null : Amounts.round(machine.watts() / 1000),
        Amounts.round(load.torque()),
        Amounts.roundNullable(load.greatestTorque()),
        Amounts.round(load.tangentialForce()),
        Amounts.round(load.cuttingForce()),
        Size.ofNullable(load.deflection()));
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private record Root(
      int version,
      @Nullable String plan,
      @Nullable Integer findings,
      List<JsonCut> cuts,
      List<HoleSpeeds.JsonHole> holes,
      List<String> sources,
      String caution) {}

  private record JsonCut(
      @Nullable Integer line,
      @Nullable String text,
      @Nullable String material,
      @Nullable String machine,
      JsonCutter cutter,
      @Nullable Speeds usualSpeed,
      @Nullable JsonSpindle spindle,
      @Nullable JsonFeed feed,
      @Nullable BigDecimal tableFeedMmPerMin,
      @Nullable JsonHand hand,
      @Nullable JsonLoad load) {}

  private record JsonCutter(
      @Nullable String name,
      String kind,
      Size dia,
      int teeth,
      String madeOf,
      @Nullable Size stickOut) {}

  private record JsonSpindle(
      BigDecimal rpm, @Nullable BigDecimal wantedRpm, String from, BigDecimal mPerMin) {}

  private record JsonFeed(
      Size perTooth, String from, @Nullable Size usual, @Nullable JsonChip chip) {}

  private record JsonChip(BigDecimal factor, Size greatest, Size mean) {}

  private record JsonHand(String axis, BigDecimal secondsPerTurn, BigDecimal divisionsPerSecond) {}

  private record JsonLoad(
      BigDecimal removalCm3PerMin,
      BigDecimal specificForceNPerMm2,
      BigDecimal cutterKw,
      BigDecimal motorKw,
      @Nullable BigDecimal motorPowerKw,
      BigDecimal torqueNm,
      @Nullable BigDecimal greatestTorqueNm,
      BigDecimal tangentialForceN,
      BigDecimal cuttingForceN,
      @Nullable Size deflection) {}
}
