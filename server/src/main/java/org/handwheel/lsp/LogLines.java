package org.handwheel.lsp;

import java.io.PrintStream;
import java.util.List;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * What the server and the protocol's library have to say beside the protocol: warnings and worse, a
 * line each without a stack trace, and nothing about what an editor may well do.
 */
public final class LogLines extends Handler {
  private static final int MOST_CHARACTERS = 300;

  /** Held here: a logger that nobody holds is forgotten with what was set. */
  private static final List<Logger> LOGGERS =
      List.of(Logger.getLogger("org.eclipse.lsp4j"), Logger.getLogger("org.handwheel"));

  /** An answer and its cancelling may pass each other: that is no fault of anybody. */
  private static final String LATE_CANCEL = "Unmatched cancel notification";

  private final PrintStream out;

  LogLines(PrintStream out) {
    this.out = out;
    setLevel(Level.WARNING);
  }

  /** Sends what the server logs from now on, in this process, to a stream. */
  public static void to(PrintStream out) {
    LogLines lines = new LogLines(out);
    for (Logger logger : LOGGERS) {
      logger.setUseParentHandlers(false);
      for (Handler before : logger.getHandlers()) {
        logger.removeHandler(before);
      }
      logger.addHandler(lines);
    }
  }

  @Override
  public void publish(LogRecord logged) {
    String message = String.valueOf(logged.getMessage());
    if (isLoggable(logged) && !message.startsWith(LATE_CANCEL)) {
      out.println(line(message, logged.getThrown()));
      out.flush();
    }
  }

  private static String line(String message, @Nullable Throwable thrown) {
    StringBuilder line = new StringBuilder("handwheel: ").append(message);
    if (thrown != null) {
      Throwable cause = thrown;
      while (cause.getCause() != null) {
        cause = cause.getCause();
      }
      line.append(": ").append(cause.getClass().getSimpleName());
      if (cause.getMessage() != null) {
        line.append(": ").append(cause.getMessage());
      }
      if (cause.getStackTrace().length > 0) {
        line.append(" at ").append(cause.getStackTrace()[0]);
      }
    }
    // What an editor sent may be quoted: no line breaks and no control characters.
    String plain = line.toString().replaceAll("\\p{C}+|\\s+", " ").strip();
    return plain.length() > MOST_CHARACTERS
        ? plain.substring(0, MOST_CHARACTERS - 3) + "..."
        : plain;
  }

  @Override
  public void flush() {
    out.flush();
  }

  @Override
  public void close() {
    out.flush();
  }
}
