package org.handwheel.model.build;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.antlr.v4.runtime.ParserRuleContext;
import org.handwheel.grammar.HandwheelParser.CheckFlatLineContext;
import org.handwheel.grammar.HandwheelParser.CheckLineContext;
import org.handwheel.grammar.HandwheelParser.CheckRefContext;
import org.handwheel.grammar.HandwheelParser.CheckRelationLineContext;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.LogHeaderContext;
import org.handwheel.grammar.HandwheelParser.LogNoteLineContext;
import org.handwheel.grammar.HandwheelParser.ReadLineContext;
import org.handwheel.grammar.HandwheelParser.StatementContext;
import org.handwheel.model.Face;
import org.handwheel.model.Inspection;
import org.handwheel.model.Located;
import org.handwheel.model.LogSection;
import org.handwheel.model.LogSection.Reading;
import org.handwheel.model.Names.Kind;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.model.Shop;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/** Builds logs of readings and the inspection of the finished part. */
final class RecordsBuilder {
  private final FileBuilder file;
  private final Resolver resolver;
  private final Map<String, Face> datums;
  private final List<LogSection> logs = new ArrayList<>();
  private final List<Inspection> inspections = new ArrayList<>();

  RecordsBuilder(FileBuilder file, Shop shop, @Nullable Part part) {
    this.file = file;
    this.resolver = new Resolver(file, shop);
    this.datums = part == null ? Map.of() : part.datums();
  }

  List<LogSection> logs() {
    return List.copyOf(logs);
  }

  List<Inspection> inspections() {
    return List.copyOf(inspections);
  }

  /** Reads a log or an inspection; other sections are passed over. */
  void read(Section section) {
    if (section.kind() == SectionKind.LOG) {
      readLog(section);
    } else if (section.kind() == SectionKind.INSPECT) {
      readInspection(section);
    }
  }

  private void readLog(Section section) {
    String title = "";
    List<Reading> readings = new ArrayList<>();
    for (ContentContext line : section.lines()) {
      if (section.isBroken(line)) {
        continue;
      }
      StatementContext statement = line.statement();
      if (line.header() instanceof LogHeaderContext header) {
        title = FileBuilder.unquote(header.title());
      } else if (statement instanceof ReadLineContext read) {
        Reading reading = reading(section, read);
        if (reading != null) {
          readings.add(reading);
        }
      } else if (statement instanceof LogNoteLineContext note) {
        useSetup(section, note.setupRef());
      } else if (statement != null && !file.readCommon(section, line)) {
        file.misplaced(section, line);
      }
    }
    logs.add(new LogSection(title, section.header(), readings));
  }

  private @Nullable Reading reading(Section section, ReadLineContext line) {
    useSetup(section, line.setupRef());
    Owned.Instrument instrument = resolver.instrument(section, line.instrumentRef());
    List<Length> values = file.values().lengths(section, line.quantity());
    if (instrument == null || values == null) {
      return null;
    }
    return new Reading(
        new Located<>(line.setupRef().getText(), section.origin(line.setupRef())),
        Resolver.dimension(line.dimension()),
        values,
        instrument,
        section.origin(line));
  }

  private void useSetup(Section section, ParserRuleContext node) {
    file.names().use(Kind.SETUP, "setup", node.getText(), section.origin(node));
  }

  private void readInspection(Section section) {
    for (ContentContext line : section.lines()) {
      StatementContext statement = line.statement();
      if (section.isBroken(line) || statement == null) {
        continue;
      }
      if (statement instanceof CheckLineContext check) {
        Owned.Instrument instrument = resolver.instrument(section, check.instrumentRef());
        check.checkRef().forEach(target -> readCheck(section, target, instrument));
      } else if (statement instanceof CheckRelationLineContext check) {
        Face face = Datums.face(file, section, datums, check.faceOrDatum(0));
        Face reference = Datums.face(file, section, datums, check.faceOrDatum(1));
        Owned.Instrument instrument = resolver.instrument(section, check.instrumentRef());
        if (face != null && reference != null && instrument != null) {
          inspections.add(
              new Inspection.OfRelation(face, reference, instrument, section.origin(check)));
        }
      } else if (statement instanceof CheckFlatLineContext check) {
        Face face = Datums.face(file, section, datums, check.faceOrDatum());
        Owned.Instrument instrument = resolver.instrument(section, check.instrumentRef());
        if (face != null && instrument != null) {
          inspections.add(new Inspection.OfFlatness(face, instrument, section.origin(check)));
        }
      } else if (!file.readCommon(section, line)) {
        file.misplaced(section, line);
      }
    }
  }

  private void readCheck(
      Section section, CheckRefContext target, Owned.@Nullable Instrument instrument) {
    if (target.dimension() != null) {
      if (instrument != null) {
        inspections.add(
            new Inspection.OfDimension(
                Resolver.dimension(target.dimension()), instrument, section.origin(target)));
      }
      return;
    }
    String name = target.getText();
    Kind kind = file.names().knows(Kind.FEATURE, name) ? Kind.FEATURE : Kind.HOLE;
    file.names().use(kind, "hole or feature", name, section.origin(target));
    if (instrument != null) {
      inspections.add(new Inspection.OfFeature(name, instrument, section.origin(target)));
    }
  }
}
