package org.handwheel.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.handwheel.files.TextFile;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.ide.ProjectSettings;
import org.handwheel.ide.ProjectSettings.Problem;
import org.handwheel.syntax.SourceText;

/**
 * The settings of the project that the current folder is in.
 *
 * @param folder what their paths start from
 */
record ProjectFile(Path folder, ProjectSettings settings) {
  /**
   * Reads the file, if there is one.
   *
   * @throws UserException if something in it cannot be read: a check that passes because a setting
   *     was misspelt would be worse than none
   */
  static ProjectFile of(Surroundings surroundings) {
    Path here = surroundings.workingDirectory().toAbsolutePath().normalize();
    return of(WorkspaceRoot.of(here.resolve(ProjectSettings.FILE_NAME), here), surroundings);
  }

  /** Reads the file of the project that a plan is in; the rest as with the current folder. */
  static ProjectFile of(WorkspaceRoot root, Surroundings surroundings) {
    Path here = surroundings.workingDirectory().toAbsolutePath().normalize();
    Path folder = root.folder();
    Path file = folder.resolve(ProjectSettings.FILE_NAME);
    if (!Files.exists(file)) {
      return new ProjectFile(folder, ProjectSettings.NONE);
    }
    String shown = new PathNames(here).shown(file);
    TextFile.Result result = TextFile.read(file);
    if (result instanceof TextFile.Refused refused) {
      throw new UserException(shown + ": " + refused.reason());
    }
    String text = ((TextFile.Text) result).text();
    ProjectSettings settings = ProjectSettings.parse(text);
    for (Problem problem : settings.problems()) {
      int line = new SourceText(text).lineAt(problem.start()) + 1;
      throw new UserException(shown + ":" + line + ": " + problem.message());
    }
    return new ProjectFile(folder, settings);
  }

  /** What is left of the files found below a folder: that folder's own name goes first. */
  List<Path> left(Path searched, List<Path> found) {
    Path from = searched.toAbsolutePath().normalize();
    List<Path> skipped =
        settings.skip().stream()
            .map(folder::resolve)
            .map(Path::normalize)
            .filter(skip -> !from.startsWith(skip))
            .toList();
    return found.stream()
        .filter(file -> skipped.stream().noneMatch(file.toAbsolutePath().normalize()::startsWith))
        .toList();
  }
}
