package org.handwheel.rules;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.handwheel.rules.cut.CutterBends;
import org.handwheel.rules.cut.CutterMeetsClamp;
import org.handwheel.rules.cut.CutterMeetsJaw;
import org.handwheel.rules.cut.CutterMeetsParallel;
import org.handwheel.rules.cut.DepthOverFlutes;
import org.handwheel.rules.cut.FaceHidden;
import org.handwheel.rules.cut.FaceNotCovered;
import org.handwheel.rules.cut.ForceToMovingJaw;
import org.handwheel.rules.cut.HeavyClimb;
import org.handwheel.rules.cut.HeavyPass;
import org.handwheel.rules.cut.MotorPower;
import org.handwheel.rules.cut.Rubbing;
import org.handwheel.rules.cut.SpeedOutOfRange;
import org.handwheel.rules.cut.TravelDirection;
import org.handwheel.rules.dial.BacklashSide;
import org.handwheel.rules.dial.LockConflict;
import org.handwheel.rules.dial.TouchMissing;
import org.handwheel.rules.dial.ZeroLost;
import org.handwheel.rules.feature.FeatureOrder;
import org.handwheel.rules.feature.HoldingLost;
import org.handwheel.rules.feature.NoSteps;
import org.handwheel.rules.feature.OutlineGouge;
import org.handwheel.rules.feature.OutlineNotReached;
import org.handwheel.rules.feature.PocketCorner;
import org.handwheel.rules.hold.BarMissing;
import org.handwheel.rules.hold.BarNotNeeded;
import org.handwheel.rules.hold.BurrUnderWork;
import org.handwheel.rules.hold.GripsParallels;
import org.handwheel.rules.hold.JawCocks;
import org.handwheel.rules.hold.JawOpening;
import org.handwheel.rules.hold.OverhangTooLong;
import org.handwheel.rules.hold.ParallelsTooTall;
import org.handwheel.rules.hold.RawReference;
import org.handwheel.rules.hold.SeatNotProved;
import org.handwheel.rules.hold.SpacerTooWide;
import org.handwheel.rules.hold.TooLowGrip;
import org.handwheel.rules.hold.ViseNotTrued;
import org.handwheel.rules.hole.BurrInBore;
import org.handwheel.rules.hole.DrillHitsJaw;
import org.handwheel.rules.hole.DrillHitsParallel;
import org.handwheel.rules.hole.DrillHitsTable;
import org.handwheel.rules.hole.DrillSequence;
import org.handwheel.rules.hole.HoleBeforeEdge;
import org.handwheel.rules.hole.HoleFaceHidden;
import org.handwheel.rules.hole.HoleNotMade;
import org.handwheel.rules.hole.HoleOffPart;
import org.handwheel.rules.hole.HoleOversize;
import org.handwheel.rules.hole.HoleWithoutZero;
import org.handwheel.rules.hole.ReamAllowance;
import org.handwheel.rules.hole.TapDepth;
import org.handwheel.rules.hole.TooLittleDaylight;
import org.handwheel.rules.hole.WallTooThin;
import org.handwheel.rules.name.MaterialUnknown;
import org.handwheel.rules.name.UnusedName;
import org.handwheel.rules.size.DialRounding;
import org.handwheel.rules.size.FaceNeverSquared;
import org.handwheel.rules.size.FaceNotCleaned;
import org.handwheel.rules.size.MeasureBeforeDeburr;
import org.handwheel.rules.size.MeasureBeforeFinish;
import org.handwheel.rules.size.NoFinishAllowance;
import org.handwheel.rules.size.NotFlat;
import org.handwheel.rules.size.NotParallel;
import org.handwheel.rules.size.Overcut;
import org.handwheel.rules.size.ShortOfSize;
import org.handwheel.rules.size.StockTooSmall;
import org.handwheel.rules.size.ToleranceNotMeasurable;
import org.handwheel.rules.size.UnitSuspect;
import org.handwheel.syntax.Severity;

/** All rules, in the order their findings are made. */
public final class Rules {
  private Rules() {}

  public static List<Rule> all() {
    return List.of(
        new DialRounding(),
        new FaceNeverSquared(),
        new FaceNotCleaned(),
        new MeasureBeforeDeburr(),
        new MeasureBeforeFinish(),
        new NoFinishAllowance(),
        new NotFlat(),
        new NotParallel(),
        new Overcut(),
        new ShortOfSize(),
        new StockTooSmall(),
        new ToleranceNotMeasurable(),
        new UnitSuspect(),
        new BarMissing(),
        new BarNotNeeded(),
        new BurrUnderWork(),
        new GripsParallels(),
        new JawCocks(),
        new JawOpening(),
        new OverhangTooLong(),
        new ParallelsTooTall(),
        new RawReference(),
        new SeatNotProved(),
        new SpacerTooWide(),
        new TooLowGrip(),
        new ViseNotTrued(),
        new CutterBends(),
        new CutterMeetsClamp(),
        new CutterMeetsJaw(),
        new CutterMeetsParallel(),
        new DepthOverFlutes(),
        new FaceHidden(),
        new FaceNotCovered(),
        new ForceToMovingJaw(),
        new HeavyClimb(),
        new HeavyPass(),
        new MotorPower(),
        new Rubbing(),
        new SpeedOutOfRange(),
        new TravelDirection(),
        new BacklashSide(),
        new LockConflict(),
        new TouchMissing(),
        new ZeroLost(),
        new BurrInBore(),
        new DrillHitsJaw(),
        new DrillHitsParallel(),
        new DrillHitsTable(),
        new DrillSequence(),
        new HoleBeforeEdge(),
        new HoleFaceHidden(),
        new HoleNotMade(),
        new HoleOffPart(),
        new HoleOversize(),
        new HoleWithoutZero(),
        new ReamAllowance(),
        new TapDepth(),
        new TooLittleDaylight(),
        new WallTooThin(),
        new FeatureOrder(),
        new HoldingLost(),
        new NoSteps(),
        new OutlineGouge(),
        new OutlineNotReached(),
        new PocketCorner(),
        new MaterialUnknown(),
        new UnusedName());
  }

  /** Every id that a finding can have, with its usual severity, in alphabetical order. */
  public static Map<String, Severity> severities() {
    Map<String, Severity> severities = new TreeMap<>(FindingRules.all());
    all().forEach(rule -> severities.put(rule.id(), rule.severity()));
    return severities;
  }
}
