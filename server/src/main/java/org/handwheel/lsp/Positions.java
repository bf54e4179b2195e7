package org.handwheel.lsp;

import java.nio.charset.StandardCharsets;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PositionEncodingKind;
import org.eclipse.lsp4j.Range;
import org.handwheel.syntax.SourceText;

/** The one place that turns offsets into protocol positions and back, in the agreed encoding. */
enum Positions {
  UTF16(PositionEncodingKind.UTF16) {
    @Override
    int column(String line, int index) {
      return index;
    }

    @Override
    int index(String line, int column) {
      return Math.min(column, line.length());
    }
  },
  UTF8(PositionEncodingKind.UTF8) {
    @Override
    int column(String line, int index) {
      return line.substring(0, index).getBytes(StandardCharsets.UTF_8).length;
    }

    @Override
    int index(String line, int column) {
      int bytes = 0;
      int at = 0;
      while (at < line.length() && bytes < column) {
        int codePoint = line.codePointAt(at);
        bytes += codePoint < 0x80 ? 1 : codePoint < 0x800 ? 2 : codePoint < 0x10000 ? 3 : 4;
        at += Character.charCount(codePoint);
      }
      return at;
    }
  };

  private final String kind;

  Positions(String kind) {
    this.kind = kind;
  }

  /** The name the protocol gives the encoding. */
  String kind() {
    return kind;
  }

  /** The column, in the encoding's units, of an index into a line. */
  abstract int column(String line, int index);

  /** The index into a line of a column in the encoding's units; a column too large is the end. */
  abstract int index(String line, int column);

  Position position(SourceText text, int offset) {
    int bounded = Math.max(0, Math.min(offset, text.length()));
    int line = text.lineAt(bounded);
    String whole = text.line(line);
    int index = Math.min(bounded - text.lineStart(line), whole.length());
    return new Position(line, column(whole, index));
  }

  Range range(SourceText text, int start, int end) {
    return new Range(position(text, start), position(text, end));
  }

  /** The offset of a position; lines and columns beyond the text are taken as its ends. */
  int offset(SourceText text, Position position) {
    if (position.getLine() < 0) {
      return 0;
    }
    if (position.getLine() >= text.lineCount()) {
      return text.length();
    }
    int start = text.lineStart(position.getLine());
    String line = text.line(position.getLine());
    return start + index(line, Math.max(0, position.getCharacter()));
  }
}
