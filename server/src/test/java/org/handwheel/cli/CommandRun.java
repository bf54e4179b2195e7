package org.handwheel.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.handwheel.cli.Surroundings.Screen;
import org.handwheel.ide.RulePages;

/** Runs the command line inside the test, with everything a process would give it. */
final class CommandRun {
  private final Path folder;
  private final Map<String, String> environment = new HashMap<>();
  private InputStream in = InputStream.nullInputStream();
  private Charset charset = StandardCharsets.UTF_8;
  private String lineEnd = "\n";
  private Screen screen = Screen.OTHER;
  private Screen errScreen = Screen.OTHER;
  private int width = Surroundings.USUAL_WIDTH;
  private LongSupplier clock = System::nanoTime;
  private RulePages pages = rule -> Optional.of("# " + rule + "\n\nA page.\n");

  private CommandRun(Path folder) {
    this.folder = folder;
  }

  static CommandRun in(Path folder) {
    return new CommandRun(folder);
  }

  CommandRun with(String variable, String value) {
    environment.put(variable, value);
    return this;
  }

  CommandRun reading(byte[] bytes) {
    in = new ByteArrayInputStream(bytes);
    return this;
  }

  CommandRun reading(String text) {
    return reading(text.getBytes(StandardCharsets.UTF_8));
  }

  CommandRun charset(Charset other) {
    charset = other;
    return this;
  }

  CommandRun lineEnd(String other) {
    lineEnd = other;
    return this;
  }

  /** The standard error alone goes to a terminal. */
  CommandRun errOnTerminal() {
    errScreen = Screen.TERMINAL;
    return this;
  }

  CommandRun onTerminal(int columns) {
    screen = Screen.TERMINAL;
    errScreen = Screen.TERMINAL;
    width = columns;
    return this;
  }

  /** Another clock: one that jumps makes any work take long. */
  CommandRun clock(LongSupplier other) {
    clock = other;
    return this;
  }

  CommandRun pages(RulePages other) {
    pages = other;
    return this;
  }

  Result run(String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Result into = run(out, args);
    return new Result(into.exitCode(), out.toString(charset), into.err());
  }

  /** Writes to a stream of the test's own. */
  Result run(OutputStream out, String... args) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int exitCode =
        Handwheel.run(
            new Surroundings(
                folder,
                environment,
                in,
                out,
                err,
                charset,
                lineEnd,
                screen,
                errScreen,
                width,
                clock),
            pages,
            args);
    return new Result(exitCode, "", err.toString(charset));
  }

  record Result(int exitCode, String out, String err) {
    List<String> outLines() {
      return out.lines().toList();
    }

    List<String> errLines() {
      return err.lines().toList();
    }
  }
}
