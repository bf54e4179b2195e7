package org.handwheel.lsp;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticCodeDescription;
import org.eclipse.lsp4j.DiagnosticRelatedInformation;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.DiagnosticTag;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.handwheel.ide.View;
import org.handwheel.ide.View.Place;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;

/** Findings and places in the words of the protocol. */
final class ToProtocol {
  /** The name findings are shown under. */
  static final String SOURCE = "handwheel";

  private final ClientFacts client;
  private final Snapshot snapshot;
  private final OpenFile file;
  private final View view;
  private final Map<String, String> uris = new HashMap<>();

  ToProtocol(ClientFacts client, Snapshot snapshot, OpenFile file, View view) {
    this.client = client;
    this.snapshot = snapshot;
    this.file = file;
    this.view = view;
  }

  List<Diagnostic> diagnostics() {
    List<Diagnostic> diagnostics = new ArrayList<>();
    for (Finding finding : view.checked().findings()) {
      if (view.tree().contains(finding.origin())) {
        diagnostics.add(diagnostic(finding));
      }
    }
    return diagnostics;
  }

  Diagnostic diagnostic(Finding finding) {
    Diagnostic diagnostic = new Diagnostic();
    diagnostic.setRange(range(finding.origin()));
    diagnostic.setSeverity(severity(finding.severity()));
    diagnostic.setSource(SOURCE);
    diagnostic.setCode(Either.forLeft(finding.rule()));
    diagnostic.setMessage(Either.forLeft(finding.message()));
    if (client.showsCodeLinks()) {
      RuleLinks.besideProgram()
          .page(finding.rule())
          .ifPresent(page -> diagnostic.setCodeDescription(new DiagnosticCodeDescription(page)));
    }
    if (client.showsRelated() && !finding.related().isEmpty()) {
      List<DiagnosticRelatedInformation> related = new ArrayList<>();
      for (Finding.Related other : finding.related()) {
        related.add(new DiagnosticRelatedInformation(location(other.origin()), other.message()));
      }
      diagnostic.setRelatedInformation(related);
    }
    if (client.showsTags() && finding.rule().startsWith("unused-")) {
      diagnostic.setTags(List.of(DiagnosticTag.Unnecessary));
    }
    if (client.keepsData()) {
      JsonObject data = new JsonObject();
      data.addProperty("rule", finding.rule());
      data.addProperty("fixes", finding.fixes().size());
      diagnostic.setData(data);
    }
    return diagnostic;
  }

  private static DiagnosticSeverity severity(Severity severity) {
    return switch (severity) {
      case ERROR -> DiagnosticSeverity.Error;
      case WARNING -> DiagnosticSeverity.Warning;
      case INFO, OFF -> DiagnosticSeverity.Information;
    };
  }

  /** The range of a place in the open file; a place without extent is widened to be seen. */
  Range range(Origin origin) {
    return range(view.place(origin));
  }

  Range range(Place place) {
    SyntaxTree tree = tree(place);
    int start = place.start();
    int end = place.end();
    if (start == end) {
      int line = tree.source().lineAt(start);
      if (end < tree.source().lineEnd(line)) {
        end++;
      } else if (start > tree.source().lineStart(line)) {
        start--;
      }
    }
    return client.positions().range(tree.source(), start, end);
  }

  /** A range of the open file by its offsets. */
  Range range(int start, int end) {
    return client.positions().range(view.tree().source(), start, end);
  }

  Location location(Origin origin) {
    Place place = view.place(origin);
    return new Location(uri(place.path()), range(place));
  }

  private SyntaxTree tree(Place place) {
    return place.path().equals(view.tree().path())
        ? view.tree()
        : view.workspace().file(place.path()).orElse(view.tree());
  }

  String uri(String path) {
    return uris.computeIfAbsent(path, asked -> snapshot.uri(file.root(), asked));
  }
}
