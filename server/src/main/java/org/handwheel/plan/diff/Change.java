package org.handwheel.plan.diff;

import java.util.List;

/**
 * One difference.
 *
 * @param verb what happened
 * @param area what it is about
 * @param subject the statement or thing, as it is written now, or was if it is gone
 * @param details what is different about it; empty where the subject says it all
 * @param lineBefore the line it was on, from 1; 0 if there is none
 * @param lineAfter the line it is on, from 1; 0 if there is none
 */
public record Change(
    Verb verb, Area area, String subject, List<Detail> details, int lineBefore, int lineAfter) {
  public Change {
    details = List.copyOf(details);
  }

  /** What happened. */
  public enum Verb {
    ADDED,
    REMOVED,
    CHANGED,
    MOVED
  }

  /** What a change is about. */
  public enum Area {
    PLAN,
    DRAWING,
    STOCK,
    ORDER,
    SETUP,
    HOLD,
    STEP,
    TOOLS,
    TIME,
    SIZE,
    INSPECTION,
    LOG,
    SHOP
  }

  /** Whether a figure is written in the plan or follows from it. */
  public enum From {
    WRITTEN,
    WORKED_OUT
  }

  /**
   * What is different.
   *
   * @param label what of the subject, empty for all of it
   * @param before as it was, empty if it was not there
   * @param after as it is, empty if it is not there
   */
  public record Detail(String label, String before, String after, From from) {}
}
