package org.handwheel.lsp;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Consumer;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DocumentDiagnosticReport;
import org.eclipse.lsp4j.PreviousResultId;
import org.eclipse.lsp4j.RelatedFullDocumentDiagnosticReport;
import org.eclipse.lsp4j.RelatedUnchangedDocumentDiagnosticReport;
import org.eclipse.lsp4j.WorkspaceDiagnosticReport;
import org.eclipse.lsp4j.WorkspaceDocumentDiagnosticReport;
import org.eclipse.lsp4j.WorkspaceFullDocumentDiagnosticReport;
import org.eclipse.lsp4j.WorkspaceUnchangedDocumentDiagnosticReport;
import org.eclipse.lsp4j.jsonrpc.CancelChecker;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.ide.View;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;

/** Reports to an editor that asks for findings: of one file, or of all files of its folders. */
final class DiagnosticReports {
  private DiagnosticReports() {}

  /**
   * Names a list of findings: the same list has the same name, and another list in all likelihood
   * another one (128 bits).
   */
  private static String resultId(List<Diagnostic> diagnostics) {
    byte[] bytes = diagnostics.toString().getBytes(StandardCharsets.UTF_8);
    return UUID.nameUUIDFromBytes(bytes).toString();
  }

  /**
   * The report of one file.
   *
   * @param previous the name of the list the editor has, if it has one
   */
  static DocumentDiagnosticReport ofFile(List<Diagnostic> diagnostics, @Nullable String previous) {
    String result = resultId(diagnostics);
    if (result.equals(previous)) {
      return new DocumentDiagnosticReport(new RelatedUnchangedDocumentDiagnosticReport(result));
    }
    RelatedFullDocumentDiagnosticReport report =
        new RelatedFullDocumentDiagnosticReport(diagnostics);
    report.setResultId(result);
    return new DocumentDiagnosticReport(report);
  }

  /**
   * The report of all plan and shop files below the folders, open ones first; a text open in the
   * editor counts, not the file on disk. A file the editor has findings of that is no more is
   * reported without any.
   *
   * @param previous the names of the lists the editor has
   * @param parts takes reports as they are made, if the editor wants them so; then the answer
   *     itself holds none, as the protocol asks
   */
  static WorkspaceDiagnosticReport ofFolders(
      ClientFacts client,
      Snapshot snapshot,
      Collection<WorkspaceRoot> roots,
      SettingsFiles settings,
      List<PreviousResultId> previous,
      @Nullable Consumer<WorkspaceDiagnosticReport> parts,
      CancelChecker cancel) {
    Reports reports = new Reports(previous, parts);
    for (OpenFile file : snapshot.files()) {
      cancel.checkCanceled();
      reports.add(
          file.uri(), file.version(), diagnostics(client, snapshot, file, snapshot.view(file)));
    }
    for (WorkspaceRoot root : roots) {
      List<Diagnostic> unread = settings.diagnostics(root, client.positions());
      if (!unread.isEmpty()) {
        reports.add(SettingsFiles.file(root).toUri().toString(), null, unread);
      }
      Projects projects = Projects.load(client, snapshot, root, cancel);
      Workspace workspace = projects.workspace();
      for (String path : new TreeSet<>(workspace.files().keySet())) {
        cancel.checkCanceled();
        String uri = snapshot.uri(root, path);
        if (!reports.has(uri)) {
          List<Diagnostic> diagnostics =
              client.registersWatchers()
                  ? snapshot.closed(
                      uri, () -> ofClosed(client, snapshot, root, workspace, uri, path))
                  : ofClosed(client, snapshot, root, workspace, uri, path);
          reports.add(uri, null, diagnostics);
        }
      }
    }
    reports.addGone();
    return reports.rest();
  }

  /** Reports on their way to the editor, one a file. */
  private static final class Reports {
    /** As many as are worth a message. */
    private static final int PART = 20;

    private final Map<String, String> known = new LinkedHashMap<>();
    private final @Nullable Consumer<WorkspaceDiagnosticReport> parts;
    private final Set<String> reported = new HashSet<>();
    private List<WorkspaceDocumentDiagnosticReport> waiting = new ArrayList<>();

    Reports(List<PreviousResultId> previous, @Nullable Consumer<WorkspaceDiagnosticReport> parts) {
      this.parts = parts;
      previous.forEach(id -> known.put(id.getUri(), id.getValue()));
    }

    boolean has(String uri) {
      return reported.contains(uri);
    }

    void add(String uri, @Nullable Integer version, List<Diagnostic> diagnostics) {
      reported.add(uri);
      waiting.add(report(diagnostics, uri, version, known.get(uri)));
      if (waiting.size() == PART) {
        sendPart();
      }
    }

    private void sendPart() {
      if (parts != null && !waiting.isEmpty()) {
        parts.accept(new WorkspaceDiagnosticReport(waiting));
        waiting = new ArrayList<>();
      }
    }

    /** Files the editor has findings of, and that are no more. */
    void addGone() {
      known.keySet().stream().filter(uri -> !has(uri)).forEach(uri -> add(uri, null, List.of()));
    }

    WorkspaceDiagnosticReport rest() {
      sendPart();
      return new WorkspaceDiagnosticReport(waiting);
    }
  }

  private static List<Diagnostic> ofClosed(
      ClientFacts client,
      Snapshot snapshot,
      WorkspaceRoot root,
      Workspace workspace,
      String uri,
      String path) {
    SyntaxTree tree = workspace.file(path).orElseThrow();
    StandardTables tables = StandardTables.builtIn();
    View view = new View(workspace, new Checker(tables).check(workspace, path), tables);
    return diagnostics(client, snapshot, new OpenFile(uri, root, 0, tree), view);
  }

  private static List<Diagnostic> diagnostics(
      ClientFacts client, Snapshot snapshot, OpenFile file, View view) {
    return new ToProtocol(client, snapshot, file, view).diagnostics();
  }

  private static WorkspaceDocumentDiagnosticReport report(
      List<Diagnostic> diagnostics,
      String uri,
      @Nullable Integer version,
      @Nullable String previous) {
    String result = resultId(diagnostics);
    if (result.equals(previous)) {
      return new WorkspaceDocumentDiagnosticReport(
          new WorkspaceUnchangedDocumentDiagnosticReport(result, uri, version));
    }
    WorkspaceFullDocumentDiagnosticReport report =
        new WorkspaceFullDocumentDiagnosticReport(diagnostics, uri, version);
    report.setResultId(result);
    return new WorkspaceDocumentDiagnosticReport(report);
  }
}
