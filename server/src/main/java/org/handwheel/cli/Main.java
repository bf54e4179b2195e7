package org.handwheel.cli;

import java.io.PrintWriter;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The entry point of the command line. */
@Command(
    name = "handwheel",
    mixinStandardHelpOptions = true,
    versionProvider = Main.Version.class,
    description = "Checks plans for work on a manual milling machine.")
public final class Main implements Runnable {
  /** Wrong usage or an internal error; picocli's own code for an error, 1, means findings here. */
  static final int EXIT_TROUBLE = 2;

  @Spec private @Nullable CommandSpec spec;

  /** Runs the command line and ends the process with its exit code. */
  public static void main(String[] args) {
    System.exit(commandLine().execute(args));
  }

  static CommandLine commandLine() {
    return new CommandLine(new Main())
        .setExitCodeExceptionMapper(e -> EXIT_TROUBLE)
        .setExecutionExceptionHandler(
            (e, commandLine, parsed) -> {
              PrintWriter err = commandLine.getErr();
              err.println("handwheel: internal error: " + e);
              return EXIT_TROUBLE;
            });
  }

  @Override
  public void run() {
    if (spec != null) {
      throw new ParameterException(spec.commandLine(), "Missing a command");
    }
  }

  /** The version in the manifest of the jar; absent when run from class files. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      @Nullable String version = Main.class.getPackage().getImplementationVersion();
      return new String[] {"handwheel " + (version == null ? "(unpackaged)" : version)};
    }
  }
}
