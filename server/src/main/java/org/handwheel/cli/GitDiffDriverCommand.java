package org.handwheel.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import org.handwheel.files.DiskText;
import org.handwheel.files.TextFile;
import org.handwheel.files.TextSource;
import org.handwheel.files.WorkspaceRoot;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code handwheel git-diff-driver}: what git runs for one file of a diff. */
@Command(
    name = "git-diff-driver",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    description = {
      "Prints what is different in a file, for git; `handwheel git-setup --diff-command` tells it.",
      "Git hands over the two texts of the file alone, so both are read with the shop files that"
          + " are on disk. `handwheel diff --git` reads those of the revisions."
    })
final class GitDiffDriverCommand implements Callable<Integer> {
  private static final int UNMERGED = 1;
  private static final int USUAL = 7;

  private final Surroundings surroundings;
  private final Output output;

  @Option(
      names = "--exit-code",
      description = "Exit with 1 if there are changes; git has to know trustExitCode, from 2.46.")
  private boolean exitCode;

  @Parameters(
      arity = "1..9",
      paramLabel = "ARGUMENT",
      description = "path old-file old-hex old-mode new-file new-hex new-mode, as git says them.")
  private List<String> arguments = List.of();

  GitDiffDriverCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    if (arguments.size() == UNMERGED) {
      output.line("* Unmerged path " + output.glyphs().show(arguments.get(0)));
      return Handwheel.EXIT_CLEAN;
    }
    if (arguments.size() < USUAL) {
      throw new UserException("git hands over seven arguments");
    }
    String oldPath = arguments.get(0);
    String newPath = arguments.size() > USUAL ? arguments.get(USUAL) : oldPath;
    Review review =
        Review.of(
            side(oldPath, arguments.get(1)),
            side(newPath, arguments.get(4)),
            surroundings.nanoClock());
    new TextDiff(output, Palette.automatic(surroundings)).printFiles(review);
    review
        .unreadable()
        .forEach((path, reason) -> output.trouble("handwheel: " + path + ": " + reason));
    // Git gives up its whole diff for any other code, so a file that is no text counts as changed.
    boolean changed = !review.diffs().isEmpty() || !review.unreadable().isEmpty();
    return exitCode && changed ? Handwheel.EXIT_FINDINGS : Handwheel.EXIT_CLEAN;
  }

  /** A file with the text git gives; all it uses is read from the disk. */
  private FileSet side(String path, String given) {
    Path here = surroundings.workingDirectory().toAbsolutePath();
    WorkspaceRoot root = WorkspaceRoot.of(here.resolve(path), here);
    String own = root.workspacePath(here.resolve(path));
    TextSource disk = new DiskText(root);
    TextSource source =
        asked -> asked.equals(own) ? TextFile.read(here.resolve(given)) : disk.read(asked);
    boolean missing = given.equals("/dev/null") || given.equals("nul");
    return new FileSet(source, missing ? Map.of() : Map.of("", own), Set.of(), Map.of());
  }
}
