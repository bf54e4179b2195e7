package org.handwheel.lsp;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.AnnotatedTextEdit;
import org.eclipse.lsp4j.ChangeAnnotation;
import org.eclipse.lsp4j.ResourceOperation;
import org.eclipse.lsp4j.SnippetTextEdit;
import org.eclipse.lsp4j.TextDocumentEdit;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** Edits of several files in the form the editor can take. */
final class WorkspaceEdits {
  /** The annotation of changes in files other than the one the user is in. */
  private static final String ELSEWHERE = "elsewhere";

  private final ClientFacts client;
  private final Snapshot snapshot;

  WorkspaceEdits(ClientFacts client, Snapshot snapshot) {
    this.client = client;
    this.snapshot = snapshot;
  }

  /** Changes by the addresses of their files; versioned if the editor knows versions. */
  WorkspaceEdit of(Map<String, List<TextEdit>> byUri) {
    if (!client.documentChanges()) {
      return new WorkspaceEdit(byUri);
    }
    List<Either<TextDocumentEdit, ResourceOperation>> documents = new ArrayList<>();
    byUri.forEach((uri, edits) -> documents.add(Either.forLeft(document(uri, edits))));
    return new WorkspaceEdit(documents);
  }

  /** Changes asked for in one file: those of other files are to be confirmed. */
  WorkspaceEdit from(String here, Map<String, List<TextEdit>> byUri) {
    boolean elsewhere = byUri.keySet().stream().anyMatch(uri -> !uri.equals(here));
    if (!elsewhere || !client.annotatesChanges()) {
      return of(byUri);
    }
    Map<String, List<TextEdit>> marked = new LinkedHashMap<>();
    byUri.forEach((uri, edits) -> marked.put(uri, uri.equals(here) ? edits : marked(edits)));
    ChangeAnnotation annotation = new ChangeAnnotation("In other files");
    annotation.setNeedsConfirmation(true);
    annotation.setDescription("These files name the same thing");
    WorkspaceEdit edit = of(marked);
    edit.setChangeAnnotations(Map.of(ELSEWHERE, annotation));
    return edit;
  }

  private static List<TextEdit> marked(List<TextEdit> edits) {
    List<TextEdit> marked = new ArrayList<>();
    for (TextEdit edit : edits) {
      marked.add(new AnnotatedTextEdit(edit.getRange(), edit.getNewText(), ELSEWHERE));
    }
    return marked;
  }

  /** With a version the edit is refused rather than made in a text that has moved on. */
  private TextDocumentEdit document(String uri, List<TextEdit> edits) {
    Integer version = snapshot.file(uri).map(OpenFile::version).orElse(null);
    List<Either<TextEdit, SnippetTextEdit>> plain = new ArrayList<>();
    edits.forEach(edit -> plain.add(Either.forLeft(edit)));
    return new TextDocumentEdit(new VersionedTextDocumentIdentifier(uri, version), plain);
  }
}
