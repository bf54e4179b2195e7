package org.handwheel.model.build;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.ParserRuleContext;
import org.handwheel.grammar.HandwheelParser.FeatureArcContext;
import org.handwheel.grammar.HandwheelParser.FeatureBossContext;
import org.handwheel.grammar.HandwheelParser.FeatureCircleContext;
import org.handwheel.grammar.HandwheelParser.FeatureClauseContext;
import org.handwheel.grammar.HandwheelParser.FeatureCornerContext;
import org.handwheel.grammar.HandwheelParser.FeatureEllipseContext;
import org.handwheel.grammar.HandwheelParser.FeatureHollowContext;
import org.handwheel.grammar.HandwheelParser.FeatureLineContext;
import org.handwheel.grammar.HandwheelParser.FeatureObroundContext;
import org.handwheel.grammar.HandwheelParser.FeatureRadiusContext;
import org.handwheel.grammar.HandwheelParser.LengthValueContext;
import org.handwheel.grammar.HandwheelParser.PointContext;
import org.handwheel.model.Part.Bow;
import org.handwheel.model.Part.Bulge;
import org.handwheel.model.Part.FeatureKind;
import org.handwheel.model.Part.Turn;
import org.handwheel.model.Part.Vertex;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/** Reads what a free outline goes round, in the order of its line. */
final class VertexReader {
  private final FileBuilder file;
  private final Values values;
  private final Section section;
  private final List<Vertex> vertices = new ArrayList<>();
  private boolean damaged;

  VertexReader(FileBuilder file, Section section) {
    this.file = file;
    this.values = file.values();
    this.section = section;
  }

  static boolean isVertex(FeatureClauseContext clause) {
    return clause instanceof FeatureCornerContext
        || clause instanceof FeatureBossContext
        || clause instanceof FeatureArcContext
        || clause instanceof FeatureHollowContext;
  }

  void read(FeatureClauseContext clause) {
    if (clause instanceof FeatureCornerContext c) {
      Turn turn = c.TANGENT() != null ? new Turn.Tangent() : new Turn.Sharp();
      if (c.lengthValue() != null) {
        Length radius = values.positiveLength(section, c.lengthValue());
        turn = radius == null ? null : new Turn.Blend(radius);
      }
      add(c, c.point(), turn);
    } else if (clause instanceof FeatureBossContext c) {
      Length radius = values.positiveLength(section, c.lengthValue());
      add(c, c.point(), radius == null ? null : new Turn.Boss(radius));
    } else if (clause instanceof FeatureArcContext c) {
      bow(c, c.lengthValue(), Bulge.ARC);
    } else if (clause instanceof FeatureHollowContext c) {
      bow(c, c.lengthValue(), Bulge.HOLLOW);
    }
  }

  private void add(ParserRuleContext clause, PointContext point, @Nullable Turn turn) {
    List<Length> at = values.lengths(section, point.expr());
    if (at == null || turn == null) {
      damaged = true;
      return;
    }
    vertices.add(new Vertex(at.get(0), at.get(1), turn, null, section.origin(clause)));
  }

  /** A side belongs to the place before it. */
  private void bow(ParserRuleContext clause, LengthValueContext value, Bulge bulge) {
    Origin origin = section.origin(clause);
    Length radius = values.positiveLength(section, value);
    if (radius == null || damaged) {
      damaged = true;
      return;
    }
    Vertex before = vertices.isEmpty() ? null : vertices.get(vertices.size() - 1);
    if (before == null || before.next() != null) {
      damaged = true;
      file.problems()
          .error(
              "bad-value",
              origin,
              before == null
                  ? "an arc begins at a place: write a `corner` or `boss` before it"
                  : "two arcs in a row: write the `corner` where they meet between them");
      return;
    }
    vertices.set(
        vertices.size() - 1,
        new Vertex(
            before.first(),
            before.second(),
            before.turn(),
            new Bow(radius, bulge, origin),
            before.origin()));
  }

  /** Reports what does not go with a free outline, at the end of its line. */
  void finish(FeatureLineContext line, FeatureKind kind) {
    boolean stated = line.featureClause().stream().anyMatch(VertexReader::isVertex);
    for (FeatureClauseContext clause : line.featureClause()) {
      boolean isForm =
          clause instanceof FeatureEllipseContext
              || clause instanceof FeatureObroundContext
              || clause instanceof FeatureCircleContext;
      boolean isFree = isVertex(clause);
      String word = "`" + clause.getStart().getText() + "`";
      if (isFree && kind != FeatureKind.OUTLINE && kind != FeatureKind.WINDOW) {
        error("misplaced-line", clause, word + " describes an `outline` or a `window`");
        return;
      } else if (stated && isForm) {
        error("repeated-clause", clause, "the form is given already, by its corners");
      } else if (stated && clause instanceof FeatureRadiusContext) {
        error(
            "misplaced-line",
            clause,
            "a corner of a free outline is rounded by `blend`: corner (60, 0) blend 8");
      }
    }
    if (stated && !damaged && vertices.size() < 2) {
      error(
          "missing-clause",
          line.featureTarget(),
          "a free outline goes round at least two places: `corner (x, y)` or `boss (x, y) radius"
              + " R`");
    }
  }

  private void error(String id, ParserRuleContext at, String message) {
    file.problems().error(id, section.origin(at), message);
  }

  /** The places, or none if one of them could not be read. */
  List<Vertex> vertices() {
    return damaged || vertices.size() < 2 ? List.of() : vertices;
  }
}
