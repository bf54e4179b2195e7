package org.handwheel.lsp;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.lsp4j.DocumentLink;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeKind;
import org.eclipse.lsp4j.ParameterInformation;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.SelectionRange;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensLegend;
import org.eclipse.lsp4j.SignatureHelp;
import org.eclipse.lsp4j.SignatureInformation;
import org.eclipse.lsp4j.jsonrpc.messages.Tuple;
import org.handwheel.ide.Folds;
import org.handwheel.ide.RuleMentions;
import org.handwheel.ide.Selections;
import org.handwheel.ide.Signatures;
import org.handwheel.ide.UsePaths;
import org.handwheel.ide.View;
import org.handwheel.ide.WordColours;
import org.handwheel.ide.WordColours.Word;
import org.handwheel.lsp.PlanTexts.Question;
import org.handwheel.syntax.SourceText;
import org.handwheel.syntax.SyntaxTree;

/** Colours, folds, selections, links and signatures in the words of the protocol. */
final class Shapes {
  private static final int DECLARATION = 1;
  private static final int READONLY = 2;

  private Shapes() {}

  /** The protocol's own names; a word's number is its type's place in this list. */
  private static final List<String> TYPES =
      Stream.of(WordColours.Type.values()).map(Shapes::name).toList();

  static SemanticTokensLegend legend() {
    return new SemanticTokensLegend(TYPES, List.of("declaration", "readonly"));
  }

  private static String name(WordColours.Type type) {
    return switch (type) {
      case KEYWORD -> "keyword";
      case VARIABLE -> "variable";
      case PROPERTY -> "property";
      case NUMBER -> "number";
      case STRING -> "string";
      case COMMENT -> "comment";
      case ENUM_MEMBER -> "enumMember";
      case FUNCTION -> "function";
      case CLASS -> "class";
    };
  }

  /** Five numbers a word, each counted from the word before. */
  static SemanticTokens tokens(Question question, View view, int start, int end) {
    Positions positions = question.client().positions();
    SourceText source = view.tree().source();
    List<Integer> data = new ArrayList<>();
    int line = 0;
    int column = 0;
    for (Word word : WordColours.of(view, start, end)) {
      Position from = positions.position(source, word.start());
      Position to = positions.position(source, word.end());
      int down = from.getLine() - line;
      data.add(down);
      data.add(down == 0 ? from.getCharacter() - column : from.getCharacter());
      data.add(to.getCharacter() - from.getCharacter());
      data.add(TYPES.indexOf(name(word.type())));
      data.add(modifiers(word.modifier()));
      line = from.getLine();
      column = from.getCharacter();
    }
    return new SemanticTokens(data);
  }

  private static int modifiers(WordColours.Modifier modifier) {
    return switch (modifier) {
      case NONE -> 0;
      case DECLARATION -> DECLARATION;
      case READONLY -> READONLY;
      case DECLARATION_READONLY -> DECLARATION | READONLY;
    };
  }

  static List<FoldingRange> folds(Question question) {
    return Folds.of(question.file().tree()).stream()
        .map(
            fold -> {
              FoldingRange range = new FoldingRange(fold.first(), fold.last());
              range.setKind(
                  fold.kind() == Folds.Kind.COMMENT
                      ? FoldingRangeKind.Comment
                      : FoldingRangeKind.Region);
              if (question.client().collapsedText()) {
                range.setCollapsedText(fold.collapsed());
              }
              return range;
            })
        .toList();
  }

  static SelectionRange selection(Question question, int offset) {
    SyntaxTree tree = question.file().tree();
    List<Selections.Piece> pieces = Selections.around(tree, offset);
    SelectionRange outer = new SelectionRange();
    for (int i = pieces.size() - 1; i >= 0; i--) {
      Range range =
          question
              .client()
              .positions()
              .range(tree.source(), pieces.get(i).start(), pieces.get(i).end());
      outer = i == pieces.size() - 1 ? innermost(range) : new SelectionRange(range, outer);
    }
    return outer;
  }

  private static SelectionRange innermost(Range range) {
    SelectionRange whole = new SelectionRange();
    whole.setRange(range);
    return whole;
  }

  static List<DocumentLink> links(Question question) {
    SyntaxTree tree = question.file().tree();
    List<DocumentLink> links = new ArrayList<>();
    for (UsePaths.Used used : UsePaths.of(tree)) {
      if (used.path() != null) {
        DocumentLink link =
            new DocumentLink(
                question
                    .client()
                    .positions()
                    .range(tree.source(), tree.start(used.origin()), tree.end(used.origin())),
                question.uri(used.path()));
        link.setTooltip("Open " + used.path());
        links.add(link);
      }
    }
    for (RuleMentions.Mention mention : RuleMentions.of(tree)) {
      RuleLinks.besideProgram()
          .page(mention.rule())
          .ifPresent(
              page -> {
                DocumentLink link =
                    new DocumentLink(
                        question
                            .client()
                            .positions()
                            .range(tree.source(), mention.start(), mention.end()),
                        page);
                link.setTooltip("About the rule " + mention.rule());
                links.add(link);
              });
    }
    return links;
  }

  static Optional<SignatureHelp> signature(Question question, int offset) {
    return Signatures.at(question.file().tree(), offset)
        .map(
            signature -> {
              List<ParameterInformation> slots = new ArrayList<>();
              for (Signatures.Slot slot : signature.slots()) {
                ParameterInformation parameter = new ParameterInformation();
                parameter.setLabel(Tuple.two(slot.start(), slot.end()));
                slots.add(parameter);
              }
              SignatureInformation information =
                  new SignatureInformation(signature.label(), signature.meaning(), slots);
              // One beyond the last means that none is being filled.
              int active = signature.active() < 0 ? slots.size() : signature.active();
              return new SignatureHelp(List.of(information), 0, active);
            });
  }
}
