package org.handwheel.model.build;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.antlr.v4.runtime.tree.ParseTree;
import org.handwheel.grammar.HandwheelParser.CornerContext;
import org.handwheel.grammar.HandwheelParser.FeatureAtContext;
import org.handwheel.grammar.HandwheelParser.FeatureCircleContext;
import org.handwheel.grammar.HandwheelParser.FeatureClauseContext;
import org.handwheel.grammar.HandwheelParser.FeatureDepthContext;
import org.handwheel.grammar.HandwheelParser.FeatureEllipseContext;
import org.handwheel.grammar.HandwheelParser.FeatureInContext;
import org.handwheel.grammar.HandwheelParser.FeatureLengthContext;
import org.handwheel.grammar.HandwheelParser.FeatureLineContext;
import org.handwheel.grammar.HandwheelParser.FeatureObroundContext;
import org.handwheel.grammar.HandwheelParser.FeatureRadiusContext;
import org.handwheel.grammar.HandwheelParser.FeatureSeenFromContext;
import org.handwheel.grammar.HandwheelParser.FeatureSizeContext;
import org.handwheel.grammar.HandwheelParser.FeatureThroughContext;
import org.handwheel.grammar.HandwheelParser.FeatureToleranceContext;
import org.handwheel.grammar.HandwheelParser.FeatureWidthContext;
import org.handwheel.grammar.HandwheelParser.HoleAtContext;
import org.handwheel.grammar.HandwheelParser.HoleClauseContext;
import org.handwheel.grammar.HandwheelParser.HoleCounterboreContext;
import org.handwheel.grammar.HandwheelParser.HoleCountersinkContext;
import org.handwheel.grammar.HandwheelParser.HoleDepthContext;
import org.handwheel.grammar.HandwheelParser.HoleDiaContext;
import org.handwheel.grammar.HandwheelParser.HoleDrillDepthContext;
import org.handwheel.grammar.HandwheelParser.HoleLineContext;
import org.handwheel.grammar.HandwheelParser.HoleSpotfaceContext;
import org.handwheel.grammar.HandwheelParser.HoleThreadContext;
import org.handwheel.grammar.HandwheelParser.HoleThreadDepthContext;
import org.handwheel.grammar.HandwheelParser.HoleThroughContext;
import org.handwheel.grammar.HandwheelParser.NominalContext;
import org.handwheel.grammar.HandwheelParser.PatternAboutContext;
import org.handwheel.grammar.HandwheelParser.PatternAtContext;
import org.handwheel.grammar.HandwheelParser.PatternByContext;
import org.handwheel.grammar.HandwheelParser.PatternCircleContext;
import org.handwheel.grammar.HandwheelParser.PatternClauseContext;
import org.handwheel.grammar.HandwheelParser.PatternCountContext;
import org.handwheel.grammar.HandwheelParser.PatternFirstContext;
import org.handwheel.grammar.HandwheelParser.PatternGridContext;
import org.handwheel.grammar.HandwheelParser.PatternLineContext;
import org.handwheel.grammar.HandwheelParser.PatternMirroredAboutContext;
import org.handwheel.grammar.HandwheelParser.PatternMirroredContext;
import org.handwheel.grammar.HandwheelParser.PatternRowContext;
import org.handwheel.grammar.HandwheelParser.PointContext;
import org.handwheel.grammar.HandwheelParser.SizeToleranceContext;
import org.handwheel.model.Face;
import org.handwheel.model.Located;
import org.handwheel.model.Names.Kind;
import org.handwheel.model.Part.FeatureKind;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Part.Mirror;
import org.handwheel.model.Part.Notation;
import org.handwheel.model.Part.OutlineForm;
import org.handwheel.model.Part.PatternSpec;
import org.handwheel.model.Part.Position;
import org.handwheel.model.Part.Shape;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.Severity;
import org.handwheel.units.Dimension;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.Quantity;
import org.jspecify.annotations.Nullable;

/** Builds holes, patterns, slots, pockets and outlines of the part. */
final class FeatureBuilder {
  private final FileBuilder file;
  private final Values values;
  private final Section section;

  FeatureBuilder(FileBuilder file, Section section) {
    this.file = file;
    this.values = file.values();
    this.section = section;
  }

  HoleSpec hole(HoleLineContext line) {
    String name = line.name().getText();
    Face face = Resolver.face(line.face());
    file.names().declare(Kind.HOLE, name, section.origin(line.name()));
    Length dia = null;
    LengthRange limits = null;
    Notation notation = null;
    String fit = null;
    String thread = null;
    Position position = null;
    boolean through = false;
    Length depth = null;
    Length threadDepth = null;
    Located<Length> drillDepth = null;
    Length spotface = null;
    Length counterboreDia = null;
    Length counterboreDepth = null;
    Length countersink = null;
    ClauseOnce once = new ClauseOnce(file, section);
    for (HoleClauseContext clause : line.holeClause()) {
      once.check(clause);
      if (clause instanceof HoleDiaContext c) {
        dia = values.positiveLength(section, c.nominal());
        notation = values.notation(c.nominal());
        if (c.fit() != null) {
          fit = fit(c.fit());
        } else {
          limits = limits(c.nominal(), dia, c.sizeTolerance());
        }
      } else if (clause instanceof HoleThreadContext c) {
        thread = c.thread().getText();
      } else if (clause instanceof HoleAtContext c) {
        position = position(c.point(), c.corner(), face);
      } else if (clause instanceof HoleThroughContext) {
        through = true;
      } else if (clause instanceof HoleDepthContext c) {
        depth = values.positiveLength(section, c.lengthValue());
      } else if (clause instanceof HoleThreadDepthContext c) {
        threadDepth = values.positiveLength(section, c.lengthValue());
      } else if (clause instanceof HoleDrillDepthContext c) {
        Length deep = values.positiveLength(section, c.lengthValue());
        drillDepth = deep == null ? null : new Located<>(deep, section.origin(c.lengthValue()));
      } else if (clause instanceof HoleSpotfaceContext c) {
        spotface = values.positiveLength(section, c.lengthValue());
      } else if (clause instanceof HoleCounterboreContext c) {
        counterboreDia = values.positiveLength(section, c.lengthValue(0));
        counterboreDepth = values.positiveLength(section, c.lengthValue(1));
      } else if (clause instanceof HoleCountersinkContext c) {
        countersink = values.positiveLength(section, c.lengthValue());
      }
    }
    if (line.holeClause().stream()
        .noneMatch(c -> c instanceof HoleDiaContext || c instanceof HoleThreadContext)) {
      file.problems()
          .error(
              "missing-clause",
              section.origin(line.name()),
              "hole `" + name + "` needs a size: `dia 6` or a thread such as `M6`");
    }
    return new HoleSpec(
        name,
        face,
        dia,
        limits,
        notation,
        fit,
        thread,
        position,
        through,
        depth,
        threadDepth,
        drillDepth,
        spotface,
        counterboreDia,
        counterboreDepth,
        countersink,
        section.origin(line));
  }

  /** ISO 286: capital letters for holes, small letters for shafts. */
  private @Nullable String fit(ParseTree node) {
    String text = node.getText();
    if (!text.matches("[A-Za-z]{1,2}[0-9]{1,2}")) {
      file.problems()
          .error("bad-value", section.origin(node), "`" + text + "` is no fit such as H7");
      return null;
    }
    if (Character.isLowerCase(text.charAt(0))) {
      file.problems()
          .error(
              "bad-value",
              section.origin(node),
              "`" + text + "` is a fit for a shaft; a hole takes a capital letter");
      return null;
    }
    return text;
  }

  PatternSpec pattern(PatternLineContext line, List<HoleSpec> holes) {
    String name = line.name().getText();
    String hole = line.holeRef().getText();
    file.names().declare(Kind.HOLE, name, section.origin(line.name()));
    file.names().use(Kind.HOLE, "hole", hole, section.origin(line.holeRef()));
    HoleSpec placed =
        holes.stream().filter(h -> h.name().equalsIgnoreCase(hole)).findFirst().orElse(null);
    if (placed != null && placed.position() != null) {
      file.problems()
          .error(
              "bad-value",
              section.origin(line.holeRef()),
              "hole `" + hole + "` has a place of its own; a pattern gives it another");
    }
    Face face = placed == null ? null : placed.face();
    return new PatternSpec(
        name, hole, shape(line, face), mirrors(line, face), section.origin(line));
  }

  private @Nullable Shape shape(PatternLineContext line, @Nullable Face face) {
    Length circle = null;
    int columns = 0;
    int rows = 0;
    int count = 0;
    double first = 0;
    Position about = null;
    Position start = null;
    List<Length> by = null;
    boolean row = false;
    ClauseOnce once = new ClauseOnce(file, section);
    for (PatternClauseContext clause : line.patternClause()) {
      if (isMirror(clause)) {
        continue;
      }
      once.check(clause);
      if (clause instanceof PatternCircleContext c) {
        circle = values.positiveLength(section, c.nominal());
      } else if (clause instanceof PatternRowContext) {
        row = true;
      } else if (clause instanceof PatternGridContext c) {
        columns = values.wholeNumber(section, c.wholeNumber(0));
        rows = values.wholeNumber(section, c.wholeNumber(1));
      } else if (clause instanceof PatternCountContext c) {
        count = values.wholeNumber(section, c.wholeNumber());
      } else if (clause instanceof PatternFirstContext c) {
        Quantity angle = values.quantity(section, c.angleValue(), Dimension.ANGLE);
        first = angle == null ? 0 : angle.value().doubleValue();
      } else if (clause instanceof PatternAboutContext c) {
        about = position(c.point(), c.corner(), face);
      } else if (clause instanceof PatternAtContext c) {
        start = position(c.point(), c.corner(), face);
      } else if (clause instanceof PatternByContext c) {
        by = values.lengths(section, c.point().expr());
      }
    }
    if (circle != null && count > 0 && about != null) {
      return new Shape.Circle(circle, count, first, about);
    }
    if (columns > 0 && rows > 0 && start != null && by != null) {
      return new Shape.Grid(columns, rows, start, by.get(0), by.get(1));
    }
    if (row && count > 0 && start != null && by != null) {
      return new Shape.Row(count, start, by.get(0), by.get(1));
    }
    if (start != null && line.patternClause().stream().anyMatch(FeatureBuilder::isMirror)) {
      return new Shape.Single(start);
    }
    file.problems()
        .error(
            "missing-clause",
            section.origin(line.name()),
            "a pattern is a `circle dia D, count N, about (x, y)`, a `row, count N, at (x, y), by"
                + " (dx, dy)`, a `grid N x M, at (x, y), by (dx, dy)` or a place `at (x, y),"
                + " mirrored left to right`");
    return null;
  }

  private static boolean isMirror(PatternClauseContext clause) {
    return clause instanceof PatternMirroredContext
        || clause instanceof PatternMirroredAboutContext;
  }

  private List<Mirror> mirrors(PatternLineContext line, @Nullable Face face) {
    List<Mirror> mirrors = new ArrayList<>();
    for (PatternClauseContext clause : line.patternClause()) {
      Mirror mirror = isMirror(clause) ? mirror(clause, face) : null;
      if (mirror != null && mirrors.contains(mirror)) {
        file.problems()
            .error(
                "repeated-clause",
                section.origin(clause),
                "the pattern is mirrored that way already");
      } else if (mirror != null) {
        mirrors.add(mirror);
      }
    }
    return mirrors;
  }

  private @Nullable Mirror mirror(PatternClauseContext clause, @Nullable Face face) {
    Origin origin = section.origin(clause);
    if (clause instanceof PatternMirroredContext c) {
      Face from = Resolver.face(c.face(0));
      boolean isAcross =
          Resolver.face(c.face(1)) == from.opposite() && (face == null || from.adjoins(face));
      if (isAcross) {
        return new Mirror.Centre(from.dimension());
      }
      file.problems()
          .error(
              "bad-value",
              origin,
              "name two opposite edges"
                  + (face == null ? "" : " of the " + face.word())
                  + ": a pattern is mirrored about the middle between them");
      return null;
    }
    PatternMirroredAboutContext c = (PatternMirroredAboutContext) clause;
    Position from = position(c.point(0), c.corner(), face);
    Position to = position(c.point(1), c.corner(), face);
    if (from == null || to == null) {
      return null;
    }
    if (from.first().equals(to.first()) && from.second().equals(to.second())) {
      file.problems().error("bad-value", origin, "two different places make a line");
      return null;
    }
    return new Mirror.Line(from, to);
  }

  private @Nullable Position position(
      PointContext point, @Nullable CornerContext corner, @Nullable Face face) {
    List<Length> coordinates = values.lengths(section, point.expr());
    List<Face> faces = corner == null ? usualCorner(face) : corner(corner, face);
    return coordinates == null || faces == null
        ? null
        : new Position(
            coordinates.get(0),
            coordinates.get(1),
            faces,
            values.notation(point.expr(0)),
            values.notation(point.expr(1)),
            section.origin(point));
  }

  /** Where nothing is said, positions count from the left, front and bottom edges. */
  private static List<Face> usualCorner(@Nullable Face face) {
    return Stream.of(Face.LEFT, Face.FRONT, Face.BOTTOM)
        .filter(edge -> edge.adjoins(face == null ? Face.TOP : face))
        .toList();
  }

  /** The two edges named, or none for the centre; null after a report. */
  private @Nullable List<Face> corner(CornerContext corner, @Nullable Face face) {
    if (corner.CENTRE() != null) {
      return List.of();
    }
    Face first = Resolver.face(corner.face(0));
    Face second = Resolver.face(corner.face(1));
    Origin origin = section.origin(corner);
    boolean onFace =
        first.adjoins(second) && (face == null || (first.adjoins(face) && second.adjoins(face)));
    if (!onFace) {
      String where = face == null ? "the face" : "the " + face.word();
      file.problems()
          .error("bad-value", origin, "name two edges that meet at a corner of " + where);
      return null;
    }
    if (first.dimension().compareTo(second.dimension()) > 0) {
      String mended = second.word() + " " + first.word();
      file.problems()
          .add(
              new Finding(
                      "bad-value",
                      Severity.ERROR,
                      origin,
                      "the first coordinate runs along the "
                          + second.dimension().word()
                          + ": name that edge first, `from "
                          + mended
                          + "`")
                  .withFix(Fix.replace("Write `" + mended + "`", origin, mended)));
      return null;
    }
    return List.of(first, second);
  }

  /** The limits of a size, if the drawing writes them beside it. */
  private @Nullable LengthRange limits(
      NominalContext nominal, @Nullable Length size, @Nullable SizeToleranceContext tolerance) {
    LengthRange limits =
        size == null || tolerance == null
            ? null
            : Tolerances.read(file, section, nominal, size, tolerance);
    if (limits != null && tolerance != null && !limits.low().isPositive()) {
      file.problems()
          .error(
              "bad-value",
              section.origin(nominal).to(section.origin(tolerance)),
              "the tolerance is larger than the size");
      return null;
    }
    return limits;
  }

  /** The face a feature is in, wherever in the line it is said. */
  private static @Nullable Face statedFace(FeatureLineContext line) {
    for (FeatureClauseContext clause : line.featureClause()) {
      if (clause instanceof FeatureInContext c) {
        return Resolver.face(c.face());
      } else if (clause instanceof FeatureSeenFromContext c) {
        return Resolver.face(c.face());
      }
    }
    return null;
  }

  private static boolean describes(FeatureClauseContext clause) {
    return clause instanceof FeatureInContext || clause instanceof FeatureSeenFromContext;
  }

  FeatureSpec feature(FeatureLineContext line, String name) {
    FeatureKind kind = FeatureKind.valueOf(line.verb.getText().toUpperCase(Locale.ROOT));
    Face face = statedFace(line);
    Position position = null;
    Length width = null;
    LengthRange widthLimits = null;
    Notation widthNotation = null;
    Length length = null;
    LengthRange lengthLimits = null;
    Notation lengthNotation = null;
    Length depth = null;
    boolean through = kind == FeatureKind.OUTLINE || kind == FeatureKind.WINDOW;
    VertexReader vertices = new VertexReader(file, section);
    Length radius = null;
    OutlineForm form = null;
    Length formFirst = null;
    Length formSecond = null;
    LengthRange diaLimits = null;
    Length tolerance = null;
    ClauseOnce once = new ClauseOnce(file, section);
    for (FeatureClauseContext clause : line.featureClause()) {
      if (VertexReader.isVertex(clause)) {
        vertices.read(clause);
        form = OutlineForm.FREE;
        continue;
      }
      once.check(clause);
      if (clause instanceof FeatureAtContext c) {
        position = position(c.point(), c.corner(), face);
      } else if (clause instanceof FeatureWidthContext c) {
        width = values.positiveLength(section, c.nominal());
        widthLimits = limits(c.nominal(), width, c.sizeTolerance());
        widthNotation = values.notation(c.nominal());
      } else if (clause instanceof FeatureLengthContext c) {
        length = values.positiveLength(section, c.nominal());
        lengthLimits = limits(c.nominal(), length, c.sizeTolerance());
        lengthNotation = values.notation(c.nominal());
      } else if (clause instanceof FeatureDepthContext c) {
        depth = values.positiveLength(section, c.lengthValue());
        if (kind == FeatureKind.WINDOW) {
          file.problems()
              .error(
                  "misplaced-line",
                  section.origin(clause),
                  "a window goes right through; a sunk area is a `pocket`");
        }
      } else if (clause instanceof FeatureThroughContext) {
        through = true;
      } else if (clause instanceof FeatureSizeContext c) {
        List<Length> sizes = values.lengths(section, c.lengthValue());
        length = sizes == null ? null : sizes.get(0);
        width = sizes == null ? null : sizes.get(1);
        lengthNotation = values.notation(c.lengthValue(0));
        widthNotation = values.notation(c.lengthValue(1));
      } else if (clause instanceof FeatureRadiusContext c) {
        radius = values.positiveLength(section, c.lengthValue());
      } else if (clause instanceof FeatureEllipseContext c) {
        form = OutlineForm.ELLIPSE;
        List<Length> axes = values.lengths(section, c.lengthValue());
        formFirst = axes == null ? null : axes.get(0);
        formSecond = axes == null ? null : axes.get(1);
      } else if (clause instanceof FeatureObroundContext c) {
        form = OutlineForm.OBROUND;
        List<Length> sizes = values.lengths(section, c.lengthValue());
        formFirst = sizes == null ? null : sizes.get(0);
        formSecond = sizes == null ? null : sizes.get(1);
      } else if (clause instanceof FeatureCircleContext c) {
        form = OutlineForm.CIRCLE;
        formFirst = values.positiveLength(section, c.nominal());
        formSecond = formFirst;
        diaLimits = limits(c.nominal(), formFirst, c.sizeTolerance());
      } else if (clause instanceof FeatureToleranceContext c) {
        tolerance = Tolerances.plusMinus(values, section, c.plusMinus(), null);
      } else if (!describes(clause)) {
        file.problems()
            .error(
                "misplaced-line",
                section.origin(clause),
                "`" + clause.getStart().getText() + "` says how to cut; write it in a setup");
      }
    }
    vertices.finish(line, kind);
    return new FeatureSpec(
        kind,
        name,
        face,
        position,
        width,
        widthLimits,
        widthNotation,
        length,
        lengthLimits,
        lengthNotation,
        depth,
        through,
        radius,
        form,
        formFirst,
        formSecond,
        diaLimits,
        tolerance,
        vertices.vertices(),
        section.origin(line));
  }
}
