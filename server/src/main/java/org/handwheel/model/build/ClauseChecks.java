package org.handwheel.model.build;

import org.antlr.v4.runtime.ParserRuleContext;
import org.handwheel.grammar.HandwheelParser.DrillSizeContext;
import org.handwheel.grammar.HandwheelParser.FeatureClauseContext;
import org.handwheel.grammar.HandwheelParser.FeatureClimbContext;
import org.handwheel.grammar.HandwheelParser.FeatureConventionalContext;
import org.handwheel.grammar.HandwheelParser.FeatureCuspContext;
import org.handwheel.grammar.HandwheelParser.FeatureFeedContext;
import org.handwheel.grammar.HandwheelParser.FeatureLeavingContext;
import org.handwheel.grammar.HandwheelParser.FeatureLineContext;
import org.handwheel.grammar.HandwheelParser.FeaturePassContext;
import org.handwheel.grammar.HandwheelParser.FeatureSpeedContext;
import org.handwheel.grammar.HandwheelParser.FeatureWithContext;
import org.handwheel.grammar.HandwheelParser.HoleCutByHandContext;
import org.handwheel.grammar.HandwheelParser.HoleCutClauseContext;
import org.handwheel.grammar.HandwheelParser.HoleCutDepthContext;
import org.handwheel.grammar.HandwheelParser.HoleCutFeedContext;
import org.handwheel.grammar.HandwheelParser.HoleCutGuideContext;
import org.handwheel.grammar.HandwheelParser.HoleCutLineContext;
import org.handwheel.grammar.HandwheelParser.HoleCutPeckContext;
import org.handwheel.grammar.HandwheelParser.HoleCutSpeedContext;
import org.handwheel.grammar.HandwheelParser.HoleCutWithContext;
import org.handwheel.model.Located;
import org.handwheel.model.Owned;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.model.Step.FeatureWay;
import org.handwheel.model.Step.HoleSize;
import org.handwheel.model.Step.HoleWay;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.units.Dimension;
import org.handwheel.units.Length;
import org.handwheel.units.Quantity;
import org.jspecify.annotations.Nullable;

/** Checks names and values in the clauses of cuts on holes and features. */
final class ClauseChecks {
  private final FileBuilder file;
  private final Values values;
  private final Resolver resolver;
  private final Section section;
  private final ClauseOnce once;

  ClauseChecks(FileBuilder file, Resolver resolver, Section section) {
    this.file = file;
    this.values = file.values();
    this.resolver = resolver;
    this.section = section;
    this.once = new ClauseOnce(file, section);
  }

  /** Reads how a hole is cut. */
  HoleWay way(HoleCutLineContext line) {
    Located<Owned> tool = null;
    boolean byHand = false;
    boolean guided = false;
    Located<Length> depth = null;
    Located<Length> peck = null;
    Located<Double> rpm = null;
    Located<Quantity> feed = null;
    for (HoleCutClauseContext clause : line.holeCutClause()) {
      once.check(clause);
      Origin origin = section.origin(clause);
      if (clause instanceof HoleCutWithContext c) {
        Owned named = resolver.tool(section, c.toolRef());
        tool = named == null ? null : new Located<>(named, section.origin(c.toolRef()));
      } else if (clause instanceof HoleCutByHandContext) {
        byHand = true;
      } else if (clause instanceof HoleCutGuideContext) {
        guided = true;
      } else if (clause instanceof HoleCutDepthContext c) {
        depth = located(values.positiveLength(section, c.lengthValue()), origin);
      } else if (clause instanceof HoleCutPeckContext c) {
        peck = located(values.positiveLength(section, c.lengthValue()), origin);
      } else if (clause instanceof HoleCutSpeedContext c) {
        Double turns = file.rpm(section, c.speedValue());
        rpm = turns == null ? null : new Located<>(turns, origin);
      } else if (clause instanceof HoleCutFeedContext c) {
        Quantity each = feed(c.feedValue());
        feed = each == null ? null : new Located<>(each, origin);
      }
    }
    return new HoleWay(tool, byHand, guided, depth, peck, rpm, feed);
  }

  /** Holes are fed by the turn. */
  private @Nullable Quantity feed(ParserRuleContext node) {
    Quantity feed = values.expression(section, node);
    if (feed == null) {
      return null;
    }
    if (!feed.is(Dimension.FEED_PER_REV) && !feed.is(Dimension.FEED_RATE)) {
      return values.positive(section, node, Dimension.FEED_PER_REV);
    }
    if (feed.value().signum() <= 0) {
      file.problems().error("bad-value", section.origin(node), "a feed must be more than zero");
      return null;
    }
    return feed;
  }

  /** A size of a drill: a length, or a number or letter of the tables. */
  @Nullable HoleSize size(DrillSizeContext node) {
    Origin origin = section.origin(node);
    if (node.quantity() == null) {
      return new HoleSize(origin.text(), null, origin);
    }
    Length length = values.positiveLength(section, node.quantity());
    return length == null ? null : new HoleSize(origin.text(), length, origin);
  }

  /** Reads how a feature is cut. */
  FeatureWay way(FeatureLineContext line, CutBuilder cuts) {
    Owned.Cutter cutter = null;
    Located<Length> leaving = null;
    Located<Length> pass = null;
    Located<Length> cusp = null;
    Located<CutDirection> direction = null;
    Located<Double> rpm = null;
    Located<Length> feed = null;
    for (FeatureClauseContext clause : line.featureClause()) {
      once.check(clause);
      Origin origin = section.origin(clause);
      if (clause instanceof FeatureWithContext c) {
        cutter = resolver.cutter(section, c.cutterRef());
      } else if (clause instanceof FeatureLeavingContext c) {
        leaving = located(values.depth(section, c.lengthValue()), origin);
      } else if (clause instanceof FeaturePassContext c) {
        pass = located(values.positiveLength(section, c.lengthValue()), origin);
      } else if (clause instanceof FeatureCuspContext c) {
        cusp = located(values.positiveLength(section, c.lengthValue()), origin);
      } else if (clause instanceof FeatureConventionalContext) {
        direction = direction(line, direction, CutDirection.CONVENTIONAL, origin);
      } else if (clause instanceof FeatureClimbContext) {
        direction = direction(line, direction, CutDirection.CLIMB, origin);
      } else if (clause instanceof FeatureSpeedContext c) {
        rpm = CutBuilder.located(file.rpm(section, c.speedValue()), origin);
      } else if (clause instanceof FeatureFeedContext c) {
        feed = located(cuts.feedPerTooth(section, c.feedValue()), origin);
      } else {
        file.problems()
            .error(
                "misplaced-line",
                origin,
                "`" + clause.getStart().getText() + "` describes the feature; write it in `part`");
      }
    }
    return new FeatureWay(cutter, leaving, pass, cusp, direction, rpm, feed);
  }

  private static @Nullable Located<Length> located(@Nullable Length length, Origin origin) {
    return length == null ? null : new Located<>(length, origin);
  }

  /** The direction now said; a second one that differs is reported. */
  private Located<CutDirection> direction(
      FeatureLineContext line,
      @Nullable Located<CutDirection> before,
      CutDirection said,
      Origin origin) {
    if (before != null && before.value() != said) {
      file.problems()
          .error(
              "repeated-clause",
              section.origin(line),
              "a cut is either conventional or climb, not both");
    }
    return new Located<>(said, origin);
  }
}
