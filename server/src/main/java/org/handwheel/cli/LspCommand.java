package org.handwheel.cli;

import java.util.concurrent.Callable;
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

  @Override
  public Integer call() throws InterruptedException {
    return StdioServer.serve(surroundings.in(), surroundings.out(), surroundings.err());
  }
}
