package org.handwheel.work.hole;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.model.Axis;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.model.Owned;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.model.Step.HoleWay;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.cutting.CuttingPower;
import org.handwheel.shop.cutting.DrillingPower;
import org.handwheel.shop.cutting.Feed;
import org.handwheel.shop.cutting.Feed.HandFeed;
import org.handwheel.shop.cutting.SpindleSpeed;
import org.handwheel.shop.drill.DrillPoint;
import org.handwheel.shop.drill.Drilling;
import org.handwheel.shop.drill.HoleRates.Operation;
import org.handwheel.shop.drill.HoleRates.Share;
import org.handwheel.shop.material.DrillSpeeds.FeedShare;
import org.handwheel.shop.material.SpecificForce;
import org.handwheel.shop.material.SpeedRange;
import org.handwheel.units.Dimension;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;
import org.handwheel.units.Quantity;
import org.handwheel.work.CuttingCalculator;
import org.handwheel.work.CuttingConditions.SpeedFrom;
import org.handwheel.work.CuttingConditions.Spindle;
import org.handwheel.work.CuttingConditions.TableFeed;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.HoleConditions.Asked;
import org.handwheel.work.hole.HoleConditions.Load;
import org.handwheel.work.hole.HoleConditions.TurnFeed;
import org.handwheel.work.hole.HoleConditions.TurnFrom;
import org.jspecify.annotations.Nullable;

/**
 * Works out {@link HoleConditions}; pure functions.
 *
 * <p>A drill takes the drilling speeds of the material and the usual feed for its diameter, both
 * less in a deep hole; other tools take a share of them. A boring head takes the milling speed.
 */
public final class HoleCalculator {
  private final StandardTables tables;
  private final Limits limits;

  public HoleCalculator(StandardTables tables, Limits limits) {
    this.tables = tables;
    this.limits = limits;
  }

  /** The holes of a line that one tool makes alike, and how. */
  public record Group(List<String> holes, HoleConditions conditions) {
    public Group {
      holes = List.copyOf(holes);
    }
  }

  /**
   * The conditions of a line on holes, tool by tool; like holes stand together. Nothing for tools
   * whose diameter is not known.
   */
  public static List<Group> of(PlanRun run, StepRun step, StandardTables tables) {
    HoleRun made = step.holes();
    if (made == null) {
      return List.of();
    }
    HoleCalculator calculator = new HoleCalculator(tables, run.plan().shop().limits());
    Map<Asked, List<String>> alike = new LinkedHashMap<>();
    made.results()
        .filter(result -> result.side() != HoleRun.Side.NONE)
        .forEach(
            result ->
                asked(run, made, result)
                    .ifPresent(
                        asked ->
                            alike.merge(
                                asked, List.of(result.hole().name()), HoleCalculator::both)));
    return alike.entrySet().stream()
        .map(entry -> new Group(entry.getValue(), calculator.work(entry.getKey())))
        .toList();
  }

  private static List<String> both(List<String> first, List<String> second) {
    return Stream.concat(first.stream(), second.stream()).toList();
  }

  private static Optional<Asked> asked(PlanRun run, HoleRun made, HoleRun.Result result) {
    Length dia = result.bit().dia();
    if (dia == null || !dia.isPositive()) {
      return Optional.empty();
    }
    HoleWay way = made.cut().way();
    Length bore = result.before().bore();
    return Optional.of(
        new Asked(
            made.cut().verb(),
            run.material(),
            run.plan().machine(),
            result.bit(),
            dia,
            bore == null ? Length.ZERO : Length.min(bore, dia),
            result.depth(),
            result.tip(),
            result.hole().thread() == null ? null : result.hole().thread().pitch(),
            way.tool() != null && way.tool().value() instanceof Owned.Cutter cutter
                ? cutter.madeOf()
                : Owned.ToolMaterial.HSS,
            way.byHand(),
            way.peck() == null ? null : way.peck().value(),
            way.rpm() == null ? null : way.rpm().value(),
            way.feed() == null ? null : way.feed().value()));
  }

  /** Works out what can be said. */
  public HoleConditions work(Asked asked) {
    SpeedRange usual = usualSpeed(asked);
    Spindle spindle = asked.byHand() ? null : spindle(asked, usual);
    TurnFeed feed = feed(asked, spindle);
    TableFeed down = spindle == null || feed == null ? null : down(asked, spindle, feed);
    Double seconds =
        down == null || asked.travel() == null || !asked.travel().isPositive()
            ? null
            : Double.valueOf(60 * asked.travel().millimetres() / down.millimetresPerMinute());
    return new HoleConditions(
        asked,
        usual,
        spindle,
        feed,
        down,
        seconds,
        pecks(asked),
        turns(asked),
        load(asked, spindle, feed));
  }

  // ---- Speed

  private @Nullable SpeedRange usualSpeed(Asked asked) {
    if (asked.material() == null) {
      return null;
    }
    if (asked.verb() == HoleVerb.BORE) {
      return asked.material().speeds(asked.madeOf()).orElse(null);
    }
    Optional<SpeedRange> drilling = asked.material().drillSpeeds();
    Share share = share(asked.verb());
    return (share == null ? drilling : drilling.map(share::of)).orElse(null);
  }

  private @Nullable Share share(HoleVerb verb) {
    return switch (verb) {
      case DRILL, BORE -> null;
      case SPOT -> tables.holeRates().share(Operation.SPOT);
      case REAM -> tables.holeRates().share(Operation.REAM);
      case TAP -> tables.holeRates().share(Operation.TAP);
      case COUNTERBORE -> tables.holeRates().share(Operation.COUNTERBORE);
      case COUNTERSINK -> tables.holeRates().share(Operation.COUNTERSINK);
    };
  }

  private static @Nullable Spindle spindle(Asked asked, @Nullable SpeedRange usual) {
    Double wanted =
        usual == null
            ? null
            : Double.valueOf(
                SpindleSpeed.turnsPerMinute(usual.middle() * deepSpeed(asked), asked.dia()));
    if (asked.rpm() != null) {
      return new Spindle(
          asked.rpm(),
          wanted,
          SpeedFrom.STATED,
          SpindleSpeed.metresPerMinute(asked.rpm(), asked.dia()));
    }
    return wanted == null ? null : CuttingCalculator.fitting(asked.machine(), wanted, asked.dia());
  }

  /** The share of the speed to keep in a deep hole; 1 for tools other than drills. */
  public static double deepSpeed(Asked asked) {
    Length depth = drilled(asked);
    return depth == null ? 1 : Drilling.deepHoleSpeedFactor(depth, asked.dia());
  }

  private static double deepFeed(Asked asked) {
    Length depth = drilled(asked);
    return depth == null ? 1 : Drilling.deepHoleFeedFactor(depth, asked.dia());
  }

  private static @Nullable Length drilled(Asked asked) {
    Length depth = asked.depth();
    return asked.verb() == HoleVerb.DRILL && depth != null && !depth.isNegative() ? depth : null;
  }

  // ---- Feed

  private @Nullable TurnFeed feed(Asked asked, @Nullable Spindle spindle) {
    LengthRange usual = asked.byHand() ? null : usualFeed(asked);
    Quantity stated = asked.feed();
    if (stated != null) {
      Length perTurn = perTurn(stated, spindle);
      return perTurn == null ? null : new TurnFeed(perTurn, TurnFrom.STATED, usual);
    }
    if (asked.verb() == HoleVerb.TAP) {
      return asked.pitch() == null ? null : new TurnFeed(asked.pitch(), TurnFrom.PITCH, null);
    }
    if (usual == null) {
      return null;
    }
    FeedShare share = asked.material() == null ? FeedShare.LOW : asked.material().drillFeed();
    Length start =
        switch (share) {
          case LOW -> usual.low();
          case MIDDLE -> usual.middle();
          case HIGH -> usual.high();
        };
    return held(asked, spindle, new TurnFeed(start, TurnFrom.USUAL, usual));
  }

  /** The feed, lowered to what a hand winds and the motor gives. */
  private TurnFeed held(Asked asked, @Nullable Spindle spindle, TurnFeed usual) {
    TurnFeed feed = usual;
    Owned.Machine machine = asked.machine();
    if (machine == null || spindle == null || spindle.turnsPerMinute() <= 0) {
      return feed;
    }
    Owned.Screw screw = machine.screw(Axis.Z);
    if (screw != null && screw.lead().isPositive()) {
      Length windable =
          Length.ofMillimetres(
              60 * screw.lead().millimetres() / Feed.FASTEST_CRANKING / spindle.turnsPerMinute());
      feed = lowered(feed, windable, TurnFrom.BY_HAND);
    }
    SpecificForce force = asked.material() == null ? null : asked.material().force().orElse(null);
    Load load = load(asked, spindle, feed);
    if (load != null && force != null && machine.watts() > 0) {
      double share = machine.watts() / 1000 / load.motorKilowatts();
      // The torque rises with the feed to the power of 1 - mc: a thin chip is dear.
      double least = Math.pow(share, 1 / (1 - force.mc()));
      feed = lowered(feed, scaled(feed.perTurn(), Math.min(1, least)), TurnFrom.MOTOR);
    }
    return feed;
  }

  private static TurnFeed lowered(TurnFeed feed, Length most, TurnFrom from) {
    return feed.perTurn().isMoreThan(most) && most.isPositive()
        ? new TurnFeed(most, from, feed.usual())
        : feed;
  }

  private static @Nullable Length perTurn(Quantity stated, @Nullable Spindle spindle) {
    if (stated.is(Dimension.FEED_PER_REV)) {
      return Length.of(stated.value(), LengthUnit.MM);
    }
    return spindle == null || spindle.turnsPerMinute() <= 0
        ? null
        : Length.ofMillimetres(stated.value().doubleValue() / spindle.turnsPerMinute());
  }

  /** The usual feeds of the tool; from cautious to brisk. */
  private @Nullable LengthRange usualFeed(Asked asked) {
    if (asked.verb() == HoleVerb.BORE) {
      return tables.holeRates().boring().perTurn();
    }
    if (asked.verb() == HoleVerb.TAP) {
      return null;
    }
    Share share = share(asked.verb());
    double low = share == null ? deepFeed(asked) : share.feedLeast();
    double high = share == null ? deepFeed(asked) : share.feedMost();
    return tables
        .drilling()
        .feedPerTurn(asked.dia())
        .map(
            drill ->
                new LengthRange(
                    scaled(drill.perTurn().low(), low), scaled(drill.perTurn().high(), high)))
        .orElse(null);
  }

  private static Length scaled(Length length, double factor) {
    return Length.ofMillimetres(length.millimetres() * factor);
  }

  private static @Nullable TableFeed down(Asked asked, Spindle spindle, TurnFeed feed) {
    double perMinute = feed.perTurn().millimetres() * spindle.turnsPerMinute();
    if (!(perMinute > 0)) {
      return null;
    }
    Owned.Screw screw = asked.machine() == null ? null : asked.machine().screw(Axis.Z);
    HandFeed hand =
        screw == null || !screw.lead().isPositive()
            ? null
            : Feed.byHand(perMinute, screw.lead(), screw.divisions());
    return new TableFeed(perMinute, hand);
  }

  // ---- Pecks, turns, load

  private static long pecks(Asked asked) {
    if (asked.verb() != HoleVerb.DRILL || asked.depth() == null || !asked.depth().isPositive()) {
      return 1;
    }
    return asked.peck() != null && asked.peck().isPositive()
        ? Math.max(1, asked.depth().stepsOf(asked.peck()))
        : Math.max(1, Drilling.pecks(asked.depth(), asked.dia()));
  }

  private static @Nullable Double turns(Asked asked) {
    if (asked.verb() != HoleVerb.TAP || asked.pitch() == null || asked.depth() == null) {
      return null;
    }
    BigFraction turns = asked.depth().over(asked.pitch());
    return turns.signum() > 0 ? Double.valueOf(turns.doubleValue()) : null;
  }

  private @Nullable Load load(Asked asked, @Nullable Spindle spindle, @Nullable TurnFeed feed) {
    SpecificForce force = asked.material() == null ? null : asked.material().force().orElse(null);
    if (asked.verb() != HoleVerb.DRILL
        || spindle == null
        || feed == null
        || force == null
        || !feed.perTurn().isPositive()) {
      return null;
    }
    DrillPoint point = asked.bit().point() == null ? DrillPoint.GENERAL : asked.bit().point();
    double torque = DrillingPower.torque(force, feed.perTurn(), asked.dia(), asked.bore(), point);
    double kilowatts = torque * 2 * Math.PI * spindle.turnsPerMinute() / 60 / 1000;
    return new Load(torque, CuttingPower.atMotor(kilowatts, limits.number(Limit.EFFICIENCY)));
  }
}
