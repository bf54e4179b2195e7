package org.handwheel.lsp;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.lsp4j.DocumentHighlight;
import org.eclipse.lsp4j.DocumentHighlightKind;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.LocationLink;
import org.eclipse.lsp4j.PrepareRenameDefaultBehavior;
import org.eclipse.lsp4j.PrepareRenameResult;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.SymbolKind;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.Either3;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.handwheel.ide.References;
import org.handwheel.ide.References.Listing;
import org.handwheel.ide.Rename;
import org.handwheel.ide.Symbols;
import org.handwheel.ide.Symbols.Symbol;
import org.handwheel.ide.View;
import org.handwheel.lsp.PlanTexts.Question;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.SyntaxTree;

/** Names and symbols in the words of the protocol. */
final class Navigation {
  private Navigation() {}

  /** As many symbols of the workspace as are sent at once. */
  private static final int MOST_SYMBOLS = 200;

  static Optional<Either<List<? extends Location>, List<? extends LocationLink>>> definition(
      Question question, View view, int offset) {
    ToProtocol to = question.toProtocol(view);
    return References.definition(view, offset)
        .map(
            link -> {
              Location target = to.location(link.to());
              if (!question.client().definitionLinks()) {
                return Either.forLeft(List.of(target));
              }
              LocationLink answer =
                  new LocationLink(
                      target.getUri(),
                      to.location(link.line()).getRange(),
                      target.getRange(),
                      to.range(link.from()));
              return Either.forRight(List.of(answer));
            });
  }

  static List<DocumentHighlight> highlights(Question question, View view, int offset) {
    ToProtocol to = question.toProtocol(view);
    return References.highlights(view, offset).stream()
        .map(
            mark ->
                new DocumentHighlight(
                    to.range(mark.origin()),
                    mark.touch() == References.Touch.WRITE
                        ? DocumentHighlightKind.Write
                        : DocumentHighlightKind.Read))
        .toList();
  }

  static List<Location> references(Question question, int offset, Listing listing) {
    Projects projects = question.projects();
    SyntaxTree tree = question.file().tree();
    return References.all(projects.project(), tree, offset, listing).stream()
        .flatMap(origin -> projects.location(origin).stream())
        .toList();
  }

  // ---- Rename
  // -------------------------------------------------------------------------------------

  static Either3<Range, PrepareRenameResult, PrepareRenameDefaultBehavior> prepareRename(
      Question question, int offset) {
    Projects projects = question.projects();
    SyntaxTree tree = question.file().tree();
    Rename.Changes changes = orRefuse(new Rename(projects.project()).prepare(tree, offset));
    return Either3.forSecond(
        new PrepareRenameResult(projects.range(tree, changes.places().get(0)), changes.name()));
  }

  static WorkspaceEdit rename(Question question, int offset, String newName) {
    Projects projects = question.projects();
    SyntaxTree tree = question.file().tree();
    Rename.Changes changes = orRefuse(new Rename(projects.project()).rename(tree, offset, newName));
    Map<Origin, String> edits = new LinkedHashMap<>();
    changes.places().forEach(place -> edits.put(place, changes.name()));
    return projects.editFrom(question.file(), edits);
  }

  private static Rename.Changes orRefuse(Rename.Outcome outcome) {
    if (outcome instanceof Rename.Refused refused) {
      throw new ResponseErrorException(
          new ResponseError(ResponseErrorCode.RequestFailed, refused.reason(), null));
    }
    return (Rename.Changes) outcome;
  }

  // ---- Symbols
  // --------------------------------------------------------------------------------------

  static List<Either<SymbolInformation, DocumentSymbol>> symbols(Question question) {
    SyntaxTree tree = question.file().tree();
    List<Symbol> symbols = Symbols.of(tree);
    List<Either<SymbolInformation, DocumentSymbol>> answer = new ArrayList<>();
    for (Symbol symbol : symbols) {
      if (question.client().symbolTrees()) {
        answer.add(Either.forRight(symbol(question, tree, symbol)));
      } else {
        flat(question, tree, symbol, "", answer);
      }
    }
    return answer;
  }

  private static DocumentSymbol symbol(Question question, SyntaxTree tree, Symbol symbol) {
    Positions positions = question.client().positions();
    return new DocumentSymbol(
        symbol.name(),
        kind(symbol.kind()),
        positions.range(tree.source(), symbol.start(), symbol.end()),
        positions.range(tree.source(), symbol.nameStart(), symbol.nameEnd()),
        symbol.detail(),
        symbol.children().stream().map(child -> symbol(question, tree, child)).toList());
  }

  /** For editors that know no trees. */
  @SuppressWarnings("deprecation")
  private static void flat(
      Question question,
      SyntaxTree tree,
      Symbol symbol,
      String within,
      List<Either<SymbolInformation, DocumentSymbol>> out) {
    Range range = question.client().positions().range(tree.source(), symbol.start(), symbol.end());
    out.add(
        Either.forLeft(
            new SymbolInformation(
                symbol.name(),
                kind(symbol.kind()),
                new Location(question.file().uri(), range),
                within)));
    for (Symbol child : symbol.children()) {
      flat(question, tree, child, symbol.name(), out);
    }
  }

  static List<WorkspaceSymbol> search(Projects projects, String query) {
    return Symbols.search(projects.project(), query).stream()
        .limit(MOST_SYMBOLS)
        .flatMap(
            found ->
                projects.project().tree(found.path()).stream()
                    .map(
                        tree ->
                            new WorkspaceSymbol(
                                found.symbol().name(),
                                kind(found.symbol().kind()),
                                Either.forLeft(
                                    projects.location(
                                        tree,
                                        found.symbol().nameStart(),
                                        found.symbol().nameEnd())),
                                found.within().isEmpty() ? found.path() : found.within())))
        .toList();
  }

  private static SymbolKind kind(Symbols.Kind kind) {
    return switch (kind) {
      case PLAN -> SymbolKind.File;
      case SHOP -> SymbolKind.Package;
      case PART -> SymbolKind.Class;
      case STOCK -> SymbolKind.Object;
      case SETUP -> SymbolKind.Function;
      case LOG, INSPECTION -> SymbolKind.Event;
      case THING -> SymbolKind.Class;
      case SIZE, HOLE, FEATURE -> SymbolKind.Field;
      case VALUE -> SymbolKind.Constant;
      case HOLD -> SymbolKind.Interface;
      case CUT -> SymbolKind.Operator;
      case PROPERTY -> SymbolKind.Property;
    };
  }
}
