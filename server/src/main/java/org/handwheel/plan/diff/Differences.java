package org.handwheel.plan.diff;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.handwheel.plan.diff.Change.Area;
import org.handwheel.plan.diff.Change.Detail;
import org.handwheel.plan.diff.Change.From;
import org.handwheel.plan.diff.Change.Verb;
import org.handwheel.plan.diff.Pairing.Pair;
import org.handwheel.plan.diff.Pairing.Place;
import org.handwheel.syntax.Origin;
import org.jspecify.annotations.Nullable;

/** Differences of statements, and where each stands. */
final class Differences {
  private final ToIntOrigin lineBefore;
  private final ToIntOrigin lineAfter;
  private final SamePlaces places;

  /** Finds the line of a place. */
  interface ToIntOrigin {
    int line(@Nullable Origin origin);
  }

  /** More about a pair than its own facts say. */
  interface More {
    More NOTHING = (before, after) -> List.of();

    List<Detail> of(int before, int after);
  }

  Differences(ToIntOrigin lineBefore, ToIntOrigin lineAfter, SamePlaces places) {
    this.lineBefore = lineBefore;
    this.lineAfter = lineAfter;
    this.places = places;
  }

  /** The facts that differ, in the order of those after. */
  static List<Detail> details(Map<String, Fact> before, Map<String, Fact> after, From from) {
    List<Detail> details = new ArrayList<>();
    after.forEach(
        (label, fact) -> {
          Fact old = before.get(label);
          if (old == null || !old.key().equals(fact.key())) {
            details.add(new Detail(label, old == null ? "" : old.shown(), fact.shown(), from));
          }
        });
    before.forEach(
        (label, fact) -> {
          if (!after.containsKey(label)) {
            details.add(new Detail(label, fact.shown(), "", from));
          }
        });
    return details.stream().map(Differences::telling).toList();
  }

  /** Two lengths that differ by less than is shown are not written alike. */
  private static Detail telling(Detail detail) {
    return detail.before().equals(detail.after())
        ? new Detail(
            detail.label(),
            detail.before(),
            detail.after() + ", by less than is shown",
            detail.from())
        : detail;
  }

  /** The changes from one list of statements to another. */
  List<Change> of(Area area, List<Item> before, List<Item> after, Pairing pairing, More more) {
    List<Change> changes = new ArrayList<>();
    Set<Integer> left = new TreeSet<>(pairing.removed());
    Set<Integer> right = new TreeSet<>(pairing.added());
    for (Pair pair : pairing.pairs()) {
      for (int gone : Set.copyOf(left).stream().sorted().toList()) {
        if (gone < pair.before() && pair.place() == Place.KEPT) {
          changes.add(removed(area, before.get(gone)));
          left.remove(gone);
        }
      }
      for (int come : Set.copyOf(right).stream().sorted().toList()) {
        if (come < pair.after()) {
          changes.add(added(area, after.get(come)));
          right.remove(come);
        }
      }
      pair(changes, area, before.get(pair.before()), after.get(pair.after()), pair, more);
    }
    left.forEach(gone -> changes.add(removed(area, before.get(gone))));
    right.forEach(come -> changes.add(added(area, after.get(come))));
    return changes;
  }

  private void pair(
      List<Change> changes, Area area, Item before, Item after, Pair pair, More more) {
    places.add(before.origin(), after.origin());
    List<Detail> details = new ArrayList<>(details(before.facts(), after.facts(), From.WRITTEN));
    for (Detail detail : more.of(pair.before(), pair.after())) {
      boolean said =
          details.stream()
              .anyMatch(
                  known ->
                      known.before().equals(detail.before())
                          && known.after().equals(detail.after()));
      if (!said) {
        details.add(detail);
      }
    }
    boolean moved = pair.place() == Place.MOVED;
    if (moved || !details.isEmpty()) {
      changes.add(
          new Change(
              details.isEmpty() ? Verb.MOVED : Verb.CHANGED,
              area,
              after.text(),
              details,
              lineBefore.line(before.origin()),
              lineAfter.line(after.origin())));
    }
  }

  private Change removed(Area area, Item item) {
    return new Change(
        Verb.REMOVED, area, subject(item), List.of(), lineBefore.line(item.origin()), 0);
  }

  private Change added(Area area, Item item) {
    return new Change(Verb.ADDED, area, subject(item), List.of(), 0, lineAfter.line(item.origin()));
  }

  private static String subject(Item item) {
    return item.text().isEmpty() ? item.name() : item.text();
  }

  /** What follows from what is written, if it is different. */
  static List<Change> worked(Area area, String subject, Fact one, Fact other) {
    return one.key().equals(other.key())
        ? List.of()
        : List.of(
            new Change(
                Verb.CHANGED,
                area,
                subject,
                List.of(new Detail("", one.shown(), other.shown(), From.WORKED_OUT)),
                0,
                0));
  }
}
