package org.handwheel.plan.draft;

/** Told of each way to hold the work that is tried; may throw to stop the search. */
@FunctionalInterface
public interface DraftProgress {
  /** Tells nobody. */
  DraftProgress NONE = count -> {};

  /**
   * Called before each try.
   *
   * @param count how many were tried, this one included
   */
  void tried(int count);
}
