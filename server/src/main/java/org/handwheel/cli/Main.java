package org.handwheel.cli;

import java.io.Console;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.handwheel.cli.Surroundings.Screen;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.UsageMessageSpec;

/** The entry point: takes the surroundings from the process and hands it an exit code. */
public final class Main {
  private Main() {}

  /** Runs the command line and ends the process with its exit code. */
  public static void main(String[] args) {
    System.exit(StdioServer.isPlain(args) ? serve() : Handwheel.run(ofThisProcess(), args));
  }

  private static int serve() {
    try {
      return StdioServer.serve(
          System.in,
          new FileOutputStream(FileDescriptor.out),
          new FileOutputStream(FileDescriptor.err));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Handwheel.EXIT_TROUBLE;
    } catch (RuntimeException | OutOfMemoryError e) {
      return Handwheel.internalError(ofThisProcess(), e);
    }
  }

  @SuppressWarnings("SystemConsoleNull") // asked for in the way that each Java needs
  private static Surroundings ofThisProcess() {
    @Nullable Console console = System.console();
    Screen screen = console != null && isTerminal(console) ? Screen.TERMINAL : Screen.OTHER;
    return new Surroundings(
        Path.of(""),
        System.getenv(),
        System.in,
        new FileOutputStream(FileDescriptor.out),
        new FileOutputStream(FileDescriptor.err),
        charset(console),
        System.lineSeparator(),
        screen,
        errScreen(screen),
        screen == Screen.TERMINAL ? terminalWidth() : Surroundings.USUAL_WIDTH,
        System::nanoTime);
  }

  /**
   * Java knows no more than whether a console is there at all. Where the system shows what the
   * standard error leads to, that counts: it may be a file although the output is on a terminal,
   * and the other way round.
   */
  private static Screen errScreen(Screen screen) {
    try {
      String target = Files.readSymbolicLink(Path.of("/proc/self/fd/2")).toString();
      return target.startsWith("/dev/pts/") || target.startsWith("/dev/tty")
          ? Screen.TERMINAL
          : Screen.OTHER;
    } catch (IOException | UnsupportedOperationException | SecurityException e) {
      return screen;
    }
  }

  /** Before Java 22 a console is always a terminal; since then it has to be asked. */
  private static boolean isTerminal(Console console) {
    try {
      return (Boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (NoSuchMethodException e) {
      return true;
    } catch (IllegalAccessException | InvocationTargetException e) {
      return false;
    }
  }

  /** Java 19 and later say what standard output expects; before, only a console does. */
  private static Charset charset(@Nullable Console console) {
    @Nullable String said = System.getProperty("stdout.encoding");
    if (said != null) {
      try {
        return Charset.forName(said);
      } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
        return StandardCharsets.UTF_8;
      }
    }
    return console == null ? StandardCharsets.UTF_8 : console.charset();
  }

  private static int terminalWidth() {
    return new UsageMessageSpec().autoWidth(true).width();
  }
}
