package org.handwheel.cli;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.handwheel.files.TextFile;
import org.jspecify.annotations.Nullable;

/**
 * What a git repository holds, asked of the {@code git} program: the one place that starts one.
 *
 * <p>Arguments are fixed and go to no shell; a revision is turned into the name of its commit
 * before anything else is done with it. Only plumbing that reads objects is used ({@code
 * rev-parse}, {@code merge-base}, {@code ls-tree}, {@code cat-file}): none of it runs hooks,
 * filters, drivers or monitors, looks at the files of the work tree, or fetches. {@code config} is
 * read and written by {@code git-setup} alone, {@code merge-file} by the merge driver on the files
 * it is given.
 */
final class GitRepository {
  private static final int MOST_SECONDS = 60;

  private final Path top;
  private final Surroundings surroundings;

  private GitRepository(Path top, Surroundings surroundings) {
    this.top = top;
    this.surroundings = surroundings;
  }

  /** What git said. */
  static final class Answer {
    private final int exitCode;
    private final byte[] out;
    private final String err;

    Answer(int exitCode, byte[] out, String err) {
      this.exitCode = exitCode;
      this.out = out;
      this.err = err;
    }

    /** 0 if all is well. */
    int exitCode() {
      return exitCode;
    }

    String err() {
      return err;
    }

    byte[] bytes() {
      return out.clone();
    }

    String text() {
      return new String(out, StandardCharsets.UTF_8);
    }

    InputStream stream() {
      return new ByteArrayInputStream(out);
    }
  }

  /**
   * A file of a commit.
   *
   * @param mode such as {@code 100644}
   * @param object the name of its content
   * @param size in bytes
   */
  record Entry(String mode, String object, long size) {
    boolean isFile() {
      return mode.startsWith("100");
    }
  }

  /**
   * The repository a folder is in.
   *
   * @throws UserException if it is in none, or there is no git
   */
  static GitRepository of(Path folder, Surroundings surroundings) {
    Answer answer = run(folder, surroundings, List.of("rev-parse", "--show-toplevel"));
    if (answer.exitCode() != 0) {
      throw new UserException("not in a git repository: " + firstLine(answer.err()));
    }
    return new GitRepository(Path.of(firstLine(answer.text())), surroundings);
  }

  /** The folder that holds {@code .git}. */
  Path top() {
    return top;
  }

  /** The name of the commit a revision means, if it means one. */
  Optional<String> commit(String revision) {
    if (revision.isEmpty() || revision.startsWith("-") || revision.indexOf('\0') >= 0) {
      return Optional.empty();
    }
    Answer answer =
        run("rev-parse", "--verify", "--quiet", "--end-of-options", revision + "^{commit}");
    String name = firstLine(answer.text());
    return answer.exitCode() == 0 && name.matches("[0-9a-f]{40,64}")
        ? Optional.of(name)
        : Optional.empty();
  }

  /** The best common ancestor of two commits. */
  Optional<String> mergeBase(String one, String other) {
    Answer answer = run("merge-base", one, other);
    return answer.exitCode() == 0 ? Optional.of(firstLine(answer.text())) : Optional.empty();
  }

  /** All files of a commit by their paths from the top, with forward slashes. */
  Map<String, Entry> files(String commit) {
    Answer answer = run("ls-tree", "-r", "-z", "-l", "--full-tree", commit);
    if (answer.exitCode() != 0) {
      throw new UserException("git ls-tree: " + firstLine(answer.err()));
    }
    Map<String, Entry> files = new TreeMap<>();
    for (String line : answer.text().split("\0", -1)) {
      int tab = line.indexOf('\t');
      String[] words = tab < 0 ? new String[0] : line.substring(0, tab).trim().split(" +", -1);
      if (words.length == 4 && words[1].equals("blob")) {
        files.put(line.substring(tab + 1), new Entry(words[0], words[2], Long.parseLong(words[3])));
      }
    }
    return files;
  }

  /** The text of an object. */
  TextFile.Result text(Entry entry) {
    if (!entry.isFile()) {
      return new TextFile.Refused("it is a link; links are not followed in a revision");
    }
    if (entry.size() > TextFile.MOST_BYTES) {
      return new TextFile.Refused("it is larger than 10 MB");
    }
    Answer answer = run("cat-file", "blob", entry.object());
    if (answer.exitCode() != 0) {
      return new TextFile.Refused("git cannot read it: " + firstLine(answer.err()));
    }
    try {
      return TextFile.read(answer.stream());
    } catch (IOException e) {
      return new TextFile.Refused("it cannot be read");
    }
  }

  /** Runs git in this repository. */
  Answer run(String... arguments) {
    return run(top, surroundings, List.of(arguments));
  }

  /** Runs git in a folder. */
  static Answer run(Path folder, Surroundings surroundings, List<String> arguments) {
    List<String> command = new ArrayList<>(List.of("git", "--no-pager", "--no-replace-objects"));
    command.addAll(List.of("-c", "core.fsmonitor=false"));
    command.addAll(arguments);
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.directory(folder.toAbsolutePath().toFile());
    builder.environment().putAll(surroundings.environment());
    builder
        .environment()
        .putAll(
            Map.of(
                "LC_ALL", "C",
                "GIT_OPTIONAL_LOCKS", "0",
                "GIT_NO_LAZY_FETCH", "1",
                "GIT_TERMINAL_PROMPT", "0"));
    try {
      return answer(builder);
    } catch (IOException e) {
      throw new UserException("git cannot be started; install it or put it on the PATH");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new UserException("git was interrupted");
    }
  }

  private static Answer answer(ProcessBuilder builder) throws IOException, InterruptedException {
    Process process = builder.start();
    try {
      process.getOutputStream().close();
      byte[][] err = new byte[1][];
      Thread errors =
          new Thread(
              () -> {
                try {
                  err[0] = process.getErrorStream().readAllBytes();
                } catch (IOException e) {
                  err[0] = new byte[0];
                }
              });
      errors.setDaemon(true);
      errors.start();
      byte[] out = process.getInputStream().readAllBytes();
      if (!process.waitFor(MOST_SECONDS, TimeUnit.SECONDS)) {
        throw new UserException("git does not answer");
      }
      errors.join(TimeUnit.SECONDS.toMillis(MOST_SECONDS));
      byte @Nullable [] said = err[0];
      return new Answer(
          process.exitValue(), out, said == null ? "" : new String(said, StandardCharsets.UTF_8));
    } finally {
      process.destroyForcibly();
    }
  }

  private static String firstLine(String text) {
    return text.lines().findFirst().orElse("").strip();
  }
}
