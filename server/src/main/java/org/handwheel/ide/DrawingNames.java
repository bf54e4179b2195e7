package org.handwheel.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.tree.ParseTree;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.DatumFaceContext;
import org.handwheel.grammar.HandwheelParser.DatumLineContext;
import org.handwheel.grammar.HandwheelParser.DimensionContext;
import org.handwheel.grammar.HandwheelParser.DimensionLineContext;
import org.handwheel.grammar.HandwheelParser.DivisorContext;
import org.handwheel.grammar.HandwheelParser.FaceOrDatumContext;
import org.handwheel.grammar.HandwheelParser.FactorContext;
import org.handwheel.grammar.HandwheelParser.NameContext;
import org.handwheel.grammar.HandwheelParser.NominalContext;
import org.handwheel.model.PartDimension;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;

/** Words of the drawing that are no free names: the part's sizes and its datum letters. */
final class DrawingNames {
  /**
   * A size or a datum letter somewhere in the text.
   *
   * @param word in lower case
   * @param declares whether this place gives it, in the part
   */
  record Mention(String word, Origin origin, boolean declares) {}

  private DrawingNames() {}

  /** The size or datum letter at a place. */
  static Optional<Mention> at(SyntaxTree tree, Spot spot) {
    return all(tree).stream().filter(mention -> spot.isIn(mention.origin())).findFirst();
  }

  /** Every mention of the same size or letter. */
  static List<Mention> of(SyntaxTree tree, String word) {
    return all(tree).stream().filter(mention -> mention.word().equals(word)).toList();
  }

  private static List<Mention> all(SyntaxTree tree) {
    List<Mention> mentions = new ArrayList<>();
    for (Section section : tree.sections()) {
      for (ContentContext line : section.lines()) {
        if (!section.isBroken(line)) {
          collect(section, line, mentions);
        }
      }
    }
    return mentions;
  }

  private static void collect(Section section, ParserRuleContext node, List<Mention> out) {
    if (node instanceof DimensionContext) {
      boolean declares = node.getParent() instanceof DimensionLineContext;
      out.add(mention(section, node, declares));
      return;
    }
    if (node instanceof NameContext name) {
      // Elsewhere a word of a size may be a free name, such as a hole's.
      if (isSize(name)) {
        out.add(mention(section, node, false));
      }
      return;
    }
    if (node instanceof DatumFaceContext datum && datum.getParent() instanceof DatumLineContext) {
      out.add(mention(section, datum.name(), true));
      return;
    }
    if (node instanceof FaceOrDatumContext place && place.name() != null) {
      out.add(mention(section, place.name(), false));
      return;
    }
    for (int i = 0; i < node.getChildCount(); i++) {
      if (node.getChild(i) instanceof ParserRuleContext child) {
        collect(section, child, out);
      }
    }
  }

  private static boolean isSize(NameContext name) {
    boolean value =
        name.getParent() instanceof FactorContext
            || name.getParent() instanceof DivisorContext
            || name.getParent() instanceof NominalContext;
    String word = name.getText().toLowerCase(Locale.ROOT);
    return value
        && (word.equals(PartDimension.LENGTH.word())
            || word.equals(PartDimension.WIDTH.word())
            || word.equals(PartDimension.HEIGHT.word()));
  }

  private static Mention mention(Section section, ParseTree node, boolean declares) {
    return new Mention(node.getText().toLowerCase(Locale.ROOT), section.origin(node), declares);
  }
}
