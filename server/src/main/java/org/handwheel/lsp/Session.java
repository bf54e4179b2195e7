package org.handwheel.lsp;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.syntax.SourceText;
import org.handwheel.syntax.SyntaxTree;

/**
 * The state of one editor's connection. It changes only on the thread that reads messages; other
 * threads work with the {@link Snapshot} they were given.
 */
final class Session {
  private volatile ClientFacts client = ClientFacts.PLAIN;
  private volatile Snapshot snapshot = Snapshot.empty();
  private final SettingsFiles settings = new SettingsFiles();
  private final List<Path> folders = new CopyOnWriteArrayList<>();

  ClientFacts client() {
    return client;
  }

  SettingsFiles settings() {
    return settings;
  }

  /** The folders of the workspace, in the editor's order. */
  List<WorkspaceRoot> roots() {
    return folders.stream().map(WorkspaceRoot::new).toList();
  }

  /** The folders of the workspace and those of the open files outside of them. */
  Set<WorkspaceRoot> allRoots() {
    Set<WorkspaceRoot> all = new LinkedHashSet<>(roots());
    snapshot.files().forEach(file -> all.add(file.root()));
    return all;
  }

  Snapshot snapshot() {
    return snapshot;
  }

  void begin(InitializeParams params) {
    client = ClientFacts.of(params);
    settings.configure(params.getInitializationOptions());
    if (params.getWorkspaceFolders() != null) {
      params.getWorkspaceFolders().forEach(this::addFolder);
    } else {
      addRoot(params);
    }
  }

  /** Editors of before workspace folders name one root. */
  @SuppressWarnings("deprecation")
  private void addRoot(InitializeParams params) {
    Optional.ofNullable(params.getRootUri()).flatMap(Session::path).ifPresent(folders::add);
  }

  void addFolder(WorkspaceFolder folder) {
    path(folder.getUri()).ifPresent(folders::add);
  }

  void removeFolder(WorkspaceFolder folder) {
    path(folder.getUri()).ifPresent(folders::remove);
  }

  /** The file a {@code file:} address names; nothing for other addresses and for nonsense. */
  static Optional<Path> path(String address) {
    try {
      URI uri = new URI(address);
      return "file".equalsIgnoreCase(uri.getScheme())
          ? Optional.of(Path.of(uri).toAbsolutePath().normalize())
          : Optional.empty();
    } catch (URISyntaxException | IllegalArgumentException | FileSystemNotFoundException e) {
      return Optional.empty();
    }
  }

  void open(String uri, String languageId, int version, String text) {
    Optional<Path> path = path(uri);
    if (!client.registersWatchers()) {
      // Nobody will tell when the file changes.
      settings.forget();
    }
    WorkspaceRoot root = root(path);
    String name =
        path.filter(root::holds)
            .map(root::workspacePath)
            .orElseGet(() -> unsavedName(uri, languageId));
    snapshot = snapshot.with(new OpenFile(uri, root, version, SyntaxTree.parse(name, text)));
  }

  /** The deepest workspace folder that holds the file, else the folder its own marks tell. */
  private WorkspaceRoot root(Optional<Path> path) {
    Path here = Path.of("").toAbsolutePath();
    if (path.isEmpty()) {
      return new WorkspaceRoot(folders.isEmpty() ? here : folders.get(0));
    }
    Path file = path.get();
    return folders.stream()
        .filter(file::startsWith)
        .max((a, b) -> Integer.compare(a.getNameCount(), b.getNameCount()))
        .map(WorkspaceRoot::new)
        .orElseGet(
            () -> WorkspaceRoot.of(file, file.getParent() == null ? here : file.getParent()));
  }

  /** A text that is in no file yet still needs a name, and an ending that tells what it is. */
  private static String unsavedName(String uri, String languageId) {
    String name = uri.replaceAll("[^A-Za-z0-9.-]", "_");
    String ending = languageId.toLowerCase(Locale.ROOT).contains("shop") ? ".shop" : ".plan";
    return name.endsWith(".plan") || name.endsWith(".shop") ? name : name + ending;
  }

  /**
   * Applies changes in their order.
   *
   * @return whether the file is open and every change fitted; if not, its text is not to be relied
   *     on
   */
  boolean change(String uri, int version, List<TextDocumentContentChangeEvent> changes) {
    Optional<OpenFile> open = snapshot.file(uri);
    if (open.isEmpty()) {
      return false;
    }
    SyntaxTree tree = open.get().tree();
    SourceText source = tree.source();
    int same = source.length();
    int sameEnd = source.length();
    for (TextDocumentContentChangeEvent change : changes) {
      Replacement replacement = replacement(source, change);
      int start = replacement.start();
      int tail = source.length() - replacement.end();
      source =
          source.changed(
              source.text().substring(0, start)
                  + replacement.text()
                  + source.text().substring(replacement.end()),
              start,
              tail);
      same = Math.min(same, start);
      sameEnd = Math.min(sameEnd, tail);
    }
    if (!changes.isEmpty()) {
      tree = tree.update(source, same, sameEnd);
    }
    snapshot = snapshot.with(open.get().changed(version, tree));
    return true;
  }

  /** A piece of text with what takes its place. */
  private record Replacement(int start, int end, String text) {}

  private Replacement replacement(SourceText source, TextDocumentContentChangeEvent change) {
    if (change.getText() == null) {
      throw new IllegalArgumentException("a change without a text");
    }
    if (change.getRange() == null) {
      return new Replacement(0, source.length(), change.getText());
    }
    int a = client.positions().offset(source, change.getRange().getStart());
    int b = client.positions().offset(source, change.getRange().getEnd());
    return new Replacement(Math.min(a, b), Math.max(a, b), change.getText());
  }

  /** Closes a file; gives it back if it was open. */
  Optional<OpenFile> close(String uri) {
    Optional<OpenFile> open = snapshot.file(uri);
    open.ifPresent(file -> snapshot = snapshot.without(file));
    return open;
  }

  /** Files on disk have changed: what rests on them is worked out again. */
  void refresh() {
    settings.forget();
    snapshot = snapshot.refreshed();
  }
}
