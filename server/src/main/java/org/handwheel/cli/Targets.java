package org.handwheel.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.handwheel.files.FolderSearch;
import org.handwheel.files.TextFile;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.ide.ProjectSettings;
import org.jspecify.annotations.Nullable;

/**
 * The files to check, as the arguments name them.
 *
 * @param unreadable arguments and files that cannot be checked, and why
 */
record Targets(List<Target> targets, Map<Path, String> unreadable) {
  private static final String PLAN = ".plan";
  private static final String SHOP = ".shop";

  Targets {
    targets = List.copyOf(targets);
    unreadable = Map.copyOf(unreadable);
  }

  /**
   * One file.
   *
   * @param path its workspace path
   * @param text its text if it came from standard input
   */
  record Target(WorkspaceRoot root, String path, @Nullable String text) {}

  /** Finds the files; the settings of a project do not count. */
  static Targets find(
      List<String> arguments,
      @Nullable String workspace,
      String stdinName,
      Surroundings surroundings) {
    return find(
        arguments,
        workspace,
        stdinName,
        new ProjectFile(surroundings.workingDirectory(), ProjectSettings.NONE),
        surroundings);
  }

  /**
   * Finds the files.
   *
   * @param arguments files, folders, or {@code -} for standard input
   * @param workspace the root the user asked for
   * @param project says which folders are passed over
   * @throws UserException if a name is none that a file can have, or standard input is no text
   */
  static Targets find(
      List<String> arguments,
      @Nullable String workspace,
      String stdinName,
      ProjectFile project,
      Surroundings surroundings) {
    Finder finder = new Finder(surroundings.workingDirectory(), workspace, project);
    for (String argument : arguments) {
      if (argument.equals("-")) {
        finder.addText(path(surroundings, stdinName), read(surroundings.in()));
      } else {
        finder.add(path(surroundings, argument));
      }
    }
    return new Targets(List.copyOf(finder.targets), finder.unreadable);
  }

  private static Path path(Surroundings surroundings, String name) {
    try {
      return surroundings.workingDirectory().toAbsolutePath().resolve(name).normalize();
    } catch (InvalidPathException e) {
      throw new UserException(name + ": no file can have this name here");
    }
  }

  private static String read(InputStream in) {
    try {
      TextFile.Result result = TextFile.read(in);
      if (result instanceof TextFile.Refused refused) {
        throw new UserException("standard input: " + refused.reason());
      }
      return ((TextFile.Text) result).text();
    } catch (IOException e) {
      throw new UserException("standard input cannot be read: " + e.getMessage());
    }
  }

  private static final class Finder {
    private final Path workingDirectory;
    private final @Nullable WorkspaceRoot asked;
    private final ProjectFile project;
    private final Set<Target> targets = new LinkedHashSet<>();
    private final Map<Path, String> unreadable = new LinkedHashMap<>();

    Finder(Path workingDirectory, @Nullable String workspace, ProjectFile project) {
      this.project = project;
      this.workingDirectory = workingDirectory.toAbsolutePath();
      this.asked = workspace == null ? null : root(workspace);
    }

    private WorkspaceRoot root(String workspace) {
      Path folder;
      try {
        folder = workingDirectory.resolve(workspace);
      } catch (InvalidPathException e) {
        throw new UserException(workspace + ": no folder can have this name here");
      }
      if (!Files.isDirectory(folder)) {
        throw new UserException(workspace + ": there is no such folder");
      }
      return new WorkspaceRoot(folder);
    }

    void add(Path file) {
      if (Files.isDirectory(file)) {
        addFolder(file);
      } else if (!Files.exists(file)
          || FolderSearch.hasEnding(file, PLAN)
          || FolderSearch.hasEnding(file, SHOP)) {
        addFile(file);
      } else {
        unreadable.put(file, "it is neither a plan (*.plan) nor a shop file (*.shop)");
      }
    }

    private void addFolder(Path folder) {
      try {
        FolderSearch.Found found = FolderSearch.endingIn(PLAN, folder);
        unreadable.putAll(found.unreadable());
        List<Path> files = project.left(folder, found.files());
        if (files.isEmpty() && found.unreadable().isEmpty()) {
          unreadable.put(folder, "there is no plan (*.plan) in this folder");
        }
        files.forEach(this::addFile);
      } catch (IOException e) {
        unreadable.put(folder, "the folder cannot be read");
      }
    }

    private void addFile(Path file) {
      addText(file, null);
    }

    void addText(Path file, @Nullable String text) {
      WorkspaceRoot root = asked == null ? WorkspaceRoot.of(file, workingDirectory) : asked;
      if (root.holds(file)) {
        targets.add(new Target(root, root.workspacePath(file), text));
      } else {
        unreadable.put(file, "it is not in the workspace " + root.folder());
      }
    }
  }
}
