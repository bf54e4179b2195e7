package org.handwheel.plan.draft;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.handwheel.model.Face;

/** Collects what stood in the way of making a face, each reason once, in the order found. */
final class Why {
  private final Map<String, Integer> reasons = new LinkedHashMap<>();
  private final String about;

  private Why(String about) {
    this.about = about;
  }

  static Why of(Face face) {
    return new Why("the " + face.word());
  }

  static Why of(String thing) {
    return new Why(thing);
  }

  void add(String reason) {
    reasons.merge(reason, 1, Integer::sum);
  }

  void addAll(Why other) {
    other.reasons.keySet().forEach(this::add);
  }

  List<String> reasons() {
    return List.copyOf(reasons.keySet());
  }

  boolean isEmpty() {
    return reasons.isEmpty();
  }

  /** The reasons with what they are about: "for the top: ...". */
  List<String> sentences() {
    return reasons.keySet().stream().map(reason -> about + ": " + reason).toList();
  }
}
