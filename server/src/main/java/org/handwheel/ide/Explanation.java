package org.handwheel.ide;

/** A text for a person in the two forms an editor may take. */
public record Explanation(String markdown, String plain) {
  /** Nothing to say. */
  public static final Explanation NONE = new Explanation("", "");

  /** Text of the program's own; back quotes in it mark code. */
  public static Explanation of(String text) {
    return new Explanation(text, text.replace("`", ""));
  }

  public boolean isEmpty() {
    return markdown.isEmpty();
  }
}
