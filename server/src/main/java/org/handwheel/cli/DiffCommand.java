package org.handwheel.cli;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.handwheel.files.WorkspaceRoot;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code handwheel diff}: what a machinist would call the difference. */
@Command(
    name = "diff",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Says what is different between two plans, shop files or folders, or two git revisions:"
          + " sizes, holding, cuts, tools, times, and findings that appear or vanish.",
      "How a file is laid out, its comments and the units lengths are written in make no"
          + " difference. Shop files of a revision are read from that revision."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel diff old.plan new.plan",
      "  handwheel diff --git HEAD                files here against the last commit",
      "  handwheel diff --git main...topic plans  a branch, from where it left main",
      "  handwheel diff --git v1 v2 --format markdown > comment.md",
      "",
      "Exit codes: 0 no change, 1 changes, 2 wrong usage or an unreadable file."
    })
final class DiffCommand implements Callable<Integer> {
  private final Surroundings surroundings;
  private final Output output;

  @Parameters(
      arity = "1..3",
      paramLabel = "A B",
      description =
          "Two files or folders; with --git a revision or two, then a file or folder (default:"
              + " this folder). With one revision the other side is what is on disk.")
  private List<String> sides = List.of();

  @Option(names = "--git", description = "Compare revisions of the git repository here.")
  private boolean git;

  @Option(
      names = "--format",
      paramLabel = "text|markdown|json",
      description = "How to print it. Default: text.")
  private Format format = Format.TEXT;

  @Option(
      names = "--color",
      paramLabel = "auto|always|never",
      description = "Whether to use colour. Default: auto, on a terminal without NO_COLOR.")
  private Palette.Choice color = Palette.Choice.AUTO;

  DiffCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  /** How a review is printed. */
  enum Format {
    TEXT,
    MARKDOWN,
    JSON
  }

  @Override
  public Integer call() {
    Review review = git ? ofGit() : ofDisk();
    DiffFormat printer =
        switch (format) {
          case TEXT -> new TextDiff(output, Palette.of(color, surroundings));
          case MARKDOWN -> new MarkdownDiff(output);
          case JSON -> new JsonDiff(output);
        };
    printer.print(review);
    review
        .unreadable()
        .forEach((path, reason) -> output.trouble("handwheel: " + path + ": " + reason));
    if (!review.unreadable().isEmpty()) {
      return Handwheel.EXIT_TROUBLE;
    }
    return review.diffs().isEmpty() ? Handwheel.EXIT_CLEAN : Handwheel.EXIT_FINDINGS;
  }

  private Review ofDisk() {
    if (sides.size() != 2) {
      throw new UserException("name two files or two folders, or use --git");
    }
    Path one = path(sides.get(0));
    Path other = path(sides.get(1));
    if (Files.isDirectory(one) != Files.isDirectory(other)) {
      throw new UserException("a file cannot be compared with a folder");
    }
    return Review.of(set(one), set(other), surroundings.nanoClock());
  }

  private FileSet set(Path path) {
    Path here = surroundings.workingDirectory().toAbsolutePath();
    if (Files.isDirectory(path)) {
      return FileSet.ofFolder(path, here);
    }
    if (!Files.exists(path)) {
      throw new UserException(new PathNames(here).shown(path) + ": there is no such file");
    }
    return FileSet.ofFile(path, here);
  }

  private Path path(String name) {
    try {
      return surroundings.workingDirectory().toAbsolutePath().resolve(name).normalize();
    } catch (InvalidPathException e) {
      throw new UserException(name + ": no file can have this name here");
    }
  }

  private Review ofGit() {
    GitRepository repository =
        GitRepository.of(surroundings.workingDirectory().toAbsolutePath(), surroundings);
    List<String> left = new ArrayList<>(sides);
    Range range = range(repository, left.remove(0));
    String other = range.after();
    if (other == null && !left.isEmpty()) {
      String second = left.get(0);
      boolean isFile = Files.exists(path(second));
      other = repository.commit(second).orElse(null);
      if (other != null && isFile) {
        throw new UserException(
            second + " is a revision and a file; write ./" + second + " for the file");
      }
      if (other != null) {
        left.remove(0);
      }
    }
    if (left.size() > 1) {
      throw new UserException("no revision: " + left.get(0));
    }
    String under = under(repository, left.isEmpty() ? "." : left.get(0));
    FileSet before = FileSet.ofCommit(repository, range.before(), under);
    FileSet after =
        other == null
            ? FileSet.ofWorkTree(repository, under)
            : FileSet.ofCommit(repository, other, under);
    if (before.files().isEmpty() && after.files().isEmpty() && !left.isEmpty()) {
      throw new UserException(left.get(0) + ": there is no plan and no shop file on either side");
    }
    return Review.of(before, after, surroundings.nanoClock());
  }

  private record Range(String before, @Nullable String after) {}

  /** A revision, or two with two or three dots between. */
  private static Range range(GitRepository repository, String written) {
    int dots = written.indexOf("..");
    if (dots < 0) {
      return new Range(commit(repository, written), null);
    }
    boolean fromBase = written.startsWith("...", dots);
    String left = written.substring(0, dots);
    String right = written.substring(dots + (fromBase ? 3 : 2));
    String one = commit(repository, left.isEmpty() ? "HEAD" : left);
    String other = commit(repository, right.isEmpty() ? "HEAD" : right);
    return new Range(
        fromBase
            ? repository
                .mergeBase(one, other)
                .orElseThrow(() -> new UserException(written + ": they have no common ancestor"))
            : one,
        other);
  }

  static String commit(GitRepository repository, String revision) {
    return repository
        .commit(revision)
        .orElseThrow(() -> new UserException("there is no revision '" + revision + "' here"));
  }

  /** A path of the command line as git names it. */
  private String under(GitRepository repository, String name) {
    Path path = path(name);
    WorkspaceRoot top = new WorkspaceRoot(repository.top());
    if (!top.holds(path)) {
      path = real(path);
    }
    if (!top.holds(path)) {
      throw new UserException(name + ": it is not in the repository " + repository.top());
    }
    return top.workspacePath(path);
  }

  /** Git names its folder with all links followed. */
  private static Path real(Path path) {
    try {
      Path parent = path;
      while (parent != null && !Files.exists(parent)) {
        parent = parent.getParent();
      }
      return parent == null
          ? path
          : parent.toRealPath().resolve(parent.relativize(path)).normalize();
    } catch (java.io.IOException e) {
      return path;
    }
  }
}
