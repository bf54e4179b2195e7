package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionCapabilities;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CodeActionResolveSupportCapabilities;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentOnTypeFormattingParams;
import org.eclipse.lsp4j.DocumentRangeFormattingParams;
import org.eclipse.lsp4j.FormattingOptions;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextDocumentClientCapabilities;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.handwheel.syntax.SourceText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Formatting, proposals and changes as an editor asks for them. */
final class EditingTests {
  private static final String TEXT =
      "part\r\n  length   5\r\nsetup one\r\nwipe   jaws\r\n  wipee table\r\n";
  private static final String MENDED = TEXT.replace("wipee", "wipe");

  @TempDir private Path folder;

  private static TextDocumentService texts(ClientCapabilities client) throws Exception {
    HandwheelServer server = new HandwheelServer("test", () -> {});
    InitializeParams params = new InitializeParams();
    params.setCapabilities(client);
    wait(server.initialize(params));
    return server.getTextDocumentService();
  }

  private static <T> T wait(CompletableFuture<T> answer) throws Exception {
    return answer.get(100, TimeUnit.SECONDS);
  }

  private TextDocumentIdentifier open(TextDocumentService texts) throws Exception {
    Path file = folder.resolve("a.plan");
    Files.writeString(file, TEXT);
    String uri = file.toUri().toString();
    texts.didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(uri, "handwheel", 7, TEXT)));
    return new TextDocumentIdentifier(uri);
  }

  private static String apply(List<? extends TextEdit> edits) {
    SourceText source = new SourceText(TEXT);
    List<org.handwheel.syntax.TextEdit> plain = new ArrayList<>();
    for (TextEdit edit : edits) {
      plain.add(
          new org.handwheel.syntax.TextEdit(
              Positions.UTF16.offset(source, edit.getRange().getStart()),
              Positions.UTF16.offset(source, edit.getRange().getEnd()),
              edit.getNewText()));
    }
    return org.handwheel.syntax.TextEdit.apply(TEXT, plain);
  }

  private static String apply(WorkspaceEdit edit) {
    return apply(edit.getChanges().values().iterator().next());
  }

  @Test
  void formattingIsManySmallEdits() throws Exception {
    TextDocumentService texts = texts(new ClientCapabilities());
    TextDocumentIdentifier file = open(texts);
    FormattingOptions options = new FormattingOptions(2, true);
    List<? extends TextEdit> whole =
        wait(texts.formatting(new DocumentFormattingParams(file, options)));
    assertThat(whole).hasSizeGreaterThan(2);
    assertThat(apply(whole))
        .isEqualTo("part\r\n  length 5\r\n\r\nsetup one\r\n  wipe jaws\r\n  wipee table\r\n");
    Range line = new Range(new Position(3, 0), new Position(3, 4));
    assertThat(
            apply(
                wait(
                    texts.rangeFormatting(new DocumentRangeFormattingParams(file, options, line)))))
        .isEqualTo(TEXT.replace("wipe   jaws", "  wipe jaws"));
    Position next = new Position(5, 0);
    assertThat(
            apply(
                wait(
                    texts.onTypeFormatting(
                        new DocumentOnTypeFormattingParams(file, options, next, "\n")))))
        .isEqualTo(TEXT + "  ");
  }

  @Test
  void proposalsReplaceTheWordAndAreExplainedOnRequest() throws Exception {
    TextDocumentService texts = texts(new ClientCapabilities());
    CompletionParams params = new CompletionParams(open(texts), new Position(4, 6));
    List<CompletionItem> items = wait(texts.completion(params)).getRight().getItems();
    CompletionItem wipe =
        items.stream().filter(item -> item.getLabel().startsWith("wipe")).findFirst().orElseThrow();
    TextEdit edit = wipe.getTextEdit().getLeft();
    assertThat(edit.getRange()).isEqualTo(new Range(new Position(4, 2), new Position(4, 7)));
    assertThat(edit.getNewText()).isEqualTo("wipe");
    assertThat(items.stream().map(CompletionItem::getSortText).toList()).isSorted();
    CompletionItem resolved = wait(texts.resolveCompletionItem(wipe));
    assertThat(resolved.getDocumentation().getLeft()).contains("chips").doesNotContain("`");
  }

  @Test
  void aMendingComesWithItsEdit() throws Exception {
    TextDocumentService texts = texts(new ClientCapabilities());
    CodeAction fix = fix(texts, open(texts));
    assertThat(fix.getIsPreferred()).isTrue();
    assertThat(fix.getDiagnostics()).hasSize(1);
    assertThat(apply(fix.getEdit())).isEqualTo(MENDED);
  }

  @Test
  void anEditorThatCanGetsTheEditLater() throws Exception {
    CodeActionCapabilities actions = new CodeActionCapabilities();
    actions.setResolveSupport(new CodeActionResolveSupportCapabilities(List.of("edit")));
    TextDocumentClientCapabilities own = new TextDocumentClientCapabilities();
    own.setCodeAction(actions);
    ClientCapabilities client = new ClientCapabilities();
    client.setTextDocument(own);
    TextDocumentService texts = texts(client);
    CodeAction fix = fix(texts, open(texts));
    assertThat(fix.getEdit()).isNull();
    assertThat(apply(wait(texts.resolveCodeAction(fix)).getEdit())).isEqualTo(MENDED);
    fix.setEdit(null);
    ((JsonObject) fix.getData()).addProperty("version", 6);
    assertThat(wait(texts.resolveCodeAction(fix)).getEdit()).as("of an older text").isNull();
  }

  @Test
  void allSlipsAreMendedOnRequest() throws Exception {
    TextDocumentService texts = texts(new ClientCapabilities());
    List<CodeAction> actions = actions(texts, open(texts), "source.fixAll");
    assertThat(actions).hasSize(1);
    assertThat(apply(actions.get(0).getEdit())).isEqualTo(MENDED);
  }

  @Test
  void tidyingIsOfferedOnlyWhereThereIsSomethingToTidy() throws Exception {
    TextDocumentService texts = texts(new ClientCapabilities());
    assertThat(actions(texts, open(texts), "source.organizeImports")).isEmpty();
  }

  private static CodeAction fix(TextDocumentService texts, TextDocumentIdentifier file)
      throws Exception {
    return actions(texts, file, "quickfix").stream()
        .filter(action -> action.getTitle().equals("Write `wipe`"))
        .findFirst()
        .orElseThrow();
  }

  private static List<CodeAction> actions(
      TextDocumentService texts, TextDocumentIdentifier file, String only) throws Exception {
    CodeActionContext context = new CodeActionContext(List.of());
    context.setOnly(List.of(only));
    Range line = new Range(new Position(4, 3), new Position(4, 3));
    return wait(texts.codeAction(new CodeActionParams(file, line, context))).stream()
        .map(either -> either.getRight())
        .toList();
  }
}
