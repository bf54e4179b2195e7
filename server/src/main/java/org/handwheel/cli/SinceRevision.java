package org.handwheel.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.plan.diff.FindingChange;
import org.handwheel.plan.diff.PlanComparison;
import org.handwheel.rules.Checked;
import org.handwheel.syntax.Finding;
import org.jspecify.annotations.Nullable;

/** Findings that a git revision of the same file, with its shop files of then, does not have. */
final class SinceRevision implements NewFindings {
  private final WorkspaceRoot top;
  private final FileSet files;
  private final Review.Loaded loaded;

  private SinceRevision(WorkspaceRoot top, FileSet files, Review.Loaded loaded) {
    this.top = top;
    this.files = files;
    this.loaded = loaded;
  }

  static SinceRevision of(String revision, Surroundings surroundings) {
    GitRepository repository =
        GitRepository.of(surroundings.workingDirectory().toAbsolutePath(), surroundings);
    String commit = DiffCommand.commit(repository, revision);
    FileSet files = FileSet.ofCommit(repository, commit, "");
    return new SinceRevision(
        new WorkspaceRoot(repository.top()),
        files,
        Review.Loaded.of(files, surroundings.nanoClock()));
  }

  @Override
  public List<Finding> of(Path file, Checked checked) {
    String before = before(file, checked);
    if (before == null) {
      return checked.findings();
    }
    Set<Finding> appeared = Collections.newSetFromMap(new IdentityHashMap<>());
    PlanComparison.of(loaded.checked(before), checked).findings().stream()
        .filter(change -> change.kind() == FindingChange.Kind.APPEARED)
        .forEach(change -> appeared.add(change.finding()));
    return checked.findings().stream().filter(appeared::contains).toList();
  }

  /** The file of the revision that a file was: of the same path, or else renamed since. */
  private @Nullable String before(Path file, Checked checked) {
    Path real = real(file);
    if (!top.holds(real)) {
      return null;
    }
    String path = top.workspacePath(real);
    if (files.files().containsKey(path)) {
      return path;
    }
    List<String> gone =
        files.files().keySet().stream().filter(old -> !Files.exists(top.file(old))).toList();
    return Review.likest(loaded, gone, path, checked.tree().source().text());
  }

  private static Path real(Path file) {
    try {
      return file.toRealPath();
    } catch (IOException e) {
      return file.toAbsolutePath().normalize();
    }
  }
}
