package org.handwheel.lsp;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.CancelChecker;
import org.handwheel.files.FolderSearch;
import org.handwheel.files.WorkspaceLoader;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.ide.Project;
import org.handwheel.model.Workspace;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.SyntaxTree;

/**
 * All plan and shop files of a workspace folder, open ones as they are in the editor, and their
 * places in the words of the protocol.
 */
final class Projects {
  private final ClientFacts client;
  private final Snapshot snapshot;
  private final WorkspaceRoot root;
  private final Workspace workspace;
  private final CancelChecker cancel;

  private Projects(
      ClientFacts client,
      Snapshot snapshot,
      WorkspaceRoot root,
      Workspace workspace,
      CancelChecker cancel) {
    this.client = client;
    this.snapshot = snapshot;
    this.root = root;
    this.workspace = workspace;
    this.cancel = cancel;
  }

  /** Reads the files of a folder; some may be unreadable, which is then as if they were not. */
  static Projects load(
      ClientFacts client, Snapshot snapshot, WorkspaceRoot root, CancelChecker cancel) {
    // What an editor does not watch may change without a word: that is read each time.
    Workspace workspace =
        client.registersWatchers()
            ? snapshot.folder(root, () -> read(snapshot, root, cancel))
            : read(snapshot, root, cancel);
    return new Projects(client, snapshot, root, workspace, cancel);
  }

  private static Workspace read(Snapshot snapshot, WorkspaceRoot root, CancelChecker cancel) {
    Map<String, SyntaxTree> open = new HashMap<>();
    for (OpenFile file : snapshot.files()) {
      if (file.root().equals(root)) {
        open.put(file.path(), file.tree());
      }
    }
    List<String> paths = new ArrayList<>(open.keySet());
    for (String ending : List.of(".plan", ".shop")) {
      cancel.checkCanceled();
      for (Path file : filesEndingIn(ending, root)) {
        paths.add(root.workspacePath(file));
      }
    }
    return new WorkspaceLoader(root, System::nanoTime).load(paths, open).workspace();
  }

  private static List<Path> filesEndingIn(String ending, WorkspaceRoot root) {
    try {
      return FolderSearch.endingIn(ending, root.folder()).files();
    } catch (IOException e) {
      return List.of();
    }
  }

  Workspace workspace() {
    return workspace;
  }

  Project project() {
    return client.registersWatchers() ? snapshot.project(root, this::collect) : collect();
  }

  private Project collect() {
    return Project.of(workspace, cancel::checkCanceled);
  }

  Optional<Location> location(Origin origin) {
    return project()
        .treeOf(origin)
        .map(tree -> new Location(uri(tree.path()), range(tree, origin)));
  }

  Location location(SyntaxTree tree, int start, int end) {
    return new Location(uri(tree.path()), client.positions().range(tree.source(), start, end));
  }

  Range range(SyntaxTree tree, Origin origin) {
    return client.positions().range(tree.source(), tree.start(origin), tree.end(origin));
  }

  private String uri(String path) {
    return snapshot.uri(root, path);
  }

  /** An edit of several files. */
  WorkspaceEdit edit(Map<Origin, String> changes) {
    return new WorkspaceEdits(client, snapshot).of(byUri(changes));
  }

  /** An edit asked for in one file; an editor that can asks before it changes others. */
  WorkspaceEdit editFrom(OpenFile here, Map<Origin, String> changes) {
    return new WorkspaceEdits(client, snapshot).from(here.uri(), byUri(changes));
  }

  /** Changes by the addresses of their files. */
  Map<String, List<TextEdit>> byUri(Map<Origin, String> changes) {
    Project project = project();
    Map<String, List<TextEdit>> byUri = new LinkedHashMap<>();
    changes.forEach(
        (origin, text) ->
            project
                .treeOf(origin)
                .ifPresent(
                    tree ->
                        byUri
                            .computeIfAbsent(uri(tree.path()), uri -> new ArrayList<>())
                            .add(new TextEdit(range(tree, origin), text))));
    return byUri;
  }
}
