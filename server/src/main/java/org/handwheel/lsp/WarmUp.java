package org.handwheel.lsp;

import com.google.gson.Gson;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticCodeDescription;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;

/**
 * Does once, on a thread of its own, what the first file needs: most of a first check is loading
 * and linking of classes, and the editor takes a while to introduce itself. Nothing comes of it but
 * the time saved.
 */
final class WarmUp {
  private static final String SAMPLE =
      """
      language 1
      plan "Warm-up"
        units mm
      part
        material steel-mild
        height 19 +0/-0.04
      stock
        size 50 x 30 x 22
      setup one
        hold in vise, up top, fixed back
        clean top at 0.4, at most 1
      """;

  private WarmUp() {}

  /**
   * Starts it.
   *
   * <p>Cancelling either ends it.
   *
   * @param gson there once the connection is built
   * @param answered done when the editor has its first findings: then nobody waits, and {@link
   *     Rehearsal} has its turn
   */
  static void start(CompletableFuture<Gson> gson, CompletableFuture<Void> answered) {
    Thread thread =
        new Thread(
            () -> {
              check();
              try {
                message(gson.join());
                answered.join();
              } catch (CancellationException e) {
                return; // The editor has left.
              }
              new Rehearsal(gson.join()).run();
            },
            "handwheel-warm-up");
    thread.setDaemon(true);
    thread.start();
  }

  private static void check() {
    SyntaxTree tree = SyntaxTree.parse("warm-up.plan", SAMPLE);
    new Checker(StandardTables.builtIn()).check(Workspace.of(tree), tree.path());
  }

  /** A file opened and a finding told, as the editor would see them. */
  private static void message(Gson gson) {
    var unused =
        gson.fromJson("{\"textDocument\":{\"uri\":\"\"}}", DidOpenTextDocumentParams.class);
    Diagnostic diagnostic =
        new Diagnostic(new Range(new Position(0, 0), new Position(0, 1)), "warm-up");
    diagnostic.setSeverity(DiagnosticSeverity.Warning);
    diagnostic.setCode("warm-up");
    diagnostic.setCodeDescription(new DiagnosticCodeDescription(""));
    String unusedText = gson.toJson(new PublishDiagnosticsParams("", List.of(diagnostic), 1));
  }
}
