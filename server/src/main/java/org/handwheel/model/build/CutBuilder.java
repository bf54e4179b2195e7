package org.handwheel.model.build;

import java.util.List;
import java.util.Locale;
import org.antlr.v4.runtime.tree.ParseTree;
import org.handwheel.grammar.HandwheelParser.CleanLineContext;
import org.handwheel.grammar.HandwheelParser.CutAtContext;
import org.handwheel.grammar.HandwheelParser.CutAtMostContext;
import org.handwheel.grammar.HandwheelParser.CutClauseContext;
import org.handwheel.grammar.HandwheelParser.CutClimbContext;
import org.handwheel.grammar.HandwheelParser.CutConventionalContext;
import org.handwheel.grammar.HandwheelParser.CutFeedContext;
import org.handwheel.grammar.HandwheelParser.CutLeavingContext;
import org.handwheel.grammar.HandwheelParser.CutOffsetContext;
import org.handwheel.grammar.HandwheelParser.CutOnePassContext;
import org.handwheel.grammar.HandwheelParser.CutPassContext;
import org.handwheel.grammar.HandwheelParser.CutPassesContext;
import org.handwheel.grammar.HandwheelParser.CutRepeatContext;
import org.handwheel.grammar.HandwheelParser.CutSpeedContext;
import org.handwheel.grammar.HandwheelParser.CutStepOverContext;
import org.handwheel.grammar.HandwheelParser.CutTravelContext;
import org.handwheel.grammar.HandwheelParser.FaceContext;
import org.handwheel.grammar.HandwheelParser.FinishLineContext;
import org.handwheel.grammar.HandwheelParser.RoughLineContext;
import org.handwheel.grammar.HandwheelParser.SizeTargetContext;
import org.handwheel.model.Face;
import org.handwheel.model.Located;
import org.handwheel.model.Part;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Side;
import org.handwheel.model.Step;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.model.Step.Passes;
import org.handwheel.model.Step.Purpose;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.units.Dimension;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;
import org.handwheel.units.Quantity;
import org.jspecify.annotations.Nullable;

/** Builds the cuts of a face: {@code clean}, {@code rough} and {@code finish}. */
final class CutBuilder {
  private final FileBuilder file;
  private final Values values;
  private final Resolver resolver;
  private final @Nullable Part part;

  CutBuilder(FileBuilder file, Resolver resolver, @Nullable Part part) {
    this.file = file;
    this.values = file.values();
    this.resolver = resolver;
    this.part = part;
  }

  /** The clauses of one cut, as far as they could be read. */
  private static final class Clauses {
    private @Nullable Located<Length> at;
    private @Nullable Located<Length> atMost;
    private @Nullable Located<Length> leaving;
    private @Nullable Passes passes;
    private @Nullable Located<CutDirection> direction;
    private @Nullable Located<Step.Travel> travel;
    private @Nullable Located<Step.Offset> offset;
    private @Nullable Located<Length> stepOver;
    private @Nullable Located<Double> rpm;
    private @Nullable Located<Length> feed;
    private int springPasses;
  }

  @Nullable Step clean(Section section, CleanLineContext line) {
    Clauses clauses = read(section, line.cutClause());
    Origin origin = section.origin(line);
    refuse(clauses.leaving == null ? null : clauses.leaving.origin(), "leaving", "rough");
    refuse(clauses.passes == null ? null : clauses.passes.origin(), "pass", "rough");
    if (clauses.at == null) {
      if (line.cutClause().stream().noneMatch(CutAtContext.class::isInstance)) {
        file.problems()
            .error(
                "missing-clause",
                origin,
                "say how deep each skim is and how much may come off: `at 0.4 mm, at most 1.2 mm`");
      }
      return null;
    }
    Located<Length> atMost = clauses.atMost == null ? clauses.at : clauses.atMost;
    if (atMost.value().isLessThan(clauses.at.value())) {
      file.problems()
          .error("bad-value", atMost.origin(), "`at most` is less than the depth of one skim");
      return null;
    }
    return cut(section, origin, line.face(), new Purpose.Clean(clauses.at, atMost), clauses);
  }

  @Nullable Step rough(Section section, RoughLineContext line) {
    Clauses clauses = read(section, line.cutClause());
    refuseDepths(clauses);
    Step.Target target = target(section, line.face(), line.sizeTarget());
    return target == null
        ? null
        : cut(
            section,
            section.origin(line),
            line.face(),
            new Purpose.Rough(target, clauses.leaving, clauses.passes),
            clauses);
  }

  @Nullable Step finish(Section section, FinishLineContext line) {
    Clauses clauses = read(section, line.cutClause());
    refuseDepths(clauses);
    refuse(clauses.leaving == null ? null : clauses.leaving.origin(), "leaving", "rough");
    Step.Target target = target(section, line.face(), line.sizeTarget());
    return target == null
        ? null
        : cut(
            section,
            section.origin(line),
            line.face(),
            new Purpose.Finish(target, clauses.passes),
            clauses);
  }

  private void refuseDepths(Clauses clauses) {
    refuse(clauses.at == null ? null : clauses.at.origin(), "at", "clean");
    refuse(clauses.atMost == null ? null : clauses.atMost.origin(), "at most", "clean");
  }

  private void refuse(@Nullable Origin origin, String clause, String verb) {
    if (origin != null) {
      file.problems()
          .error("misplaced-line", origin, "`" + clause + "` belongs to `" + verb + "`, not here");
    }
  }

  private Step cut(
      Section section, Origin origin, FaceContext face, Purpose purpose, Clauses clauses) {
    return new Step.Cut(
        origin,
        Resolver.face(face),
        section.origin(face),
        purpose,
        clauses.direction,
        clauses.travel,
        clauses.offset,
        clauses.stepOver,
        clauses.rpm,
        clauses.feed,
        clauses.springPasses);
  }

  private Step.@Nullable Target target(
      Section section, FaceContext faceNode, SizeTargetContext node) {
    Face face = Resolver.face(faceNode);
    Origin origin = section.origin(node);
    String text = node.getText().toUpperCase(Locale.ROOT);
    for (PartDimension dimension : PartDimension.values()) {
      if (!text.equals(dimension.name())) {
        continue;
      }
      if (dimension != face.dimension()) {
        file.problems()
            .error(
                "bad-value",
                origin,
                "a cut on the "
                    + face.word()
                    + " changes the "
                    + face.dimension().word()
                    + ", not the "
                    + dimension.word());
        return null;
      }
      if (part == null || part.dimension(dimension) == null) {
        if (!file.names().isDoubtful(dimension.word())) {
          file.problems()
              .error("undefined-name", origin, "the part has no " + dimension.word() + " yet");
        }
        return null;
      }
      return new Step.Target(dimension, null, origin);
    }
    Length size = values.positiveLength(section, node);
    return size == null ? null : new Step.Target(null, size, origin);
  }

  private Clauses read(Section section, List<CutClauseContext> nodes) {
    Clauses clauses = new Clauses();
    ClauseOnce once = new ClauseOnce(file, section);
    for (CutClauseContext clause : nodes) {
      if (once.check(clause)) {
        read(section, clause, clauses);
      }
    }
    return clauses;
  }

  private void read(Section section, CutClauseContext clause, Clauses clauses) {
    Origin origin = section.origin(clause);
    if (clause instanceof CutAtContext c) {
      clauses.at = located(values.positiveLength(section, c.lengthValue()), origin);
    } else if (clause instanceof CutAtMostContext c) {
      clauses.atMost = located(values.positiveLength(section, c.lengthValue()), origin);
    } else if (clause instanceof CutLeavingContext c) {
      clauses.leaving = located(values.depth(section, c.lengthValue()), origin);
    } else if (clause instanceof CutPassContext c) {
      Length depth = values.positiveLength(section, c.lengthValue());
      passes(clauses, depth == null ? null : new Passes.EachAtMost(depth, origin), origin);
    } else if (clause instanceof CutPassesContext c) {
      int count = values.wholeNumber(section, c.wholeNumber());
      Length depth = values.positiveLength(section, c.lengthValue());
      if (count < 1) {
        file.problems().error("bad-value", origin, "there must be one pass at least");
      } else {
        passes(clauses, depth == null ? null : new Passes.Counted(count, depth, origin), origin);
      }
    } else if (clause instanceof CutOnePassContext) {
      passes(clauses, new Passes.Single(origin), origin);
    } else if (clause instanceof CutConventionalContext) {
      direction(clauses, CutDirection.CONVENTIONAL, origin);
    } else if (clause instanceof CutClimbContext) {
      direction(clauses, CutDirection.CLIMB, origin);
    } else if (clause instanceof CutTravelContext c) {
      Side from = resolver.side(section, c.side(0));
      Side to = resolver.side(section, c.side(1));
      if (from != null && to != null) {
        clauses.travel = new Located<>(new Step.Travel(from, to), origin);
      }
    } else if (clause instanceof CutOffsetContext c) {
      Length distance = values.depth(section, c.lengthValue());
      Side toward = resolver.side(section, c.side());
      if (distance != null && toward != null) {
        clauses.offset = new Located<>(new Step.Offset(distance, toward), origin);
      }
    } else if (clause instanceof CutStepOverContext c) {
      clauses.stepOver = located(values.positiveLength(section, c.lengthValue()), origin);
    } else if (clause instanceof CutSpeedContext c) {
      clauses.rpm = located(file.rpm(section, c.speedValue()), origin);
    } else if (clause instanceof CutFeedContext c) {
      clauses.feed = located(feedPerTooth(section, c.feedValue()), origin);
    } else if (clause instanceof CutRepeatContext) {
      clauses.springPasses = 1;
    }
  }

  private void passes(Clauses clauses, @Nullable Passes passes, Origin origin) {
    if (clauses.passes != null) {
      file.problems()
          .repeated(
              "repeated-clause", origin, "the passes are already given", clauses.passes.origin());
      return;
    }
    clauses.passes = passes;
  }

  private void direction(Clauses clauses, CutDirection direction, Origin origin) {
    if (clauses.direction != null) {
      file.problems()
          .repeated(
              "repeated-clause",
              origin,
              "a cut is either conventional or climb, not both",
              clauses.direction.origin());
      return;
    }
    clauses.direction = new Located<>(direction, origin);
  }

  static <T> @Nullable Located<T> located(@Nullable T value, Origin origin) {
    return value == null ? null : new Located<>(value, origin);
  }

  /** A feed per tooth as a length. */
  @Nullable Length feedPerTooth(Section section, ParseTree node) {
    Quantity feed = values.positive(section, node, Dimension.FEED_PER_TOOTH);
    return feed == null ? null : Length.of(feed.value(), LengthUnit.MM);
  }
}
