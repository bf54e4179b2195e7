package org.handwheel.model.build;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.HeaderContext;
import org.handwheel.grammar.HandwheelParser.OwnHeaderContext;
import org.handwheel.grammar.HandwheelParser.PropertyLineContext;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.model.Located;
import org.handwheel.model.Names.Kind;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Owned;
import org.handwheel.model.Shop;
import org.handwheel.model.Shop.ShopFile;
import org.handwheel.model.Workspace;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Dimension;
import org.handwheel.units.Length;
import org.handwheel.units.Quantity;

/** Builds what one shop file says; a pure function of its tree. */
public final class ShopFiles {
  private final FileBuilder file;
  private final List<Owned> things = new ArrayList<>();
  private final Map<Limit, Quantity> limits = new EnumMap<>(Limit.class);
  private final Map<String, Located<Severity>> severities = new HashMap<>();

  private ShopFiles(SyntaxTree tree) {
    this.file = new FileBuilder(tree);
  }

  public static ShopFile build(SyntaxTree tree) {
    return new ShopFiles(tree).build();
  }

  /** The names and values a shop file has after it was built. */
  static FileBuilder built(SyntaxTree tree) {
    ShopFiles files = new ShopFiles(tree);
    files.build();
    return files.file;
  }

  /** What a shop file of the workspace says, with what is wrong on the way to files it uses. */
  public static Checkable check(Workspace workspace, SyntaxTree tree) {
    ShopFiles files = new ShopFiles(tree);
    ShopFile built = files.build();
    UsedShops used = UsedShops.read(workspace, files.file);
    return new Checkable(
        new ShopFile(
            built.path(),
            built.shop(),
            built.names(),
            built.uses(),
            files.file.problems().findings()),
        used.paths());
  }

  /**
   * A shop file with the files it rests on.
   *
   * @param usedFiles workspace paths, those that the used files use in turn too
   */
  public record Checkable(ShopFile file, List<String> usedFiles) {
    public Checkable {
      usedFiles = List.copyOf(usedFiles);
    }
  }

  private ShopFile build() {
    for (Section section : file.tree().sections()) {
      section.problems().forEach(file.problems()::add);
      for (ContentContext line : section.lines()) {
        if (!section.isBroken(line)) {
          readLine(section, line);
        }
      }
      if (section.kind() == SectionKind.OWN) {
        readThing(section);
      }
    }
    return new ShopFile(
        file.tree().path(),
        new Shop(things, new Limits(limits), severities),
        file.names().names(),
        file.uses(),
        file.problems().findings());
  }

  private void readLine(Section section, ContentContext line) {
    if (line.header() != null) {
      checkHeader(section, line.header());
    } else if (line.statement() instanceof PropertyLineContext) {
      if (section.kind() != SectionKind.OWN) {
        file.misplaced(section, line);
      }
    } else if (line.statement() != null && !file.readCommon(section, line)) {
      file.misplaced(section, line);
    }
  }

  private void checkHeader(Section section, HeaderContext header) {
    SectionKind kind = section.kind();
    if (kind != SectionKind.SHOP && kind != SectionKind.OWN) {
      file.problems()
          .error(
              "misplaced-line",
              section.origin(header),
              "`" + kind.word() + "` belongs in a plan file, not in a shop file");
    }
  }

  private void readThing(Section section) {
    ContentContext first = section.lines().isEmpty() ? null : section.lines().get(0);
    if (first == null
        || !(first.header() instanceof OwnHeaderContext header)
        || section.isBroken(first)) {
      return;
    }
    OwnKind kind =
        OwnKind.valueOf(header.ownKind().getText().toUpperCase(Locale.ROOT).replace('-', '_'));
    String name = header.name().getText();
    Origin origin = section.origin(header.name());
    // Limits and severities are settings: nothing refers to them.
    if (kind != OwnKind.LIMITS && kind != OwnKind.SEVERITIES) {
      file.names().declare(nameKind(kind), name, origin);
    }
    Properties properties =
        new Properties(section, file.values(), file.problems(), "`" + name + "`");
    switch (kind) {
      case LIMITS -> readLimits(properties);
      case SEVERITIES -> readSeverities(properties);
      default -> {
        Owned thing = new ThingBuilder(name, origin, properties).build(kind);
        properties.finish();
        if (thing != null) {
          things.add(thing);
        }
      }
    }
  }

  private void readLimits(Properties properties) {
    for (String property : List.copyOf(properties.names())) {
      Limit limit = Limit.named(property).orElse(null);
      if (limit == null) {
        continue;
      }
      Dimension dimension = limit.fallback().dimension();
      if (dimension == Dimension.LENGTH) {
        Length length = properties.length(property);
        if (length != null) {
          limits.put(limit, Quantity.of(length));
        }
      } else {
        BigFraction number = properties.number(property);
        boolean whole =
            number != null && number.signum() > 0 && number.compareTo(BigFraction.ONE) <= 0;
        if (number != null && limit.isShare() && !whole) {
          properties.refuse(property, "lies over 0 and is at most 1");
        } else if (number != null) {
          limits.put(limit, Quantity.number(number));
        }
      }
    }
    // Naming every limit lets a misspelt one be suggested.
    for (Limit limit : Limit.values()) {
      if (!properties.has(limit.word())) {
        properties.length(limit.word());
      }
    }
    properties.finish();
  }

  private void readSeverities(Properties properties) {
    for (String rule : List.copyOf(properties.names())) {
      Severity severity = properties.word(rule, Severity.WARNING);
      severities.put(rule, new Located<>(severity, properties.origin(rule)));
    }
  }

  /** The kind of name that a kind of thing has. */
  static Kind nameKind(OwnKind kind) {
    return switch (kind) {
      case MACHINE -> Kind.MACHINE;
      case VISE -> Kind.VISE;
      case PARALLELS -> Kind.PARALLELS;
      case CUTTER -> Kind.CUTTER;
      case INSTRUMENT -> Kind.INSTRUMENT;
      case FINDER -> Kind.FINDER;
      case MATERIAL -> Kind.MATERIAL;
      default -> Kind.PIECE;
    };
  }
}
