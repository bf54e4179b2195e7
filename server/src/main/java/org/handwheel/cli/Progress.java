package org.handwheel.cli;

import java.io.PrintWriter;
import java.time.Duration;
import java.util.Locale;
import java.util.function.LongSupplier;
import org.handwheel.cli.Surroundings.Screen;
import org.jspecify.annotations.Nullable;

/**
 * One line on the terminal that says how far long work is. It goes to the standard error, only if
 * that is a terminal, appears only when the work takes its time, and is gone when the work is done.
 */
final class Progress implements AutoCloseable {
  /** Work that is done by then shows nothing. */
  private static final Duration PATIENCE = Duration.ofMillis(400);

  /** The line changes at most this often. */
  private static final Duration PAUSE = Duration.ofMillis(100);

  private final @Nullable PrintWriter err;
  private final LongSupplier clock;
  private final int width;
  private long next;
  private int shown;

  private Progress(@Nullable PrintWriter err, LongSupplier clock, int width) {
    this.err = err;
    this.clock = clock;
    this.width = width;
    this.next = clock.getAsLong() + PATIENCE.toNanos();
  }

  /** For the standard error; silent where nobody looks at it, and where automation runs. */
  static Progress on(Output output, Surroundings surroundings) {
    boolean seen =
        surroundings.errScreen() == Screen.TERMINAL
            && !surroundings.isSet("CI")
            && !surroundings.environment().getOrDefault("TERM", "").equals("dumb");
    return new Progress(
        seen ? output.errWriter() : null, surroundings.nanoClock(), surroundings.width());
  }

  /** So many of so many are done, and this one is next. */
  void at(int done, int all, String what) {
    say(String.format(Locale.ROOT, "%d of %d: %s", done + 1, all, what));
  }

  /** Shows a line in place of the one before, if it is time for one. */
  void say(String line) {
    long now = clock.getAsLong();
    if (err == null || now - next < 0) {
      return;
    }
    next = now + PAUSE.toNanos();
    String clean = line.replaceAll("\\p{Cntrl}|\\p{Cf}", "?");
    String fits = TextWidth.of(clean) < width ? clean : clean.substring(0, cut(clean));
    int wide = TextWidth.of(fits);
    // Blanks instead of a code that clears: any terminal knows them.
    err.print("\r" + fits + " ".repeat(Math.max(0, shown - wide)));
    err.flush();
    shown = wide;
  }

  private int cut(String line) {
    int at = 0;
    int wide = 0;
    while (at < line.length()) {
      int c = line.codePointAt(at);
      wide += TextWidth.of(c);
      if (wide >= width) {
        break;
      }
      at += Character.charCount(c);
    }
    return at;
  }

  /** Takes the line away, so that what is printed next stands alone. */
  void clear() {
    if (err != null && shown > 0) {
      err.print("\r" + " ".repeat(shown) + "\r");
      err.flush();
      shown = 0;
    }
  }

  @Override
  public void close() {
    clear();
  }
}
