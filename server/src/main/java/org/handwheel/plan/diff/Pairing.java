package org.handwheel.plan.diff;

import com.github.difflib.DiffUtils;
import com.github.difflib.patch.AbstractDelta;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Which statement of one list is which of another.
 *
 * @param pairs those that are in both, in the order of the second list
 * @param removed indices in the first list
 * @param added indices in the second list
 */
record Pairing(List<Pair> pairs, List<Integer> removed, List<Integer> added) {
  /** How much two statements have to have in common to be one that was changed. */
  private static final double LIKE_ENOUGH = 0.5;

  Pairing {
    pairs = List.copyOf(pairs);
    removed = List.copyOf(removed);
    added = List.copyOf(added);
  }

  /** Two indices; {@code moved} if the statement's place among the others is another. */
  record Pair(int before, int after, Place place) {}

  /** Whether a statement stands where it stood. */
  enum Place {
    KEPT,
    MOVED
  }

  private record Candidate(int before, int after, double likeness) {}

  /** Statements that are done one after the other: equal ones keep their order where they can. */
  static Pairing inOrder(List<Item> before, List<Item> after) {
    List<Pair> pairs = new ArrayList<>();
    Set<Integer> left = indices(before.size());
    Set<Integer> right = indices(after.size());
    List<String> keys = before.stream().map(Item::key).toList();
    List<String> otherKeys = after.stream().map(Item::key).toList();
    int at = 0;
    int otherAt = 0;
    for (AbstractDelta<String> delta : DiffUtils.diff(keys, otherKeys).getDeltas()) {
      while (at < delta.getSource().getPosition()) {
        pair(pairs, left, right, at++, otherAt++, Place.KEPT);
      }
      at += delta.getSource().size();
      otherAt += delta.getTarget().size();
    }
    while (at < before.size() && otherAt < after.size()) {
      pair(pairs, left, right, at++, otherAt++, Place.KEPT);
    }
    pairEqual(before, after, pairs, left, right);
    return rest(before, after, pairs, left, right);
  }

  /** Things whose order means nothing: by name, then by what they say. */
  static Pairing anyOrder(List<Item> before, List<Item> after) {
    List<Pair> pairs = new ArrayList<>();
    Set<Integer> left = indices(before.size());
    Set<Integer> right = indices(after.size());
    for (int i = 0; i < before.size(); i++) {
      for (int j = 0; j < after.size(); j++) {
        Item one = before.get(i);
        Item other = after.get(j);
        if (left.contains(i)
            && right.contains(j)
            && one.type() == other.type()
            && !one.name().isEmpty()
            && one.name().equals(other.name())) {
          pair(pairs, left, right, i, j, Place.KEPT);
        }
      }
    }
    pairEqual(before, after, pairs, left, right);
    Pairing all = rest(before, after, pairs, left, right);
    return new Pairing(
        all.pairs.stream().map(pair -> new Pair(pair.before, pair.after, Place.KEPT)).toList(),
        all.removed,
        all.added);
  }

  private static void pairEqual(
      List<Item> before,
      List<Item> after,
      List<Pair> pairs,
      Set<Integer> left,
      Set<Integer> right) {
    for (int i : List.copyOf(left)) {
      String key = before.get(i).key();
      right.stream()
          .sorted()
          .filter(j -> after.get(j).key().equals(key))
          .findFirst()
          .ifPresent(j -> pair(pairs, left, right, i, j, Place.MOVED));
    }
  }

  /** Pairs what is left by likeness, and what is the only one of its kind on both sides. */
  private static Pairing rest(
      List<Item> before,
      List<Item> after,
      List<Pair> pairs,
      Set<Integer> left,
      Set<Integer> right) {
    List<Candidate> candidates = new ArrayList<>();
    for (int i : left) {
      for (int j : right) {
        double likeness = before.get(i).likeness(after.get(j));
        boolean sole =
            isSole(before, left, before.get(i).type())
                && isSole(after, right, before.get(i).type())
                && before.get(i).type() == after.get(j).type()
                && sameSubject(before.get(i), after.get(j));
        if (likeness >= LIKE_ENOUGH || sole) {
          candidates.add(new Candidate(i, j, likeness));
        }
      }
    }
    candidates.sort(
        Comparator.comparingDouble((Candidate c) -> -c.likeness)
            .thenComparingInt(c -> Math.abs(c.before - c.after))
            .thenComparingInt(Candidate::before)
            .thenComparingInt(Candidate::after));
    for (Candidate candidate : candidates) {
      if (left.contains(candidate.before) && right.contains(candidate.after)) {
        boolean crosses =
            pairs.stream()
                .filter(pair -> pair.place == Place.KEPT)
                .anyMatch(
                    pair -> (pair.before < candidate.before) != (pair.after < candidate.after));
        pair(
            pairs,
            left,
            right,
            candidate.before,
            candidate.after,
            crosses ? Place.MOVED : Place.KEPT);
      }
    }
    pairs.sort(Comparator.comparingInt(Pair::after));
    return new Pairing(pairs, left.stream().sorted().toList(), right.stream().sorted().toList());
  }

  private static boolean isSole(List<Item> items, Set<Integer> open, Class<?> type) {
    return open.stream().filter(i -> items.get(i).type() == type).count() == 1;
  }

  /** The first thing a statement says is what it is about, a face above all. */
  private static boolean sameSubject(Item one, Item other) {
    Fact face = one.facts().get("face");
    Fact otherFace = other.facts().get("face");
    return face == null || otherFace == null || face.key().equals(otherFace.key());
  }

  private static void pair(
      List<Pair> pairs, Set<Integer> left, Set<Integer> right, int i, int j, Place place) {
    pairs.add(new Pair(i, j, place));
    left.remove(i);
    right.remove(j);
  }

  private static Set<Integer> indices(int size) {
    Set<Integer> indices = new HashSet<>();
    for (int i = 0; i < size; i++) {
      indices.add(i);
    }
    return indices;
  }
}
