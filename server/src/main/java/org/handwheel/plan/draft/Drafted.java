package org.handwheel.plan.draft;

import java.util.List;

/** What comes of drafting a plan. */
public sealed interface Drafted {
  /** Plans that check clean, the cheapest first; at least one. */
  record Plans(List<Draft> drafts) implements Drafted {
    public Plans {
      drafts = List.copyOf(drafts);
    }
  }

  /** What the shop, the stock or the plan lacks, in sentences with figures in both units. */
  record Missing(List<String> missing) implements Drafted {
    public Missing {
      missing = List.copyOf(missing);
    }
  }

  /**
   * One plan.
   *
   * @param text the whole file, in its usual form
   * @param added what was put behind the text it began with
   * @param setups what each setup does, in order
   * @param cost what it takes, to compare drafts of one plan by: a setup alone counts 100
   * @param leftOut what of the drawing it does not make, in sentences; empty if it makes all
   */
  record Draft(String text, String added, List<String> setups, int cost, List<String> leftOut) {
    public Draft {
      setups = List.copyOf(setups);
      leftOut = List.copyOf(leftOut);
    }
  }
}
