package org.handwheel.plan.diff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.handwheel.model.Plan;
import org.handwheel.model.Setup;
import org.handwheel.units.LengthUnit;

/**
 * Which setup of one plan is which of another: by name, then by what is done in them.
 *
 * @param before by the index after
 * @param moved indices after of setups that come earlier or later among the others
 */
record SetupPairs(Map<Integer, Integer> before, Set<Integer> moved) {
  /** How much two setups have to have in common to be one that has a new name. */
  private static final double LIKE_ENOUGH = 0.4;

  SetupPairs {
    before = Map.copyOf(before);
    moved = Set.copyOf(moved);
  }

  private record Candidate(int before, int after, double likeness) {}

  static SetupPairs of(Plan before, LengthUnit unitsBefore, Plan after, LengthUnit unitsAfter) {
    Map<Integer, Integer> pairs = new TreeMap<>();
    Set<Integer> open = new HashSet<>();
    for (int i = 0; i < before.setups().size(); i++) {
      open.add(i);
    }
    for (int j = 0; j < after.setups().size(); j++) {
      String name = name(after.setups().get(j));
      for (int i = 0; i < before.setups().size(); i++) {
        boolean same = !name.isEmpty() && name.equals(name(before.setups().get(i)));
        if (same && open.contains(i) && !pairs.containsKey(j)) {
          pairs.put(j, i);
          open.remove(i);
        }
      }
    }
    List<Map<String, Integer>> keysBefore =
        before.setups().stream().map(setup -> keys(setup, unitsBefore)).toList();
    List<Candidate> candidates = new ArrayList<>();
    for (int j = 0; j < after.setups().size(); j++) {
      if (!pairs.containsKey(j)) {
        Map<String, Integer> keys = keys(after.setups().get(j), unitsAfter);
        for (int i : open) {
          double likeness = likeness(keysBefore.get(i), keys);
          if (likeness >= LIKE_ENOUGH) {
            candidates.add(new Candidate(i, j, likeness));
          }
        }
      }
    }
    candidates.sort(
        Comparator.comparingDouble((Candidate c) -> -c.likeness)
            .thenComparingInt(c -> Math.abs(c.before - c.after))
            .thenComparingInt(Candidate::after)
            .thenComparingInt(Candidate::before));
    for (Candidate candidate : candidates) {
      if (open.contains(candidate.before) && !pairs.containsKey(candidate.after)) {
        pairs.put(candidate.after, candidate.before);
        open.remove(candidate.before);
      }
    }
    return new SetupPairs(pairs, moved(pairs));
  }

  private static String name(Setup setup) {
    return setup.name() == null ? "" : setup.name().value().toLowerCase(Locale.ROOT);
  }

  /** What a setup says, each statement with how often it says it. */
  private static Map<String, Integer> keys(Setup setup, LengthUnit units) {
    Map<String, Integer> keys = new HashMap<>();
    if (setup.hold() != null) {
      keys.merge(Item.of(setup.hold(), units).key(), 1, Integer::sum);
    }
    if (!setup.title().isEmpty()) {
      keys.merge("title " + setup.title(), 1, Integer::sum);
    }
    setup.steps().forEach(step -> keys.merge(Item.of((Record) step, units).key(), 1, Integer::sum));
    return keys;
  }

  private static double likeness(Map<String, Integer> one, Map<String, Integer> other) {
    int same = 0;
    int all = 0;
    Set<String> keys = new HashSet<>(one.keySet());
    keys.addAll(other.keySet());
    for (String key : keys) {
      int here = one.getOrDefault(key, 0);
      int there = other.getOrDefault(key, 0);
      same += Math.min(here, there);
      all += Math.max(here, there);
    }
    return all == 0 ? 1 : (double) same / all;
  }

  /** All but the longest run of setups that kept their order. */
  private static Set<Integer> moved(Map<Integer, Integer> pairs) {
    List<Integer> after = new ArrayList<>(new TreeMap<>(pairs).keySet());
    int[] length = new int[after.size()];
    int[] previous = new int[after.size()];
    int best = -1;
    for (int k = 0; k < after.size(); k++) {
      length[k] = 1;
      previous[k] = -1;
      for (int m = 0; m < k; m++) {
        if (before(pairs, after.get(m)) < before(pairs, after.get(k))
            && length[m] + 1 > length[k]) {
          length[k] = length[m] + 1;
          previous[k] = m;
        }
      }
      if (best < 0 || length[k] > length[best]) {
        best = k;
      }
    }
    Set<Integer> moved = new HashSet<>(after);
    for (int k = best; k >= 0; k = previous[k]) {
      moved.remove(after.get(k));
    }
    return moved;
  }

  private static int before(Map<Integer, Integer> pairs, int after) {
    return pairs.getOrDefault(after, -1);
  }

  boolean isPairedBefore(int index) {
    return before.containsValue(index);
  }
}
