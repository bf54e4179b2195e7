package org.handwheel.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.handwheel.files.DiskText;
import org.handwheel.files.FolderSearch;
import org.handwheel.files.TextFile;
import org.handwheel.files.TextSource;
import org.handwheel.files.WorkspaceRoot;
import org.jspecify.annotations.Nullable;

/**
 * The plans and shop files of one side of a comparison.
 *
 * @param source reads them, and what they use
 * @param files workspace paths by the name they are matched by
 * @param fences folders whose files may use nothing outside them: they hold {@code .handwheel}
 * @param unreadable what could not be looked at, and why
 */
record FileSet(
    TextSource source,
    Map<String, String> files,
    Set<String> fences,
    Map<String, String> unreadable) {
  private static final List<String> ENDINGS = List.of(".plan", ".shop");

  FileSet {
    files = new TreeMap<>(files);
    fences = Set.copyOf(fences);
    unreadable = new TreeMap<>(unreadable);
  }

  /** One file on disk, matched by no name. */
  static FileSet ofFile(Path file, Path workingDirectory) {
    WorkspaceRoot root = WorkspaceRoot.of(file, workingDirectory);
    return new FileSet(
        new DiskText(root), Map.of("", root.workspacePath(file)), Set.of(), Map.of());
  }

  /** A folder on disk; names are relative to it. */
  static FileSet ofFolder(Path folder, Path workingDirectory) {
    WorkspaceRoot root = WorkspaceRoot.of(folder.resolve("x"), workingDirectory);
    return ofDisk(root, folder, new WorkspaceRoot(folder));
  }

  /** The work tree of a repository below a folder; names are relative to the repository. */
  static FileSet ofWorkTree(GitRepository repository, String under) {
    WorkspaceRoot root = new WorkspaceRoot(repository.top());
    return ofDisk(root, root.file(under), root);
  }

  private static FileSet ofDisk(WorkspaceRoot root, Path at, WorkspaceRoot names) {
    Map<String, String> files = new TreeMap<>();
    Map<String, String> unreadable = new TreeMap<>();
    Set<String> fences = new TreeSet<>();
    try {
      for (String ending : ENDINGS) {
        if (Files.isDirectory(at)) {
          FolderSearch.Found found = FolderSearch.endingIn(ending, at);
          found.files().forEach(file -> put(files, root, names, file));
          found.unreadable().forEach((file, why) -> unreadable.put(file.toString(), why));
        } else if (Files.exists(at) && FolderSearch.hasEnding(at, ending)) {
          put(files, root, names, at);
        }
      }
    } catch (IOException e) {
      unreadable.put(at.toString(), "the folder cannot be read");
    }
    for (String path : files.values()) {
      for (String folder = folder(path); !folder.isEmpty(); folder = folder(folder)) {
        if (Files.exists(root.file(folder).resolve(".handwheel"))) {
          fences.add(folder);
        }
      }
    }
    return new FileSet(new DiskText(root), files, fences, unreadable);
  }

  private static void put(
      Map<String, String> files, WorkspaceRoot root, WorkspaceRoot names, Path file) {
    files.put(names.workspacePath(file), root.workspacePath(file));
  }

  /** The files of a commit below a folder of the repository. */
  static FileSet ofCommit(GitRepository repository, String commit, String under) {
    Map<String, GitRepository.Entry> all = repository.files(commit);
    Map<String, String> files = new TreeMap<>();
    Set<String> fences = new TreeSet<>();
    for (String path : all.keySet()) {
      boolean below = under.isEmpty() || path.equals(under) || path.startsWith(under + "/");
      String name = path.toLowerCase(Locale.ROOT);
      if (below && ENDINGS.stream().anyMatch(name::endsWith) && !FolderSearch.isSkipped(path)) {
        files.put(path, path);
      }
      if (path.endsWith("/.handwheel")) {
        fences.add(folder(path));
      }
    }
    TextSource source =
        path -> {
          GitRepository.Entry entry = all.get(path);
          return entry == null
              ? new TextFile.Refused("there is no such file in this revision")
              : repository.text(entry);
        };
    return new FileSet(source, files, fences, Map.of());
  }

  /** What a file is called in a review: the name it is matched by, or else its path. */
  String name(@Nullable String path) {
    return files.entrySet().stream()
        .filter(entry -> entry.getValue().equals(path) && !entry.getKey().isEmpty())
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse(path == null ? "" : path);
  }

  /** The folder whose files a file may use: the nearest fence above it, or empty for all. */
  String fence(String path) {
    for (String folder = folder(path); !folder.isEmpty(); folder = folder(folder)) {
      if (fences.contains(folder)) {
        return folder;
      }
    }
    return "";
  }

  /** Reads only what lies within a fence. */
  TextSource within(String fence) {
    return fence.isEmpty()
        ? source
        : path ->
            path.startsWith(fence + "/")
                ? source.read(path)
                : new TextFile.Refused("it is not in the workspace " + fence);
  }

  private static String folder(String path) {
    int slash = path.lastIndexOf('/');
    return slash < 0 ? "" : path.substring(0, slash);
  }
}
