package org.handwheel.cli;

import java.math.BigDecimal;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.handwheel.cli.Amounts.Range;
import org.handwheel.cli.Amounts.Size;
import org.handwheel.cli.Amounts.Speeds;
import org.handwheel.model.Owned;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.cutting.Feed.HandFeed;
import org.handwheel.shop.drill.HoleRates.Operation;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.work.CuttingConditions.Spindle;
import org.handwheel.work.KnownMaterial;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.HoleCalculator;
import org.handwheel.work.hole.HoleCalculator.Group;
import org.handwheel.work.hole.HoleConditions;
import org.handwheel.work.hole.HoleConditions.Asked;
import org.handwheel.work.hole.HoleConditions.TurnFeed;
import org.jspecify.annotations.Nullable;

/**
 * Speeds and feeds of one tool in holes, for people and for programs.
 *
 * @param line its line in the plan, from 1
 * @param text the line itself
 * @param holes which holes; empty for a single case
 */
record HoleSpeeds(
    @Nullable Integer line, @Nullable String text, List<String> holes, HoleConditions conditions) {
  static final String TAP_NOTE =
      "Under power only with a tapping attachment, or a spindle that reverses at once";

  HoleSpeeds {
    holes = List.copyOf(holes);
  }

  static HoleSpeeds of(SyntaxTree tree, StepRun step, Group group) {
    return new HoleSpeeds(
        tree.line(step.step().origin()) + 1,
        step.step().origin().text().strip(),
        group.holes(),
        group.conditions());
  }

  // ---- Text

  Facts facts() {
    Asked asked = conditions.asked();
    Facts facts = new Facts(title());
    if (line != null) {
      facts.add("tool", tool());
      facts.add("holes", String.join(", ", holes));
    }
    if (asked.byHand()) {
      facts.add("spindle", "stopped: the tool is turned by hand");
    } else {
      facts.add(
          "cutting speed",
          conditions.usualSpeed() == null
              ? "not known for this material"
              : Amounts.surfaceSpeeds(conditions.usualSpeed()) + " is usual" + deep());
      if (conditions.spindle() != null) {
        facts.add("spindle", spindle(conditions.spindle()));
      }
    }
    feed(facts);
    if (conditions.turns() != null) {
      facts.add("turns", Amounts.figures(conditions.turns()) + " to depth");
    }
    if (conditions.pecks() > 1) {
      facts.add("pecks", conditions.pecks() + ": out for chips between");
    }
    if (conditions.seconds() != null) {
      facts.add(
          "cutting",
          Amounts.figures(conditions.seconds(), 2)
              + " s a hole, "
              + asked.travel()
              + " of travel in the work");
    }
    load(facts);
    if (asked.verb() == HoleVerb.TAP && !asked.byHand()) {
      facts.add("caution", TAP_NOTE);
    }
    return facts;
  }

  private String title() {
    if (line != null) {
      return "line " + line + ": " + text;
    }
    KnownMaterial material = conditions.asked().material();
    return (material == null ? "unknown material" : material.words())
        + ", "
        + word(conditions.asked().verb())
        + " "
        + conditions.asked().dia();
  }

  private String tool() {
    Asked asked = conditions.asked();
    String dia = asked.dia().toString();
    return asked.bit().name().equals(dia) ? dia : asked.bit().name() + ", " + dia;
  }

  private String deep() {
    int deep = conditions.asked().diametersDeep();
    double factor = HoleCalculator.deepSpeed(conditions.asked());
    return factor == 1 ? "" : "; " + Amounts.figures(factor) + " of it " + deep + " diameters deep";
  }

  private String spindle(Spindle spindle) {
    return Amounts.rpm(spindle.turnsPerMinute())
        + ", "
        + SpeedsReport.from(spindle, conditions.asked().machine())
        + "; "
        + Amounts.surfaceSpeed(spindle.metresPerMinute())
        + " at the edge";
  }

  private void feed(Facts facts) {
    TurnFeed feed = conditions.feed();
    if (feed == null) {
      return;
    }
    facts.add(
        "feed",
        feed.perTurn()
            + " a turn"
            + switch (feed.from()) {
              case STATED ->
                  ", as given" + (feed.usual() == null ? "" : "; usual is " + feed.usual());
              case USUAL -> feed.usual() == null ? "" : "; usual is " + feed.usual();
              case BY_HAND -> ", as fast as a hand keeps up; usual is " + feed.usual();
              case MOTOR -> ", all that the motor gives; usual is " + feed.usual();
              case PITCH -> ", its pitch";
            });
    if (conditions.down() == null) {
      return;
    }
    facts.add("down", Amounts.tableFeed(conditions.down().millimetresPerMinute()));
    HandFeed hand = conditions.down().hand();
    Owned.Machine machine = conditions.asked().machine();
    if (hand != null && machine != null) {
      String moves = machine.zDrive().name().toLowerCase(Locale.ROOT);
      facts.add("z handle", SpeedsReport.hand(hand) + " (it moves the " + moves + ")");
    }
  }

  private void load(Facts facts) {
    HoleConditions.Load load = conditions.load();
    Owned.Machine machine = conditions.asked().machine();
    if (load == null) {
      return;
    }
    String power = Amounts.power(load.motorKilowatts());
    if (machine == null || machine.watts() <= 0) {
      facts.add("power", power + " of the motor, with a sharp drill");
    } else {
      double most = machine.watts() / 1000;
      String words = power + " of the motor's " + Amounts.power(most) + ", with a sharp drill";
      facts.add("power", words + (load.motorKilowatts() > most ? ": more than it gives" : ""));
    }
    facts.add("torque", Amounts.torque(load.torque()) + " at the spindle");
  }

  /** Where the figures come from, each source once. */
  Set<String> sources() {
    StandardTables tables = StandardTables.builtIn();
    Asked asked = conditions.asked();
    Set<String> sources = new LinkedHashSet<>();
    KnownMaterial material = asked.material();
    if (conditions.usualSpeed() != null && material != null) {
      sources.add(
          asked.verb() == HoleVerb.BORE
              ? "Boring speeds: " + material.speedSource(asked.madeOf()) + "."
              : "Drilling speeds: " + material.drillSource() + ".");
    }
    Operation operation = operation(asked.verb());
    if (operation != null && conditions.usualSpeed() != null) {
      sources.add(
          capital(word(asked.verb()))
              + ", from the drill's speed and feed: "
              + tables.holeRates().share(operation).provenance()
              + ".");
    }
    if (conditions.feed() != null && conditions.feed().usual() != null) {
      if (asked.verb() == HoleVerb.BORE) {
        sources.add("Boring feed: " + tables.holeRates().boring().provenance() + ".");
      } else {
        tables
            .drilling()
            .feedPerTurn(asked.dia())
            .ifPresent(feed -> sources.add("Drill feeds: " + feed.provenance() + "."));
      }
    }
    if (conditions.load() != null && material != null) {
      sources.add("Material: " + material.forceSource() + ".");
    }
    return sources;
  }

  private static @Nullable Operation operation(HoleVerb verb) {
    return switch (verb) {
      case DRILL, BORE -> null;
      case SPOT -> Operation.SPOT;
      case REAM -> Operation.REAM;
      case TAP -> Operation.TAP;
      case COUNTERBORE -> Operation.COUNTERBORE;
      case COUNTERSINK -> Operation.COUNTERSINK;
    };
  }

  private static String capital(String word) {
    return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
  }

  // ---- JSON

  JsonHole json() {
    Asked asked = conditions.asked();
    Spindle spindle = conditions.spindle();
    TurnFeed feed = conditions.feed();
    HandFeed hand = conditions.down() == null ? null : conditions.down().hand();
    return new JsonHole(
        line,
        text,
        word(asked.verb()),
        holes,
        asked.material() == null ? null : asked.material().name(),
        asked.machine() == null ? null : asked.machine().name(),
        asked.bit().name(),
        Size.of(asked.dia()),
        Size.ofNullable(asked.depth()),
        asked.byHand(),
        conditions.usualSpeed() == null ? null : Speeds.of(conditions.usualSpeed()),
        spindle == null ? null : Amounts.round(spindle.turnsPerMinute()),
        spindle == null ? null : Amounts.roundNullable(spindle.wanted()),
        spindle == null ? null : word(spindle.from()),
        feed == null ? null : Size.of(feed.perTurn()),
        feed == null ? null : word(feed.from()),
        feed == null || feed.usual() == null ? null : Range.of(feed.usual()),
        conditions.down() == null ? null : Amounts.round(conditions.down().millimetresPerMinute()),
        hand == null ? null : Amounts.round(hand.secondsPerTurn()),
        hand == null ? null : Amounts.round(hand.divisionsPerSecond()),
        Amounts.roundNullable(conditions.seconds()),
        conditions.pecks(),
        Amounts.roundNullable(conditions.turns()),
        conditions.load() == null ? null : Amounts.round(conditions.load().torque()),
        conditions.load() == null ? null : Amounts.round(conditions.load().motorKilowatts()));
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  record JsonHole(
      @Nullable Integer line,
      @Nullable String text,
      String operation,
      List<String> holes,
      @Nullable String material,
      @Nullable String machine,
      String tool,
      Size dia,
      @Nullable Size depth,
      boolean byHand,
      @Nullable Speeds usualSpeed,
      @Nullable BigDecimal rpm,
      @Nullable BigDecimal wantedRpm,
      @Nullable String speedFrom,
      @Nullable Size perTurn,
      @Nullable String feedFrom,
      @Nullable Range usualPerTurn,
      @Nullable BigDecimal downMmPerMin,
      @Nullable BigDecimal zSecondsPerTurn,
      @Nullable BigDecimal zDivisionsPerSecond,
      @Nullable BigDecimal seconds,
      long pecks,
      @Nullable BigDecimal turns,
      @Nullable BigDecimal torqueNm,
      @Nullable BigDecimal motorKw) {}
}
