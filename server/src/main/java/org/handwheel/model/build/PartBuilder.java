package org.handwheel.model.build;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.grammar.HandwheelParser.BreakLineContext;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.DatumFaceContext;
import org.handwheel.grammar.HandwheelParser.DatumLineContext;
import org.handwheel.grammar.HandwheelParser.DimensionLineContext;
import org.handwheel.grammar.HandwheelParser.FaceOrDatumContext;
import org.handwheel.grammar.HandwheelParser.FeatureLineContext;
import org.handwheel.grammar.HandwheelParser.FlatLineContext;
import org.handwheel.grammar.HandwheelParser.GeneralToleranceLineContext;
import org.handwheel.grammar.HandwheelParser.HoleLineContext;
import org.handwheel.grammar.HandwheelParser.MaterialLineContext;
import org.handwheel.grammar.HandwheelParser.PatternLineContext;
import org.handwheel.grammar.HandwheelParser.PlacesToleranceContext;
import org.handwheel.grammar.HandwheelParser.PlacesToleranceLineContext;
import org.handwheel.grammar.HandwheelParser.RelationLineContext;
import org.handwheel.grammar.HandwheelParser.SquareAllLineContext;
import org.handwheel.grammar.HandwheelParser.StatementContext;
import org.handwheel.grammar.HandwheelParser.SurfaceLineContext;
import org.handwheel.model.Face;
import org.handwheel.model.Located;
import org.handwheel.model.Names.Kind;
import org.handwheel.model.Part;
import org.handwheel.model.Part.Callout;
import org.handwheel.model.Part.DimensionSpec;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Part.GeneralTolerance;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Part.Notation;
import org.handwheel.model.Part.PatternSpec;
import org.handwheel.model.PartDimension;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;
import org.handwheel.units.Quantity;
import org.jspecify.annotations.Nullable;

/** Builds the part section. */
final class PartBuilder {
  /** The roughest class of ISO 1302, N12 (from memory). */
  private static final Length ROUGHEST = Length.of("50", LengthUnit.UM);

  private final FileBuilder file;
  private final Values values;
  private final Section section;
  private final FeatureBuilder features;
  private final Map<PartDimension, DimensionSpec> dimensions = new EnumMap<>(PartDimension.class);
  private final Map<String, Face> datums = new LinkedHashMap<>();
  private final Map<String, Origin> datumOrigins = new HashMap<>();
  private final List<Callout> callouts = new ArrayList<>();
  private final List<Located<Face>> surfaces = new ArrayList<>();
  private final List<HoleSpec> holes = new ArrayList<>();
  private final List<PatternSpec> patterns = new ArrayList<>();
  private final List<FeatureSpec> specs = new ArrayList<>();
  private @Nullable Located<String> material;
  private @Nullable GeneralTolerance general;
  private @Nullable Located<Length> brokenEdges;

  PartBuilder(FileBuilder file, Section section) {
    this.file = file;
    this.values = file.values();
    this.section = section;
    this.features = new FeatureBuilder(file, section);
  }

  Part build() {
    for (ContentContext line : section.lines()) {
      if (section.isBroken(line) || line.statement() == null) {
        continue;
      }
      if (!file.readCommon(section, line)) {
        read(line, line.statement());
      }
    }
    return new Part(
        section.header(),
        material,
        dimensions,
        datums,
        callouts,
        surfaces,
        general,
        brokenEdges,
        holes,
        patterns,
        specs);
  }

  private void read(ContentContext line, StatementContext statement) {
    if (statement instanceof DimensionLineContext dimension) {
      readDimension(dimension);
    } else if (statement instanceof DatumLineContext datum) {
      readDatum(datum);
    } else if (statement instanceof RelationLineContext relation) {
      readRelation(relation);
    } else if (statement instanceof SquareAllLineContext all) {
      Length zone = values.positiveLength(section, all.lengthValue());
      if (zone != null) {
        callouts.add(new Callout.SquareAll(zone, section.origin(all)));
      }
    } else if (statement instanceof FlatLineContext flat) {
      Face face = face(flat.faceOrDatum());
      Length zone = values.positiveLength(section, flat.lengthValue());
      if (face != null && zone != null) {
        callouts.add(new Callout.Flat(face, zone, section.origin(flat)));
      }
    } else if (statement instanceof MaterialLineContext context) {
      material =
          new Located<>(context.materialRef().getText(), section.origin(context.materialRef()));
    } else if (statement instanceof GeneralToleranceLineContext tolerance) {
      general(standard(tolerance));
    } else if (statement instanceof PlacesToleranceLineContext tolerance) {
      general(byPlaces(tolerance));
    } else if (statement instanceof SurfaceLineContext surface) {
      checkRoughness(surface);
      surfaces.addAll(Resolver.faces(section, surface.ALL(), surface.faces()));
    } else if (statement instanceof BreakLineContext broken) {
      Length size = values.depth(section, broken.lengthValue());
      if (size != null) {
        brokenEdges = new Located<>(size, section.origin(broken));
      }
    } else if (statement instanceof HoleLineContext hole) {
      holes.add(features.hole(hole));
    } else if (statement instanceof PatternLineContext pattern) {
      patterns.add(features.pattern(pattern, holes));
    } else if (statement instanceof FeatureLineContext feature) {
      readFeature(feature);
    } else {
      file.misplaced(section, line);
    }
  }

  private void readDimension(DimensionLineContext line) {
    PartDimension dimension = Resolver.dimension(line.dimension());
    Origin origin = section.origin(line);
    Length nominal = values.positiveLength(section, line.nominal());
    if (nominal == null) {
      file.names().doubt(dimension.word());
      return;
    }
    LengthRange limits =
        line.sizeTolerance() == null
            ? null
            : Tolerances.read(file, section, line.nominal(), nominal, line.sizeTolerance());
    if (limits != null && !limits.low().isPositive()) {
      file.problems().error("bad-value", origin, "the tolerance is larger than the size");
      limits = null;
    }
    Length middle =
        line.sizeTolerance() != null
                && limits != null
                && line.sizeTolerance() instanceof HandwheelParser.LimitToleranceContext
            ? limits.middle()
            : nominal;
    DimensionSpec before =
        dimensions.putIfAbsent(
            dimension,
            new DimensionSpec(dimension, middle, limits, values.notation(line.nominal()), origin));
    if (before != null) {
      file.problems()
          .repeated(
              "repeated-line",
              origin,
              "the " + dimension.word() + " is already given",
              before.origin());
      return;
    }
    values.define(dimension.word(), Quantity.of(middle));
  }

  /** Roughness has units of its own: a bare number is um, or uin in a file in inches. */
  private void checkRoughness(SurfaceLineContext surface) {
    LengthUnit bare = values.units() == LengthUnit.MM ? LengthUnit.UM : LengthUnit.UIN;
    boolean unitsKnown = values.units() != null;
    Length ra = values.length(section, surface.roughness(), unitsKnown ? bare : null);
    if (ra == null) {
      return;
    }
    Origin origin = section.origin(surface.roughness());
    if (!ra.isPositive()) {
      file.problems().error("bad-value", origin, "a roughness must be more than zero");
    } else if (ra.isMoreThan(ROUGHEST)) {
      file.problems()
          .error("bad-value", origin, "no milled face is as rough as " + ra + "; write um or uin");
    }
  }

  private void readDatum(DatumLineContext line) {
    for (DatumFaceContext datum : line.datumFace()) {
      String letter = datum.name().getText().toUpperCase(Locale.ROOT);
      if (datums.putIfAbsent(letter, Resolver.face(datum.face())) != null) {
        file.problems()
            .repeated(
                "duplicate-name",
                section.origin(datum),
                "datum " + letter + " is given twice",
                datumOrigins.getOrDefault(letter, section.origin(datum)));
      }
      datumOrigins.putIfAbsent(letter, section.origin(datum));
    }
  }

  private void readRelation(RelationLineContext line) {
    Face face = face(line.faceOrDatum(0));
    Face reference = face(line.faceOrDatum(1));
    Length zone = values.positiveLength(section, line.lengthValue());
    if (face == null || reference == null || zone == null) {
      return;
    }
    Origin origin = section.origin(line);
    boolean square = line.kind.getType() == HandwheelParser.SQUARE;
    if (square && !face.adjoins(reference)) {
      file.problems()
          .error(
              "bad-value",
              origin,
              "the " + face.word() + " and the " + reference.word() + " do not meet at an edge");
    } else if (!square && face.opposite() != reference) {
      file.problems()
          .error(
              "bad-value",
              origin,
              "only opposite faces can be parallel: the "
                  + face.word()
                  + " and the "
                  + face.opposite().word());
    } else {
      callouts.add(
          square
              ? new Callout.Square(face, reference, zone, origin)
              : new Callout.Parallel(face, reference, zone, origin));
    }
  }

  private @Nullable Face face(FaceOrDatumContext context) {
    return Datums.face(file, section, datums, context);
  }

  private void general(GeneralTolerance read) {
    if (general == null) {
      general = read;
    } else {
      file.problems()
          .repeated(
              "repeated-line",
              read.origin(),
              "the general tolerance is already given",
              general.origin());
    }
  }

  private GeneralTolerance standard(GeneralToleranceLineContext line) {
    var standard = line.standardTolerance();
    int number = values.wholeNumber(section, standard.wholeNumber());
    boolean known =
        standard.name(0).getText().equalsIgnoreCase("iso")
            && number == 2768
            && standard.name(1).getText().matches("[fmcv]");
    if (!known) {
      file.problems()
          .error(
              "bad-value",
              section.origin(standard),
              "general tolerances are ISO 2768 f, m, c or v");
    }
    return new GeneralTolerance.Standard(
        standard.name(0).getText(), number, standard.name(1).getText(), section.origin(standard));
  }

  /** A title block; a sole unit on its last deviation holds for all. */
  private GeneralTolerance byPlaces(PlacesToleranceLineContext line) {
    Map<Notation, Length> deviations = new LinkedHashMap<>();
    List<Length> lengths =
        values.lengths(
            section,
            line.placesTolerance().stream().map(entry -> entry.plusMinus().quantity()).toList());
    for (int i = 0; lengths != null && i < lengths.size(); i++) {
      PlacesToleranceContext entry = line.placesTolerance(i);
      if (lengths.get(i).isNegative()) {
        file.problems()
            .error("bad-value", section.origin(entry), "a tolerance is not below nothing");
      } else if (deviations.putIfAbsent(Values.notation(entry.number()), lengths.get(i)) != null) {
        file.problems()
            .error(
                "repeated-clause",
                section.origin(entry),
                "sizes written like " + entry.number().getText() + " have their tolerance already");
      }
    }
    return new GeneralTolerance.ByPlaces(deviations, section.origin(line));
  }

  private void readFeature(FeatureLineContext line) {
    if (line.featureTarget().face() != null) {
      file.problems()
          .error("bad-value", section.origin(line.featureTarget()), "give the feature a name");
      return;
    }
    String name = line.featureTarget().getText();
    file.names().declare(Kind.FEATURE, name, section.origin(line.featureTarget()));
    specs.add(features.feature(line, name));
  }
}
