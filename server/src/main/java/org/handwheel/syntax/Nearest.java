package org.handwheel.syntax;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** "Did you mean": the word of a list that a misspelt one most likely stands for. */
public final class Nearest {
  private Nearest() {}

  /**
   * The nearest word, if it is near enough: a third of the letters, at most three, may be wrong,
   * and of two letters one.
   */
  public static Optional<String> to(String word, Collection<String> candidates) {
    String wanted = word.toLowerCase(Locale.ROOT);
    return candidates.stream()
        .filter(candidate -> isNear(word, candidate))
        .min(
            Comparator.<String>comparingInt(
                    candidate -> distance(wanted, candidate.toLowerCase(Locale.ROOT)))
                .thenComparing(Comparator.naturalOrder()));
  }

  /** Whether a word may stand for another misspelt. */
  static boolean isNear(String word, String candidate) {
    int allowed = word.length() == 1 ? 0 : Math.max(1, Math.min(3, word.length() / 3));
    return Math.abs(word.length() - candidate.length()) <= allowed
        && distance(word.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT)) <= allowed;
  }

  /** Insertions, deletions, replacements and swaps of neighbours (optimal string alignment). */
  static int distance(String a, String b) {
    int[][] cost = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      cost[i][0] = i;
    }
    for (int j = 0; j <= b.length(); j++) {
      cost[0][j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      for (int j = 1; j <= b.length(); j++) {
        int replace = cost[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        cost[i][j] = Math.min(replace, Math.min(cost[i - 1][j], cost[i][j - 1]) + 1);
        boolean swapped =
            i > 1
                && j > 1
                && a.charAt(i - 1) == b.charAt(j - 2)
                && a.charAt(i - 2) == b.charAt(j - 1);
        if (swapped) {
          cost[i][j] = Math.min(cost[i][j], cost[i - 2][j - 2] + 1);
        }
      }
    }
    return cost[a.length()][b.length()];
  }
}
