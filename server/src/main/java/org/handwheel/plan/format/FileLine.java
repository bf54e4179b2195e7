package org.handwheel.plan.format;

import java.util.List;
import org.handwheel.syntax.Section;
import org.jspecify.annotations.Nullable;

/**
 * A line of the file and what is to stand on it.
 *
 * @param number counted from 0
 * @param section the section it is in; nothing for an empty line
 * @param role what it is to the sections around it
 */
record FileLine(int number, Kind kind, @Nullable Section section, List<Piece> pieces, Role role) {
  FileLine {
    pieces = List.copyOf(pieces);
  }

  /** What is on a line. */
  enum Kind {
    BLANK,
    COMMENT,
    CODE,
    /** A line that is left as it is. */
    KEPT
  }

  /** What a line is to the sections around it. */
  enum Role {
    PLAIN,
    HEADER,
    /** The first line of a section that is not the first of its file, with its comment. */
    OPENS_SECTION
  }

  static FileLine blank(int number) {
    return new FileLine(number, Kind.BLANK, null, List.of(), Role.PLAIN);
  }

  static FileLine kept(int number, Section section) {
    return new FileLine(number, Kind.KEPT, section, List.of(), Role.PLAIN);
  }

  static FileLine code(int number, Section section, List<Piece> pieces) {
    return new FileLine(number, Kind.CODE, section, pieces, Role.PLAIN);
  }

  static FileLine comment(int number, Section section, Piece piece) {
    return new FileLine(number, Kind.COMMENT, section, List.of(piece), Role.PLAIN);
  }

  FileLine asHeader() {
    return new FileLine(number, kind, section, pieces, Role.HEADER);
  }

  FileLine opening() {
    return new FileLine(number, kind, section, pieces, Role.OPENS_SECTION);
  }

  /** A comment moved, with its text changed or not. */
  FileLine withComment(String gap, String text) {
    Piece old = pieces.get(0);
    return new FileLine(
        number, kind, section, List.of(new Piece(old.start(), old.end(), gap, text)), role);
  }

  boolean startsSection() {
    return role == Role.OPENS_SECTION;
  }
}
