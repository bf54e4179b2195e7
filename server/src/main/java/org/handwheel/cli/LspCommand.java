package org.handwheel.cli;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Callable;
import org.handwheel.lsp.LogLines;
import org.handwheel.lsp.Serve;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code handwheel lsp}: serves an editor over standard input and output until it leaves. */
@Command(
    name = "lsp",
    mixinStandardHelpOptions = true,
    description =
        "Serves an editor by the Language Server Protocol over standard input and output.")
final class LspCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @SuppressWarnings("UnusedVariable") // taken, and nothing follows from it
  @Option(
      names = "--stdio",
      description = "The only way there is; taken because some editors pass it.")
  private boolean stdio;

  LspCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  /** Whether a command line asks for the server and for nothing out of the ordinary. */
  static boolean isPlain(String... args) {
    return (args.length == 1 || (args.length == 2 && args[1].equals("--stdio")))
        && args[0].equals("lsp");
  }

  @Override
  public Integer call() throws InterruptedException {
    // Standard output belongs to the protocol: a stray print anywhere must not reach it.
    PrintStream err = new PrintStream(surroundings.err(), true, StandardCharsets.UTF_8);
    System.setOut(err);
    LogLines.to(err);
    @Nullable String version = Handwheel.version();
    return Serve.serve(
        new BufferedInputStream(surroundings.in()),
        new BufferedOutputStream(surroundings.out()),
        version == null ? "(unpackaged)" : version,
        Serve.Preparation.REHEARSED);
  }
}
