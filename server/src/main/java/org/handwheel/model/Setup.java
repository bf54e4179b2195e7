package org.handwheel.model;

import java.util.List;
import org.handwheel.syntax.Origin;
import org.jspecify.annotations.Nullable;

/**
 * One holding of the work and what is done in it.
 *
 * @param name the id it is referred to by, if it has one
 * @param header the header line
 * @param hold how the work is held, if that could be read
 * @param stepsBeforeHold how many steps come before the {@code hold} line
 * @param damage whether every line could be read
 */
public record Setup(
    @Nullable Located<String> name,
    String title,
    Origin header,
    @Nullable Hold hold,
    List<Step> steps,
    int stepsBeforeHold,
    Damage damage) {
  public Setup {
    steps = List.copyOf(steps);
  }

  /** Whether lines of the section could not be read, so that what seems missing may be there. */
  public enum Damage {
    NONE,
    SOME
  }

  /** How a message names it. */
  public String words() {
    if (name != null) {
      return "setup " + name.value();
    }
    return title.isEmpty() ? "the setup" : "setup \"" + title + "\"";
  }
}
