package org.handwheel.ide.actions;

import java.util.List;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.TextEdit;
import org.jspecify.annotations.Nullable;

/**
 * A change of the file that an editor can offer.
 *
 * @param title what it does, in the imperative
 * @param choice how strongly it is offered
 * @param finding what it mends, or nothing for a rewriting
 * @param edits the change; empty if it cannot be made
 * @param obstacle why it cannot be made; empty if it can
 */
public record Action(
    String title,
    Kind kind,
    Choice choice,
    @Nullable Finding finding,
    List<TextEdit> edits,
    String obstacle) {
  public Action {
    edits = List.copyOf(edits);
  }

  /** What kind of change it is. */
  public enum Kind {
    FIX,
    EXTRACT,
    INLINE,
    REWRITE
  }

  /** How strongly a change is offered. */
  public enum Choice {
    /** The one to take if no other is asked for. */
    PREFERRED,
    /** One of several. */
    POSSIBLE
  }

  static Action rewriting(String title, Kind kind, List<TextEdit> edits) {
    return new Action(title, kind, Choice.POSSIBLE, null, edits, "");
  }

  static Action impossible(String title, Kind kind, String obstacle) {
    return new Action(title, kind, Choice.POSSIBLE, null, List.of(), obstacle);
  }
}
