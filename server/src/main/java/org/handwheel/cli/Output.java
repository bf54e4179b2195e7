package org.handwheel.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The two output streams: results on one, trouble and times on the other. */
final class Output {
  private final OutputStream raw;
  private final PrintWriter out;
  private final PrintWriter err;
  private final Glyphs glyphs;
  private final String lineEnd;
  private final int width;
  private boolean broken;

  private Output(
      OutputStream raw,
      PrintWriter out,
      PrintWriter err,
      Glyphs glyphs,
      String lineEnd,
      int width) {
    this.raw = raw;
    this.out = out;
    this.err = err;
    this.glyphs = glyphs;
    this.lineEnd = lineEnd;
    this.width = width;
  }

  static Output of(Surroundings surroundings) {
    return new Output(
        surroundings.out(),
        new PrintWriter(new OutputStreamWriter(surroundings.out(), surroundings.charset())),
        new PrintWriter(new OutputStreamWriter(surroundings.err(), surroundings.charset())),
        new Glyphs(surroundings.charset()),
        surroundings.lineEnd(),
        surroundings.width());
  }

  int width() {
    return width;
  }

  Glyphs glyphs() {
    return glyphs;
  }

  /** For the help texts, which are plain. */
  PrintWriter outWriter() {
    return out;
  }

  PrintWriter errWriter() {
    return err;
  }

  /** Prints a line that was laid out before. */
  void line(String line) {
    out.print(line);
    out.print(lineEnd);
  }

  /** A file's text: UTF-8 wherever it goes, with its own line ends. */
  void text(String text) {
    bytes(text.getBytes(StandardCharsets.UTF_8));
  }

  /** A file's bytes as they are. */
  void bytes(byte[] bytes) {
    out.flush();
    try {
      raw.write(bytes);
      raw.flush();
    } catch (IOException e) {
      broken = true;
    }
  }

  void lines(List<String> lines) {
    lines.forEach(this::line);
  }

  /** A line for the user about what went wrong; not broken, so that it stays one line. */
  void trouble(String line) {
    err.print(glyphs.show(line));
    err.print(lineEnd);
  }

  /** Hands on what is still held back; says whether everything arrived. */
  boolean finish() {
    err.flush();
    return !out.checkError() && !broken;
  }
}
