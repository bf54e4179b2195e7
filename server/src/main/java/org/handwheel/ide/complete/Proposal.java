package org.handwheel.ide.complete;

/**
 * Something that may be written at the cursor.
 *
 * @param label what is shown and what is matched against the letters typed so far
 * @param text what is written
 * @param snippet what is written by an editor that knows snippets: places to fill in are marked
 *     {@code ${1:text}}
 * @param detail a few words beside the label; empty for none
 * @param topic what {@link Completion#about} explains; empty for nothing
 * @param rank the smaller the further up
 * @param joint what has to stand right behind the word before: a comma, or nothing
 */
public record Proposal(
    String label,
    Kind kind,
    String text,
    String snippet,
    String detail,
    String topic,
    int rank,
    String joint) {

  Proposal(
      String label, Kind kind, String text, String snippet, String detail, String topic, int rank) {
    this(label, kind, text, snippet, detail, topic, rank, "");
  }

  /** What kind of thing is proposed. */
  public enum Kind {
    KEYWORD,
    SECTION,
    STATEMENT,
    FACE,
    PLACE,
    UNIT,
    NAME,
    VALUE,
    PROPERTY,
    RULE,
    FILE
  }

  static Proposal plain(String label, Kind kind, String detail, int rank) {
    return new Proposal(label, kind, label, Snippets.escape(label), detail, "", rank);
  }

  static Proposal plain(String label, Kind kind, String detail, String topic, int rank) {
    return new Proposal(label, kind, label, Snippets.escape(label), detail, topic, rank);
  }

  Proposal lower(int by) {
    return new Proposal(label, kind, text, snippet, detail, topic, rank + by, joint);
  }

  /** The same where the word before has to be followed by a comma first. */
  Proposal behindComma() {
    return new Proposal(label, kind, text, snippet, detail, topic, rank, ",");
  }
}
