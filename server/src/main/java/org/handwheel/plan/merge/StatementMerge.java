package org.handwheel.plan.merge;

import com.github.difflib.DiffUtils;
import com.github.difflib.patch.AbstractDelta;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.syntax.SyntaxTree;

/**
 * Merges two changes of one text by statement. It gives a result only where that is certain:
 *
 * <ul>
 *   <li>changes of other statements stay apart, also on neighbouring lines, if each puts as many
 *       statements in the place of those before;
 *   <li>a statement that one side lays out anew and the other changes is as the other has it;
 *   <li>what both sides say alike is taken once, as the first lays it out.
 * </ul>
 *
 * Whatever else two sides do to one place is for a person to decide.
 */
public final class StatementMerge {
  private final Statements base;
  private final Statements ours;
  private final Statements theirs;
  private final StringBuilder merged = new StringBuilder();

  /** A run of statements before, {@code from..to}, and what it has become on one side. */
  private record Hunk(int from, int to, int otherFrom, int otherTo) {
    /** Behind the end of any text. */
    static final Hunk NO_MORE = new Hunk(Integer.MAX_VALUE, Integer.MAX_VALUE, 0, 0);

    /** Statement for statement. */
    boolean replaces() {
      return to - from == otherTo - otherFrom;
    }
  }

  private StatementMerge(Statements base, Statements ours, Statements theirs) {
    this.base = base;
    this.ours = ours;
    this.theirs = theirs;
  }

  /**
   * The merged text, or nothing if both sides change the same place, or the result could be read
   * less well than the worse of the two.
   */
  public static Optional<String> of(String base, String ours, String theirs) {
    return new StatementMerge(Statements.of(base), Statements.of(ours), Statements.of(theirs))
        .merge()
        .filter(text -> problems(text) <= Math.max(problems(ours), problems(theirs)));
  }

  private static int problems(String text) {
    return SyntaxTree.parse("x.plan", text).sections().stream()
        .mapToInt(section -> section.problems().size())
        .sum();
  }

  private Optional<String> merge() {
    List<Hunk> left = hunks(base.keys(), ours.keys());
    List<Hunk> right = hunks(base.keys(), theirs.keys());
    int at = 0;
    int inOurs = 0;
    int inTheirs = 0;
    int i = 0;
    int j = 0;
    while (i < left.size() || j < right.size()) {
      Hunk one = i < left.size() ? left.get(i) : Hunk.NO_MORE;
      Hunk other = j < right.size() ? right.get(j) : Hunk.NO_MORE;
      if (!areApart(one, other)) {
        if (!saysTheSame(one, other)) {
          return Optional.empty();
        }
        stable(at, one.from, inOurs, inTheirs);
        append(ours, one.otherFrom, one.otherTo);
        i++;
        j++;
        at = one.to;
        inOurs = one.otherTo;
        inTheirs = other.otherTo;
      } else if (one.from < other.from) {
        stable(at, one.from, inOurs, inTheirs);
        inTheirs += one.to - at;
        append(ours, one.otherFrom, one.otherTo);
        i++;
        at = one.to;
        inOurs = one.otherTo;
      } else {
        stable(at, other.from, inOurs, inTheirs);
        inOurs += other.to - at;
        append(theirs, other.otherFrom, other.otherTo);
        j++;
        at = other.to;
        inTheirs = other.otherTo;
      }
    }
    stable(at, base.size(), inOurs, inTheirs);
    return Optional.of(merged.toString());
  }

  private static List<Hunk> hunks(List<String> before, List<String> after) {
    List<Hunk> hunks = new ArrayList<>();
    for (AbstractDelta<String> delta : DiffUtils.diff(before, after).getDeltas()) {
      int from = delta.getSource().getPosition();
      int otherFrom = delta.getTarget().getPosition();
      hunks.add(
          new Hunk(
              from,
              from + delta.getSource().size(),
              otherFrom,
              otherFrom + delta.getTarget().size()));
    }
    return hunks;
  }

  /** At least one statement lies between, or they touch and each keeps the number. */
  private static boolean areApart(Hunk one, Hunk other) {
    int gap = one.from <= other.from ? other.from - one.to : one.from - other.to;
    return gap > 0 || (gap == 0 && one.replaces() && other.replaces());
  }

  private boolean saysTheSame(Hunk one, Hunk other) {
    return one.from == other.from
        && one.to == other.to
        && ours.keys()
            .subList(one.otherFrom, one.otherTo)
            .equals(theirs.keys().subList(other.otherFrom, other.otherTo));
  }

  /** What says the same on all sides, as the side has it that laid it out anew. */
  private void stable(int from, int to, int inOurs, int inTheirs) {
    for (int k = from; k < to; k++) {
      String mine = ours.texts().get(inOurs + k - from);
      boolean kept = mine.equals(base.texts().get(k));
      append(kept ? theirs.texts().get(inTheirs + k - from) : mine);
    }
  }

  private void append(Statements side, int from, int to) {
    side.texts().subList(from, to).forEach(this::append);
  }

  private void append(String statement) {
    int length = merged.length();
    boolean open =
        length > 0 && merged.charAt(length - 1) != '\n' && merged.charAt(length - 1) != '\r';
    merged.append(open ? "\n" : "").append(statement);
  }
}
