package org.handwheel.cli;

import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.LongSupplier;

/**
 * What the command line runs in. Only {@link Main} takes it from the process.
 *
 * @param charset what the readers of both output streams understand
 * @param screen whether a person looks at the output
 * @param errScreen whether a person looks at what goes to the standard error
 * @param width columns of the screen
 * @param nanoClock a clock for measuring
 */
record Surroundings(
    Path workingDirectory,
    Map<String, String> environment,
    InputStream in,
    OutputStream out,
    OutputStream err,
    Charset charset,
    String lineEnd,
    Screen screen,
    Screen errScreen,
    int width,
    LongSupplier nanoClock) {
  /** The width of output that goes to a file, or to a screen of unknown width. */
  static final int USUAL_WIDTH = 80;

  private static final int NARROWEST = 40;
  private static final int WIDEST = 120;

  Surroundings {
    environment = Map.copyOf(environment);
    width = Math.max(NARROWEST, Math.min(WIDEST, width));
  }

  /** Where the output goes. */
  enum Screen {
    TERMINAL,
    OTHER
  }

  boolean isSet(String variable) {
    return !environment.getOrDefault(variable, "").isEmpty();
  }
}
