package org.handwheel.model.build;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.antlr.v4.runtime.ParserRuleContext;
import org.handwheel.grammar.HandwheelParser.CleanLineContext;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.CutterLineContext;
import org.handwheel.grammar.HandwheelParser.DeburrLineContext;
import org.handwheel.grammar.HandwheelParser.DeburrTargetContext;
import org.handwheel.grammar.HandwheelParser.ErrorOverContext;
import org.handwheel.grammar.HandwheelParser.FaceContext;
import org.handwheel.grammar.HandwheelParser.FeatureLineContext;
import org.handwheel.grammar.HandwheelParser.FindLineContext;
import org.handwheel.grammar.HandwheelParser.FinishLineContext;
import org.handwheel.grammar.HandwheelParser.HoleCutLineContext;
import org.handwheel.grammar.HandwheelParser.HoleRefContext;
import org.handwheel.grammar.HandwheelParser.LockLineContext;
import org.handwheel.grammar.HandwheelParser.MeasureLineContext;
import org.handwheel.grammar.HandwheelParser.MoveHeadLineContext;
import org.handwheel.grammar.HandwheelParser.PlaceContext;
import org.handwheel.grammar.HandwheelParser.RoughLineContext;
import org.handwheel.grammar.HandwheelParser.SeatClauseContext;
import org.handwheel.grammar.HandwheelParser.SeatLineContext;
import org.handwheel.grammar.HandwheelParser.SeatTappedContext;
import org.handwheel.grammar.HandwheelParser.SeatTightContext;
import org.handwheel.grammar.HandwheelParser.SeatUprightContext;
import org.handwheel.grammar.HandwheelParser.SetLineContext;
import org.handwheel.grammar.HandwheelParser.StatementContext;
import org.handwheel.grammar.HandwheelParser.ToolClauseContext;
import org.handwheel.grammar.HandwheelParser.ToolFeedContext;
import org.handwheel.grammar.HandwheelParser.ToolSpeedContext;
import org.handwheel.grammar.HandwheelParser.TouchLineContext;
import org.handwheel.grammar.HandwheelParser.TramLineContext;
import org.handwheel.grammar.HandwheelParser.TrueLineContext;
import org.handwheel.grammar.HandwheelParser.UnlockLineContext;
import org.handwheel.grammar.HandwheelParser.WipeLineContext;
import org.handwheel.grammar.HandwheelParser.ZeroClauseContext;
import org.handwheel.grammar.HandwheelParser.ZeroLineContext;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Located;
import org.handwheel.model.Names.Kind;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.model.Part.FeatureKind;
import org.handwheel.model.Step;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.units.Length;
import org.handwheel.units.Slope;
import org.jspecify.annotations.Nullable;

/** Builds the steps of a setup, apart from {@code hold}. */
final class StepBuilder {
  private final FileBuilder file;
  private final Values values;
  private final Resolver resolver;
  private final CutBuilder cuts;

  StepBuilder(FileBuilder file, Resolver resolver, @Nullable Part part) {
    this.file = file;
    this.values = file.values();
    this.resolver = resolver;
    this.cuts = new CutBuilder(file, resolver, part);
  }

  /** The step of a line, or nothing if its values are unsound or it does not belong here. */
  @Nullable Step build(Section section, ContentContext line) {
    StatementContext statement = line.statement();
    Origin origin = section.origin(statement);
    if (statement instanceof SeatLineContext seat) {
      return seat(section, seat);
    } else if (statement instanceof TrueLineContext context) {
      return trueVise(section, context);
    } else if (statement instanceof TramLineContext tram) {
      Slope error = slope(section, tram.errorOver());
      return error == null ? null : new Step.Tram(origin, error);
    } else if (statement instanceof CutterLineContext cutter) {
      return cutter(section, cutter);
    } else if (statement instanceof TouchLineContext touch) {
      return touch(section, touch);
    } else if (statement instanceof FindLineContext find) {
      return find(section, find);
    } else if (statement instanceof ZeroLineContext zero) {
      return new Step.Zero(origin, Resolver.axes(zero.zeroClause().axis()));
    } else if (statement instanceof SetLineContext set) {
      Length depth = values.depth(section, set.lengthValue());
      return depth == null
          ? null
          : new Step.SetDepth(origin, Resolver.axis(set.axis()), depth, Resolver.face(set.face()));
    } else if (statement instanceof LockLineContext lock) {
      return new Step.Lock(origin, Resolver.axes(lock.axis()));
    } else if (statement instanceof UnlockLineContext unlock) {
      return new Step.Unlock(origin, Resolver.axes(unlock.axis()));
    } else if (statement instanceof MoveHeadLineContext move) {
      Length distance = values.positiveLength(section, move.lengthValue());
      Direction direction = move.UP() != null ? Direction.UP : Direction.DOWN;
      return distance == null ? null : new Step.MoveHead(origin, direction, distance);
    } else if (statement instanceof CleanLineContext clean) {
      return cuts.clean(section, clean);
    } else if (statement instanceof RoughLineContext rough) {
      return cuts.rough(section, rough);
    } else if (statement instanceof FinishLineContext finish) {
      return cuts.finish(section, finish);
    } else if (statement instanceof HoleCutLineContext cut) {
      return holeCut(section, cut);
    } else if (statement instanceof FeatureLineContext feature) {
      return featureCut(section, feature);
    } else if (statement instanceof DeburrLineContext deburr) {
      return deburr(section, deburr);
    } else if (statement instanceof WipeLineContext) {
      return new Step.Wipe(origin);
    } else if (statement instanceof MeasureLineContext measure) {
      Owned.Instrument instrument = resolver.instrument(section, measure.instrumentRef());
      return instrument == null
          ? null
          : new Step.Measure(origin, Resolver.dimension(measure.dimension()), instrument);
    }
    file.misplaced(section, line);
    return null;
  }

  private Step seat(Section section, SeatLineContext line) {
    boolean tapped = false;
    boolean tight = false;
    Step.Upright upright = null;
    for (SeatClauseContext clause : line.seatClause()) {
      if (clause instanceof SeatTappedContext) {
        tapped = true;
      } else if (clause instanceof SeatTightContext) {
        tight = true;
      } else if (clause instanceof SeatUprightContext c) {
        Owned.Instrument square = resolver.instrument(section, c.instrumentRef());
        upright = square == null ? null : new Step.Upright(Resolver.face(c.face()), square);
      }
    }
    return new Step.Seat(section.origin(line), tapped, tight, upright);
  }

  private @Nullable Step trueVise(Section section, TrueLineContext line) {
    Owned.Vise vise = resolver.vise(section, line.viseRef());
    Owned.Instrument instrument = resolver.instrument(section, line.instrumentRef());
    Slope error = line.errorOver() == null ? null : slope(section, line.errorOver());
    return vise == null || instrument == null
        ? null
        : new Step.TrueVise(section.origin(line), vise, instrument, error);
  }

  private @Nullable Slope slope(Section section, ErrorOverContext context) {
    Length rise = values.depth(section, context.lengthValue(0));
    Length run = values.positiveLength(section, context.lengthValue(1));
    return rise == null || run == null ? null : Slope.of(rise, run);
  }

  private @Nullable Step cutter(Section section, CutterLineContext line) {
    Owned.Cutter cutter = resolver.cutter(section, line.cutterRef());
    Located<Double> rpm = null;
    Located<Length> feed = null;
    ClauseOnce once = new ClauseOnce(file, section);
    for (ToolClauseContext clause : line.toolClause()) {
      once.check(clause);
      if (clause instanceof ToolSpeedContext c) {
        rpm = CutBuilder.located(file.rpm(section, c.speedValue()), section.origin(c));
      } else if (clause instanceof ToolFeedContext c) {
        feed = CutBuilder.located(cuts.feedPerTooth(section, c.feedValue()), section.origin(c));
      }
    }
    return cutter == null ? null : new Step.UseCutter(section.origin(line), cutter, rpm, feed);
  }

  private @Nullable Step touch(Section section, TouchLineContext line) {
    Length paper = Length.ZERO;
    if (line.touchWith() != null && line.touchWith().lengthValue() != null) {
      Length thickness = values.depth(section, line.touchWith().lengthValue());
      if (thickness == null) {
        return null;
      }
      paper = thickness;
    } else if (line.touchWith() != null) {
      resolver.instrument(section, line.touchWith().instrumentRef());
    }
    return new Step.Touch(
        section.origin(line), Resolver.face(line.face()), paper, axes(line.zeroClause()));
  }

  private static Set<Axis> axes(@Nullable ZeroClauseContext zero) {
    return zero == null ? Set.of() : Resolver.axes(zero.axis());
  }

  private Step find(Section section, FindLineContext line) {
    Owned.Finder finder =
        line.finderRef() == null ? null : resolver.finder(section, line.finderRef());
    if (line.instrumentRef() != null) {
      resolver.instrument(section, line.instrumentRef());
    }
    FaceContext face = line.findTarget().face();
    HoleRefContext hole = line.findTarget().holeRef();
    if (hole != null) {
      file.names().use(Kind.HOLE, "hole", hole.getText(), section.origin(hole));
    }
    return new Step.Find(
        section.origin(line),
        face == null ? null : Resolver.face(face),
        hole == null ? null : hole.getText(),
        from(section, line.place()),
        finder,
        axes(line.zeroClause()),
        zeroPlace(line.zeroClause()));
  }

  /** Over the edge unless the line says that the dial is set where the finder touches. */
  private static Step.ZeroPlace zeroPlace(@Nullable ZeroClauseContext zero) {
    boolean touch = zero != null && zero.zeroAt() != null && zero.zeroAt().TOUCH() != null;
    return touch ? Step.ZeroPlace.TOUCH : Step.ZeroPlace.FOUND;
  }

  /** The side an edge is approached from. */
  private @Nullable Located<Direction> from(Section section, @Nullable PlaceContext place) {
    if (place == null) {
      return null;
    }
    Direction direction = Resolver.place(place);
    if (direction == null) {
      file.problems().error("bad-value", section.origin(place), "name a side here, not the centre");
      return null;
    }
    return new Located<>(direction, section.origin(place));
  }

  private Step holeCut(Section section, HoleCutLineContext line) {
    Step.HoleVerb verb = Step.HoleVerb.valueOf(line.verb.getText().toUpperCase(Locale.ROOT));
    List<Located<String>> holes = new ArrayList<>();
    holes.add(hole(section, line.holeRef()));
    line.furtherHoleRef().forEach(node -> holes.add(hole(section, node)));
    ClauseChecks clauses = new ClauseChecks(file, resolver, section);
    List<Step.HoleSize> sizes =
        line.drillSize().stream().flatMap(node -> Stream.ofNullable(clauses.size(node))).toList();
    return new Step.HoleCut(section.origin(line), verb, holes, sizes, clauses.way(line));
  }

  private Located<String> hole(Section section, ParserRuleContext node) {
    file.names().use(Kind.HOLE, "hole", node.getText(), section.origin(node));
    return new Located<>(node.getText(), section.origin(node));
  }

  private @Nullable Step featureCut(Section section, FeatureLineContext line) {
    FeatureKind verb = FeatureKind.valueOf(line.verb.getText().toUpperCase(Locale.ROOT));
    Origin origin = section.origin(line.featureTarget());
    String name = line.featureTarget().getText();
    if (line.featureTarget().face() != null) {
      file.problems()
          .error(
              "bad-value",
              origin,
              "name a feature of the part here; a face is cut by `clean`, `rough` or `finish`");
      return null;
    }
    file.names().use(Kind.FEATURE, "feature", name, origin);
    Step.FeatureWay way = new ClauseChecks(file, resolver, section).way(line, cuts);
    return new Step.FeatureCut(section.origin(line), verb, new Located<>(name, origin), way);
  }

  private Step deburr(Section section, DeburrLineContext line) {
    DeburrTargetContext target = line.deburrTarget();
    Set<Face> faces = EnumSet.noneOf(Face.class);
    if (target.ALL() != null) {
      faces.addAll(Face.all());
    } else if (target.faces() != null) {
      target.faces().face().forEach(face -> faces.add(Resolver.face(face)));
    } else {
      target
          .furtherHoleRef()
          .forEach(
              node -> file.names().use(Kind.HOLE, "hole", node.getText(), section.origin(node)));
    }
    return new Step.Deburr(section.origin(line), faces);
  }
}
