package org.handwheel.plan.draft;

import java.util.List;
import org.handwheel.plan.draft.Search.Reached;

/** placeholder during construction */
final class Openings {
  Openings(Task task, PlanText text, DraftProgress progress) {}

  record Made(List<SetupDraft> setups, List<String> leftOut, boolean complete) {}

  Made make(Reached reached, Why why) {
    return new Made(List.of(), List.of(), true);
  }

  List<String> missing() {
    return List.of();
  }
}
