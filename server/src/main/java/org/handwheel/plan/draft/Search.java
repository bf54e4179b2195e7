package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.TreeSet;
import org.handwheel.model.Face;
import org.handwheel.plan.draft.Holds.State;
import org.handwheel.rules.Checked;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.Severity;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/**
 * The search for a sequence of setups: best first, by what the setups cost so far and what the
 * faces left will cost at the least. A setup is checked by the engine and all rules when its turn
 * comes, not before; most never do.
 */
final class Search {
  /** So many checks at most: some seconds, and far more than any block needs. */
  private static final int MOST_CHECKS = 300;

  /** So many sequences may come to their end and not pass the check of the whole. */
  private static final int MOST_UNFINISHED = 8;

  /**
   * What a face costs, usually: a setup, a few passes and some trouble with the hold. Higher than
   * the least, so that the search goes for a whole plan first.
   */
  private static final int LEAST = Holds.SETUP + 24;

  /** Rules that speak about the plan's end; before it they prove nothing. */
  private static final Set<String> AT_THE_END =
      Set.of(
          "short-of-size",
          "tolerance-not-measurable",
          "face-never-squared",
          "not-flat",
          "not-parallel");

  private final Task task;
  private final PlanText base;
  private final Holds holds;
  private final Ends ends;
  private final Demands demands;
  private final DraftProgress progress;
  private final Map<Face, Why> reasons = new EnumMap<>(Face.class);
  private int checks;
  private int deepest = -1;
  private @Nullable List<String> bestFailure;

  Search(Task task, PlanText base, DraftProgress progress) {
    this.task = task;
    this.base = base;
    this.holds = new Holds(task);
    this.ends = new Ends(task);
    this.demands = new Demands(task);
    this.progress = progress;
  }

  /**
   * A sequence of setups.
   *
   * @param last the setup added last, not yet checked; nothing at the start
   * @param others what to try instead if that is not sound
   * @param so the cost so far
   */
  private record Node(
      @Nullable Node parent,
      @Nullable SetupDraft last,
      List<SetupDraft> others,
      Reached from,
      int so,
      int total,
      int order) {
    int depth() {
      return parent == null ? 0 : parent.depth() + 1;
    }
  }

  /** A state that was reached and checked. */
  record Reached(
      Checked checked,
      List<SetupDraft> setups,
      Set<Face> left,
      @Nullable String cutter,
      Set<String> trued,
      int cost) {
    Workpiece work() {
      return checked.run() == null ? throwNoRun() : checked.run().end();
    }

    private static Workpiece throwNoRun() {
      throw new IllegalStateException("a plan that was worked through has a run");
    }

    State state() {
      return new State(work(), left, cutter, trued);
    }
  }

  /** Up to so many plans, the cheapest first. */
  List<Drafted.Draft> plans(int most, Completion completion, Why finishing) {
    List<Drafted.Draft> drafts = new ArrayList<>();
    Set<String> orders = new HashSet<>();
    PriorityQueue<Node> open =
        new PriorityQueue<>(
            Comparator.comparingInt(Node::total)
                .thenComparing(Comparator.comparingInt(Node::depth).reversed())
                .thenComparingInt(Node::order));
    Set<String> seen = new HashSet<>();
    Reached start = new Reached(base.check(List.of()), List.of(), task.toCut(), null, Set.of(), 0);
    int order = 0;
    int unfinished = 0;
    if (start.checked().run() == null) {
      return drafts;
    }
    open.add(new Node(null, null, List.of(), start, 0, LEAST * start.left().size(), order++));
    while (!open.isEmpty() && drafts.size() < most && checks < MOST_CHECKS) {
      Node node = open.remove();
      Optional<Reached> reached = reach(node);
      if (reached.isEmpty()) {
        if (!node.others().isEmpty()) {
          open.add(node(node.parent(), node.others(), node.from(), order++));
        }
        continue;
      }
      Reached now = reached.get();
      int dearer = now.cost() + LEAST * now.left().size();
      if (dearer > node.total() && node.last() != null) {
        // What the engine found makes it dearer than it seemed: others may come first.
        if (!open.isEmpty() && open.peek().total() < dearer) {
          open.add(new Node(node, null, List.of(), now, now.cost(), dearer, order++));
          continue;
        }
      }
      // One plan wants each state once, in the cheapest way; several differ in the order of faces.
      String key = most == 1 ? key(now) : key(now) + order(now);
      if (!seen.add(key)) {
        continue;
      }
      if (now.left().isEmpty()) {
        Optional<Drafted.Draft> draft = completion.finish(now, finishing);
        draft.filter(one -> orders.add(order(now))).ifPresent(drafts::add);
        if (completion.isHopeless() || (draft.isEmpty() && ++unfinished >= MOST_UNFINISHED)) {
          break;
        }
        continue;
      }
      for (List<SetupDraft> way : ways(now)) {
        open.add(node(node, way, now, order++));
      }
    }
    drafts.sort(Comparator.comparingInt(Drafted.Draft::cost));
    return drafts;
  }

  /** The faces in their order, and whether the end or the side of the cutter makes them. */
  private static String order(Reached now) {
    StringBuilder order = new StringBuilder();
    for (SetupDraft setup : now.setups()) {
      order.append(' ').append(setup.way(), 0, setup.way().indexOf(' '));
      order.append(' ').append(setup.face());
    }
    return order.toString();
  }

  /** A node for the first of several drafts of one way; the others wait in case it is not sound. */
  private static Node node(@Nullable Node parent, List<SetupDraft> way, Reached from, int order) {
    SetupDraft first = way.get(0);
    int cost = from.cost() + first.cost();
    return new Node(
        parent,
        first,
        way.subList(1, way.size()),
        from,
        cost,
        cost + LEAST * (from.left().size() - 1),
        order);
  }

  /** What may come next: for each way to hold and cut a face its drafts, the cheapest first. */
  private List<List<SetupDraft>> ways(Reached now) {
    List<SetupDraft> drafts = new ArrayList<>();
    boolean record = now.setups().size() > deepest;
    if (record) {
      deepest = now.setups().size();
      reasons.clear();
      bestFailure = null;
    }
    for (Face face : task.byRank()) {
      if (!now.left().contains(face)) {
        continue;
      }
      Why why = Why.of(face);
      State state = now.state();
      List<SetupDraft> ways = new ArrayList<>(holds.endCuts(state, face, why));
      holds
          .cut(state, face, Why.of(face))
          .ifPresent(cut -> ways.addAll(ends.sideCuts(state, face, cut, why)));
      if (record && ways.isEmpty()) {
        reasons.put(face, why);
      }
      drafts.addAll(ways);
    }
    Map<String, List<SetupDraft>> byWay = new LinkedHashMap<>();
    drafts.forEach(
        draft -> byWay.computeIfAbsent(draft.way(), way -> new ArrayList<>()).add(draft));
    byWay.values().forEach(way -> way.sort(Comparator.comparingInt(SetupDraft::cost)));
    return List.copyOf(byWay.values());
  }

  /** The state after a node's last setup, if the engine and the rules have nothing against it. */
  private Optional<Reached> reach(Node node) {
    SetupDraft last = node.last();
    if (last == null) {
      return Optional.of(node.from());
    }
    Reached from = node.from();
    List<SetupDraft> setups = new ArrayList<>(from.setups());
    setups.add(last);
    checks++;
    progress.tried(checks);
    Checked checked = base.check(setups, from.checked());
    List<Finding> against =
        checked.findings().stream().filter(finding -> isAgainst(checked, finding)).toList();
    if (!against.isEmpty() || checked.run() == null) {
      failed(setups.size(), against);
      return Optional.empty();
    }
    Set<Face> left = EnumSet.noneOf(Face.class);
    left.addAll(from.left());
    if (last.face() != null) {
      left.remove(last.face());
    }
    Set<String> trued = new TreeSet<>(from.trued());
    if (last.trued() != null) {
      trued.add(last.trued());
    }
    String cutter = last.cutter() == null ? from.cutter() : last.cutter();
    Optional<Integer> missing = demands.missing(checked.run().end(), left, last.face(), reasons);
    return missing.map(
        more -> new Reached(checked, List.copyOf(setups), left, cutter, trued, node.so() + more));
  }

  private void failed(int depth, List<Finding> against) {
    if (bestFailure == null || depth > deepest + 1) {
      Set<String> messages = new LinkedHashSet<>();
      against.forEach(finding -> messages.add(finding.message()));
      bestFailure = List.copyOf(messages);
    }
  }

  static boolean isAgainst(Checked checked, Finding finding) {
    return (finding.severity() == Severity.ERROR || finding.severity() == Severity.WARNING)
        && finding.origin().section().kind() == SectionKind.SETUP
        && checked.tree().contains(finding.origin())
        && !AT_THE_END.contains(finding.rule());
  }

  private String key(Reached now) {
    StringBuilder key = new StringBuilder();
    for (Face face : Face.all()) {
      key.append(now.left().contains(face) ? '-' : '+');
    }
    Workpiece work = now.work();
    for (Face a : Face.all()) {
      for (Face b : Face.all()) {
        if (a.compareTo(b) < 0) {
          key.append(work.relation(a, b) == null ? '.' : 'r');
        }
      }
    }
    return key.append(now.cutter()).append(now.trued()).toString();
  }

  int checks() {
    return checks;
  }

  /** Why no sequence came to its end: what stopped the one that came furthest. */
  List<String> failure() {
    List<String> sentences = new ArrayList<>();
    reasons.values().forEach(why -> sentences.addAll(why.sentences()));
    if (sentences.isEmpty() && bestFailure != null) {
      sentences.addAll(bestFailure);
    }
    if (sentences.isEmpty()) {
      sentences.add("none of the " + checks + " ways tried to hold and cut it passes the check");
    }
    return sentences;
  }
}
