package org.handwheel.model.build;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.antlr.v4.runtime.tree.ParseTree;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.KerfLineContext;
import org.handwheel.grammar.HandwheelParser.MakeLineContext;
import org.handwheel.grammar.HandwheelParser.MaterialLineContext;
import org.handwheel.grammar.HandwheelParser.SizeLineContext;
import org.handwheel.grammar.HandwheelParser.SkinLineContext;
import org.handwheel.grammar.HandwheelParser.StatementContext;
import org.handwheel.grammar.HandwheelParser.WanderLineContext;
import org.handwheel.model.Face;
import org.handwheel.model.Located;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Stock;
import org.handwheel.model.Stock.Skin;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/** Builds the stock section. */
final class StockBuilder {
  private final FileBuilder file;
  private final Section section;
  private final Map<PartDimension, Length> sizes = new EnumMap<>(PartDimension.class);
  private final Map<Face, Located<Skin>> skins = new EnumMap<>(Face.class);
  private @Nullable Origin sizeOrigin;
  private @Nullable Located<Length> kerf;
  private @Nullable Located<Length> wander;
  private @Nullable Located<String> material;
  private int pieces = 1;

  StockBuilder(FileBuilder file, Section section) {
    this.file = file;
    this.section = section;
  }

  Stock build() {
    for (ContentContext line : section.lines()) {
      if (!section.isBroken(line) && line.statement() != null && !file.readCommon(section, line)) {
        read(line, line.statement());
      }
    }
    return new Stock(
        section.header(), sizes, sizeOrigin, skins, kerf, wander, Math.max(1, pieces), material);
  }

  private void read(ContentContext line, StatementContext statement) {
    if (statement instanceof SizeLineContext size) {
      readSize(size);
    } else if (statement instanceof SkinLineContext skin) {
      readSkin(skin);
    } else if (statement instanceof KerfLineContext context) {
      kerf = located(context, file.values().depth(section, context.lengthValue()));
    } else if (statement instanceof WanderLineContext context) {
      wander = located(context, file.values().depth(section, context.lengthValue()));
    } else if (statement instanceof MakeLineContext make) {
      pieces = file.values().wholeNumber(section, make.wholeNumber());
    } else if (statement instanceof MaterialLineContext context) {
      material =
          new Located<>(context.materialRef().getText(), section.origin(context.materialRef()));
    } else {
      file.misplaced(section, line);
    }
  }

  private void readSize(SizeLineContext size) {
    if (sizeOrigin != null) {
      file.problems()
          .repeated(
              "repeated-line",
              section.origin(size),
              "the stock's size is already given",
              sizeOrigin);
      return;
    }
    sizeOrigin = section.origin(size);
    List<Length> lengths = file.values().lengths(section, size.lengthValue());
    if (lengths == null) {
      return;
    }
    if (lengths.stream().anyMatch(length -> !length.isPositive())) {
      file.problems().error("bad-value", sizeOrigin, "every size of the stock must be above zero");
      return;
    }
    sizes.put(PartDimension.LENGTH, lengths.get(0));
    sizes.put(PartDimension.WIDTH, lengths.get(1));
    sizes.put(PartDimension.HEIGHT, lengths.get(2));
  }

  private void readSkin(SkinLineContext line) {
    Skin skin = Skin.valueOf(line.skin.getText().toUpperCase(Locale.ROOT));
    for (Located<Face> face : Resolver.faces(section, line.ALL(), line.faces())) {
      readSkin(face.value(), new Located<>(skin, face.origin()));
    }
  }

  private void readSkin(Face face, Located<Skin> skin) {
    Located<Skin> before = skins.putIfAbsent(face, skin);
    if (before != null) {
      file.problems()
          .repeated(
              "repeated-line",
              skin.origin(),
              "the " + face.word() + " is already said to be " + before.value().words(),
              before.origin());
    }
  }

  private @Nullable Located<Length> located(ParseTree node, @Nullable Length length) {
    return length == null ? null : new Located<>(length, section.origin(node));
  }
}
