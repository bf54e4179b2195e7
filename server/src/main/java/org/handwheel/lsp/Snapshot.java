package org.handwheel.lsp;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import org.eclipse.lsp4j.Diagnostic;
import org.handwheel.files.WorkspaceLoader;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.ide.Project;
import org.handwheel.ide.View;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.table.Once;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;

/**
 * All open files at one moment. Immutable as seen from outside; what is worked out from it is
 * worked out once, by whoever asks first, and handed on to the next snapshot where nothing it rests
 * on has changed.
 */
final class Snapshot {
  private final Map<String, OpenFile> files;
  private final Map<String, Worked> worked;

  /** One for all snapshots of a session: it is the same for each key. */
  private final Once<Checker> checker;

  private final Map<WorkspaceRoot, Workspace> folders = new ConcurrentHashMap<>();
  private final Map<WorkspaceRoot, Project> projects = new ConcurrentHashMap<>();
  private final Map<String, List<Diagnostic>> closed = new ConcurrentHashMap<>();

  private Snapshot(Map<String, OpenFile> files, Map<String, Worked> worked, Once<Checker> checker) {
    this.files = Map.copyOf(files);
    this.worked = worked;
    this.checker = checker;
  }

  static Snapshot empty() {
    return new Snapshot(
        Map.of(),
        new ConcurrentHashMap<>(),
        new Once<>(() -> new Checker(StandardTables.builtIn())));
  }

  /** A view worked out once. */
  private static final class Worked {
    private final OpenFile file;
    private volatile Optional<View> view = Optional.empty();

    /** The view to go on from; let go once this one is worked out. */
    private volatile Optional<View> earlier;

    Worked(OpenFile file, Optional<View> earlier) {
      this.file = file;
      this.earlier = earlier;
    }

    /** The newest view there is. */
    Optional<View> latest() {
      Optional<View> before = earlier;
      return view.or(() -> before);
    }

    /** Whether it rests on a file; before it is worked out it may rest on any. */
    boolean restsOn(OpenFile changed) {
      if (file.uri().equals(changed.uri()) || view.isEmpty()) {
        return true;
      }
      return file.root().equals(changed.root())
          && view.get().checked().usedFiles().contains(changed.path());
    }

    synchronized View view(Snapshot snapshot) {
      if (view.isEmpty()) {
        view = Optional.of(snapshot.work(file, earlier.orElse(null)));
        earlier = Optional.empty();
      }
      return view.get();
    }
  }

  Optional<OpenFile> file(String uri) {
    return Optional.ofNullable(files.get(uri));
  }

  /** The address of a workspace file: as the editor names it if it is open there. */
  String uri(WorkspaceRoot root, String path) {
    return files.values().stream()
        .filter(open -> open.root().equals(root) && open.path().equals(path))
        .map(OpenFile::uri)
        .findFirst()
        .orElseGet(() -> root.file(path).toUri().toString());
  }

  Collection<OpenFile> files() {
    return files.values();
  }

  /** The snapshot with a file opened or changed. */
  Snapshot with(OpenFile file) {
    Map<String, OpenFile> next = new HashMap<>(files);
    next.put(file.uri(), file);
    return new Snapshot(next, workedAfter(file, next), checker);
  }

  /** The snapshot with a file closed. */
  Snapshot without(OpenFile file) {
    Map<String, OpenFile> next = new HashMap<>(files);
    next.remove(file.uri());
    return new Snapshot(next, workedAfter(file, next), checker);
  }

  /** The snapshot with everything to be worked out again, since files on disk changed. */
  Snapshot refreshed() {
    Map<String, Worked> again = new ConcurrentHashMap<>();
    worked.forEach((uri, work) -> again.put(uri, new Worked(work.file, work.latest())));
    return new Snapshot(files, again, checker);
  }

  /** What stays worked out after a change, and what the rest can go on from. */
  private Map<String, Worked> workedAfter(OpenFile changed, Map<String, OpenFile> next) {
    Map<String, Worked> kept = new ConcurrentHashMap<>();
    worked.forEach(
        (uri, work) -> {
          OpenFile now = next.get(uri);
          if (!work.restsOn(changed)) {
            kept.put(uri, work);
          } else if (now != null) {
            kept.put(uri, new Worked(now, work.latest()));
          }
        });
    return kept;
  }

  /** All files of a folder, read once. */
  Workspace folder(WorkspaceRoot root, Supplier<Workspace> read) {
    return folders.computeIfAbsent(root, key -> read.get());
  }

  /** The names of all files of a folder, collected once. */
  Project project(WorkspaceRoot root, Supplier<Project> collect) {
    return projects.computeIfAbsent(root, key -> collect.get());
  }

  /** What is found in a file that is not open, worked out once. */
  List<Diagnostic> closed(String uri, Supplier<List<Diagnostic>> check) {
    return closed.computeIfAbsent(uri, key -> List.copyOf(check.get()));
  }

  /** The view of an open file. */
  View view(OpenFile file) {
    return worked.computeIfAbsent(file.uri(), uri -> new Worked(file, Optional.empty())).view(this);
  }

  private View work(OpenFile file, @Nullable View earlier) {
    Map<String, SyntaxTree> open = new HashMap<>();
    for (OpenFile other : files.values()) {
      if (other.root().equals(file.root())) {
        open.put(other.path(), other.tree());
      }
    }
    WorkspaceLoader loader = new WorkspaceLoader(file.root(), System::nanoTime);
    Map<String, SyntaxTree> before = earlier == null ? Map.of() : earlier.workspace().files();
    Workspace workspace = loader.load(List.of(file.path()), open, before).workspace();
    Checked checked = earlier == null ? null : earlier.checked();
    return new View(
        workspace, checker.get().check(workspace, file.path(), checked), StandardTables.builtIn());
  }
}
