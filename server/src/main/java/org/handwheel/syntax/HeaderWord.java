package org.handwheel.syntax;

import org.antlr.v4.runtime.CharStreams;
import org.handwheel.grammar.HandwheelLexer;

/** Finds the word that begins a section, before the text is cut and parsed. */
final class HeaderWord {
  private HeaderWord() {}

  /**
   * The first word of a line if the lexer takes it for a header's, else nothing: what looks like
   * one may be part of a longer name.
   */
  static String at(String text, int lineStart) {
    int from = lineStart;
    while (from < text.length() && isBlank(text.charAt(from))) {
      from++;
    }
    int to = from;
    while (to < text.length() && isLetter(text.charAt(to))) {
      to++;
    }
    String word = text.substring(from, to);
    if (SectionKind.startedBy(word) == SectionKind.PREAMBLE) {
      return "";
    }
    String line = text.substring(from, lineEnd(text, to));
    HandwheelLexer lexer = new HandwheelLexer(CharStreams.fromString(line));
    return lexer.nextToken().getText().equals(word) ? word : "";
  }

  private static int lineEnd(String text, int from) {
    int end = from;
    while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
      end++;
    }
    return end;
  }

  private static boolean isBlank(char c) {
    return c == ' '
        || c == '\t'
        || c == '\u00a0'
        || c == '\u2007'
        || c == '\u202f'
        || c == '\ufeff';
  }

  private static boolean isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  }
}
