package org.handwheel.cli;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.LongSupplier;
import org.handwheel.files.WorkspaceLoader;
import org.handwheel.model.Workspace;
import org.handwheel.model.build.UseLines;
import org.handwheel.plan.diff.FindingChange;
import org.handwheel.plan.diff.PlanComparison;
import org.handwheel.plan.diff.PlanDiff;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;

/**
 * What is different between two sides.
 *
 * @param diffs the files that are different, by path
 * @param compared how many files were compared
 * @param unreadable files that could not be read, and why
 */
record Review(List<PlanDiff> diffs, int compared, Map<String, String> unreadable) {
  /** How much of two texts' lines has to be the same for a file to be one that was renamed. */
  private static final double LIKE_ENOUGH = 0.5;

  Review {
    diffs = List.copyOf(diffs);
    unreadable = new TreeMap<>(unreadable);
  }

  private record Pair(@Nullable String before, @Nullable String after) {}

  private record Candidate(String before, String after, double likeness) {}

  static Review of(FileSet before, FileSet after, LongSupplier nanoClock) {
    Loaded left = Loaded.of(before, nanoClock);
    Loaded right = Loaded.of(after, nanoClock);
    Map<String, String> unreadable = new TreeMap<>(before.unreadable());
    unreadable.putAll(after.unreadable());
    unreadable.putAll(left.unreadable);
    unreadable.putAll(right.unreadable);
    List<PlanDiff> diffs = new ArrayList<>();
    List<Pair> pairs = pairs(before, left, after, right);
    for (Pair pair : pairs) {
      if (left.says(pair.before).equals(right.says(pair.after))) {
        continue;
      }
      Checked one = left.checked(pair.before);
      Checked other = right.checked(pair.after);
      if (one != null || other != null) {
        PlanDiff diff = PlanComparison.of(one, other);
        if (!diff.isEmpty()) {
          diffs.add(diff.named(before.name(pair.before), after.name(pair.after)));
        }
      }
    }
    diffs.sort(Comparator.comparing(diff -> diff.after().isEmpty() ? diff.before() : diff.after()));
    return new Review(diffs, pairs.size(), unreadable);
  }

  long count(FindingChange.Kind kind) {
    return diffs.stream()
        .flatMap(diff -> diff.findings().stream())
        .filter(finding -> finding.kind() == kind)
        .count();
  }

  private static List<Pair> pairs(FileSet before, Loaded left, FileSet after, Loaded right) {
    List<Pair> pairs = new ArrayList<>();
    Set<String> gone = new TreeSet<>();
    Set<String> come = new TreeSet<>(after.files().values());
    before
        .files()
        .forEach(
            (name, path) -> {
              String other = after.files().get(name);
              if (other == null) {
                gone.add(path);
              } else {
                pairs.add(new Pair(path, other));
                come.remove(other);
              }
            });
    List<Candidate> candidates = new ArrayList<>();
    for (String one : gone) {
      for (String other : come) {
        double likeness =
            ending(one).equals(ending(other)) ? likeness(left.text(one), right.text(other)) : 0;
        if (likeness >= LIKE_ENOUGH) {
          candidates.add(new Candidate(one, other, likeness));
        }
      }
    }
    candidates.sort(
        Comparator.comparingDouble((Candidate c) -> -c.likeness)
            .thenComparing(Candidate::before)
            .thenComparing(Candidate::after));
    for (Candidate candidate : candidates) {
      if (gone.contains(candidate.before) && come.contains(candidate.after)) {
        pairs.add(new Pair(candidate.before, candidate.after));
        gone.remove(candidate.before);
        come.remove(candidate.after);
      }
    }
    gone.forEach(path -> pairs.add(new Pair(path, null)));
    come.forEach(path -> pairs.add(new Pair(null, path)));
    return pairs;
  }

  /** The file among some that a text was most likely, if one is like it at all. */
  static @Nullable String likest(Loaded loaded, List<String> paths, String path, String text) {
    String best = null;
    double most = LIKE_ENOUGH;
    for (String candidate : paths) {
      double likeness =
          ending(candidate).equals(ending(path)) ? likeness(loaded.text(candidate), text) : 0;
      if (likeness >= most && (best == null || likeness > most)) {
        best = candidate;
        most = likeness;
      }
    }
    return best;
  }

  private static String ending(String path) {
    return path.substring(path.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }

  private static double likeness(String one, String other) {
    Map<String, Integer> lines = new HashMap<>();
    List<String> left = one.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
    List<String> right = other.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
    left.forEach(line -> lines.merge(line, 1, Integer::sum));
    int same = 0;
    for (String line : right) {
      int count = lines.getOrDefault(line, 0);
      if (count > 0) {
        same++;
        lines.put(line, count - 1);
      }
    }
    int most = Math.max(left.size(), right.size());
    return most == 0 ? 1 : (double) same / most;
  }

  /** All files of one side with what they use; a file is checked when it is asked for. */
  static final class Loaded {
    private final Map<String, Workspace> workspaces = new LinkedHashMap<>();
    private final Map<String, String> unreadable = new TreeMap<>();
    private final Checker checker = new Checker(StandardTables.builtIn());

    static Loaded of(FileSet set, LongSupplier nanoClock) {
      Loaded loaded = new Loaded();
      Map<String, List<String>> byFence = new TreeMap<>();
      set.files()
          .values()
          .forEach(
              path -> byFence.computeIfAbsent(set.fence(path), key -> new ArrayList<>()).add(path));
      byFence.forEach(
          (fence, paths) -> {
            Workspace workspace =
                new WorkspaceLoader(set.within(fence), nanoClock).load(paths, Map.of()).workspace();
            for (String path : paths) {
              loaded.workspaces.put(path, workspace);
              String reason = workspace.unreadable().get(path);
              if (reason != null) {
                loaded.unreadable.put(path, reason);
              }
            }
          });
      return loaded;
    }

    private Workspace workspace(String path) {
      return workspaces.getOrDefault(path, Workspace.of());
    }

    String text(String path) {
      return workspace(path).file(path).map(tree -> tree.source().text()).orElse("");
    }

    /** The text of a file and of all it uses: as long as these are the same, so is all else. */
    List<String> says(@Nullable String path) {
      if (path == null) {
        return List.of();
      }
      List<String> texts = new ArrayList<>();
      Set<String> seen = new HashSet<>();
      Collection<String> waiting = new LinkedHashSet<>(List.of(path));
      while (!waiting.isEmpty()) {
        String next = waiting.iterator().next();
        waiting.remove(next);
        if (seen.add(next)) {
          SyntaxTree tree = workspace(path).file(next).orElse(null);
          texts.add(tree == null ? "(not there)" : tree.source().text());
          if (tree != null) {
            waiting.addAll(UseLines.paths(tree));
          }
        }
      }
      return texts;
    }

    @Nullable Checked checked(@Nullable String path) {
      return path == null || workspace(path).file(path).isEmpty()
          ? null
          : checker.check(workspace(path), path);
    }
  }
}
