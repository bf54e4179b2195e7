package org.handwheel.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.handwheel.cli.GitRepository.Answer;
import org.handwheel.files.TextFile;
import org.handwheel.plan.merge.StatementMerge;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code handwheel merge-driver}: what git runs for a file that two branches changed. */
@Command(
    name = "merge-driver",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    description = {
      "Merges a file for git; `handwheel git-setup --merge-driver` tells it.",
      "Git's own merge goes first. Only where that leaves a conflict is the file merged by"
          + " statement; where this is not certain either, git's conflict stays as it is."
    })
final class MergeDriverCommand implements Callable<Integer> {
  /** What {@code git merge-file} says for more conflicts than it counts; above it has failed. */
  private static final int MOST_CONFLICTS = 127;

  private final Surroundings surroundings;
  private final Output output;

  @Parameters(index = "0", paramLabel = "BASE", description = "The file before, %%O.")
  private String base = "";

  @Parameters(index = "1", paramLabel = "OURS", description = "Our file, %%A; it is written.")
  private String ours = "";

  @Parameters(index = "2", paramLabel = "THEIRS", description = "Their file, %%B.")
  private String theirs = "";

  @Parameters(index = "3", paramLabel = "SIZE", description = "Length of the marks, %%L.")
  private int size;

  @Parameters(index = "4", paramLabel = "PATH", description = "The path of the file, %%P.")
  private String path = "";

  @Parameters(
      index = "5..*",
      arity = "0..3",
      paramLabel = "LABEL",
      description = "Names for the marks: of base, ours and theirs; %%S %%X %%Y.")
  private List<String> labels = List.of();

  MergeDriverCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    boolean named = labels.size() == 3;
    Answer git =
        GitRepository.run(
            surroundings.workingDirectory().toAbsolutePath(),
            surroundings,
            List.of(
                "merge-file",
                "-p",
                "--marker-size=" + size,
                "-L",
                named ? labels.get(1) : "ours",
                "-L",
                named ? labels.get(0) : "base",
                "-L",
                named ? labels.get(2) : "theirs",
                "--",
                ours,
                base,
                theirs));
    if (git.exitCode() > MOST_CONFLICTS) {
      // Not a text, most likely: our file stays, and git calls it a conflict.
      throw new UserException(path + ": " + git.err().strip());
    }
    Optional<String> merged = git.exitCode() == 0 ? Optional.empty() : byStatement();
    write(merged.map(text -> text.getBytes(StandardCharsets.UTF_8)).orElseGet(git::bytes));
    if (merged.isPresent()) {
      output.trouble("handwheel: " + path + ": merged by statement; check it");
    }
    return git.exitCode() == 0 || merged.isPresent()
        ? Handwheel.EXIT_CLEAN
        : Handwheel.EXIT_FINDINGS;
  }

  private Optional<String> byStatement() {
    if (startsWithMark(file(ours))) {
      // A mark of byte order is no part of the text and would be lost.
      return Optional.empty();
    }
    return TextFile.read(file(base)) instanceof TextFile.Text before
            && TextFile.read(file(ours)) instanceof TextFile.Text mine
            && TextFile.read(file(theirs)) instanceof TextFile.Text other
        ? StatementMerge.of(before.text(), mine.text(), other.text())
        : Optional.empty();
  }

  private static boolean startsWithMark(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return Arrays.equals(in.readNBytes(3), new byte[] {(byte) 0xef, (byte) 0xbb, (byte) 0xbf});
    } catch (IOException e) {
      return true;
    }
  }

  private Path file(String name) {
    try {
      return surroundings.workingDirectory().toAbsolutePath().resolve(name);
    } catch (InvalidPathException e) {
      throw new UserException(name + ": no file can have this name here");
    }
  }

  /** Git reads this file, of its own making, when the command has ended. */
  private void write(byte[] bytes) {
    try {
      Files.write(file(ours), bytes);
    } catch (IOException e) {
      throw new UserException(path + ": it cannot be written");
    }
  }
}
