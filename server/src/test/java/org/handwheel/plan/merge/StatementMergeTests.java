package org.handwheel.plan.merge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import org.junit.jupiter.api.Test;

/** Merging by statement: what holds for all texts, and what it is for. */
final class StatementMergeTests {
  private static final String HEAD = "plan \"Gland\"\n  units mm\nsetup one \"Top\"\n";

  /** What one side does with one line. */
  enum Act {
    KEEP,
    REPLACE,
    DELETE,
    INSERT,
    LAY_OUT,
    /** The same change on whichever side does it. */
    AGREE
  }

  /** A text before and what two sides do with each of its lines. */
  record Case(int lines, List<Act> ours, List<Act> theirs) {
    String base() {
      StringBuilder text = new StringBuilder(HEAD);
      for (int i = 0; i < lines; i++) {
        text.append(line("base" + i));
      }
      return text.toString();
    }

    String left() {
      return side("ours", ours);
    }

    String right() {
      return side("theirs", theirs);
    }

    private String side(String name, List<Act> acts) {
      StringBuilder text = new StringBuilder(HEAD);
      for (int i = 0; i < lines; i++) {
        switch (acts.get(i)) {
          case KEEP -> text.append(line("base" + i));
          case REPLACE -> text.append(line(name + i));
          case DELETE -> text.append("");
          case INSERT -> text.append(line("base" + i)).append(line(name + i));
          case LAY_OUT -> text.append("      ").append(line("base" + i).replace(" \"", "    \""));
          case AGREE -> text.append(line("both" + i));
        }
      }
      return text.toString();
    }

    private static String line(String words) {
      return "  note \"" + words + "\"\n";
    }
  }

  @Provide
  Arbitrary<Case> cases() {
    Arbitrary<Act> act =
        Arbitraries.frequency(
            Tuple.of(8, Act.KEEP),
            Tuple.of(1, Act.REPLACE),
            Tuple.of(1, Act.DELETE),
            Tuple.of(1, Act.INSERT),
            Tuple.of(1, Act.LAY_OUT),
            Tuple.of(1, Act.AGREE));
    return Arbitraries.integers()
        .between(0, 14)
        .flatMap(
            lines ->
                Combinators.combine(act.list().ofSize(lines), act.list().ofSize(lines))
                    .as((one, other) -> new Case(lines, one, other)));
  }

  /** Few different lines, so that many are alike; some lines are joined, some ends are missing. */
  @Provide
  Arbitrary<String> texts() {
    return Arbitraries.of(
            "note \"a\"\n",
            "  note   \"a\"\n",
            "note \"b\"\r\n",
            "\n",
            "# c\n",
            "note \\\n \"d\"\n")
        .list()
        .ofMaxSize(8)
        .map(lines -> String.join("", lines))
        .flatMap(text -> Arbitraries.of(text, text.stripTrailing(), text + "note \\"));
  }

  private static Set<String> keys(String text) {
    return new HashSet<>(Statements.of(text).keys());
  }

  // ---- What holds for all

  @Property
  void putTogetherStatementsAreTheText(@ForAll("texts") String text) {
    assertThat(String.join("", Statements.of(text).texts())).isEqualTo(text);
  }

  @Property
  void whatBothSaySurvivesAndOneSidesChangeIsTaken(
      @ForAll("texts") String base, @ForAll("texts") String changed) {
    assertThat(StatementMerge.of(base, changed, changed)).contains(changed);
    assertThat(StatementMerge.of(base, base, changed)).contains(changed);
    assertThat(StatementMerge.of(base, changed, base)).contains(changed);
  }

  /** No line is lost and none comes back, and each side's order is kept. */
  @Property(tries = 2000)
  void noLineIsLost(@ForAll("cases") Case one) {
    Optional<String> merged = StatementMerge.of(one.base(), one.left(), one.right());
    if (merged.isEmpty()) {
      return;
    }
    Set<String> base = keys(one.base());
    Set<String> left = keys(one.left());
    Set<String> right = keys(one.right());
    Set<String> wanted = new HashSet<>();
    for (Set<String> side : List.of(left, right)) {
      side.stream()
          .filter(key -> !base.contains(key) || (left.contains(key) && right.contains(key)))
          .forEach(wanted::add);
    }
    List<String> result = Statements.of(merged.get()).keys();
    assertThat(result).doesNotHaveDuplicates().containsExactlyInAnyOrderElementsOf(wanted);
    for (String side : List.of(one.left(), one.right())) {
      List<String> kept = new ArrayList<>(Statements.of(side).keys());
      kept.retainAll(result);
      List<String> found = new ArrayList<>(result);
      found.retainAll(kept);
      assertThat(found).isEqualTo(kept);
    }
  }

  /** The same with lines that are alike: counted. */
  @Property(tries = 2000)
  void noneOfSeveralEqualLinesIsLost(
      @ForAll("texts") String base, @ForAll("texts") String left, @ForAll("texts") String right) {
    Optional<String> merged = StatementMerge.of(base, left, right);
    if (merged.isEmpty()) {
      return;
    }
    Map<String, Integer> result = counts(merged.get());
    Map<String, Integer> before = counts(base);
    Set<String> all = keys(base + "\n" + left + "\n" + right);
    for (String key : all) {
      int was = before.getOrDefault(key, 0);
      int one = counts(left).getOrDefault(key, 0) - was;
      int other = counts(right).getOrDefault(key, 0) - was;
      int least = was + (one >= 0 && other >= 0 ? Math.max(one, other) : one + other);
      assertThat(result.getOrDefault(key, 0)).as(key).isGreaterThanOrEqualTo(least);
    }
  }

  private static Map<String, Integer> counts(String text) {
    Map<String, Integer> counts = new HashMap<>();
    Statements.of(text).keys().forEach(key -> counts.merge(key, 1, Integer::sum));
    return counts;
  }

  @Property(tries = 1000)
  void itSaysTheSameTheOtherWayRound(@ForAll("cases") Case one) {
    Optional<List<String>> there =
        StatementMerge.of(one.base(), one.left(), one.right())
            .map(text -> Statements.of(text).keys());
    Optional<List<String>> back =
        StatementMerge.of(one.base(), one.right(), one.left())
            .map(text -> Statements.of(text).keys());
    assertThat(there).isEqualTo(back);
  }

  /** Changes with an unchanged line between them, or line for line beside each other. */
  @Property(tries = 2000)
  void changesOfOtherPlacesAreBothThere(@ForAll("cases") Case one) {
    List<Act> ours = new ArrayList<>(one.ours());
    List<Act> theirs = new ArrayList<>(one.theirs());
    for (int i = 0; i < one.lines(); i++) {
      boolean counts = isLineForLine(ours.get(i)) && isLineForLine(theirs.get(i));
      boolean both = ours.get(i) != Act.KEEP && theirs.get(i) != Act.KEEP;
      if (both || !counts) {
        theirs.set(i, Act.KEEP);
        ours.set(i, counts ? ours.get(i) : Act.KEEP);
      }
    }
    Case apart = new Case(one.lines(), ours, theirs);
    Optional<String> merged = StatementMerge.of(apart.base(), apart.left(), apart.right());
    assertThat(merged).isPresent();
    Set<String> result = keys(merged.get());
    for (int i = 0; i < one.lines(); i++) {
      if (ours.get(i) == Act.REPLACE) {
        assertThat(result).contains("note \"ours" + i + "\"");
      }
      if (theirs.get(i) == Act.REPLACE) {
        assertThat(result).contains("note \"theirs" + i + "\"");
      }
    }
  }

  private static boolean isLineForLine(Act act) {
    return act == Act.KEEP || act == Act.REPLACE || act == Act.LAY_OUT;
  }

  // ---- What it is for

  private static final String BASE = HEAD + "  rough top to 20\n  finish top to 19\n  lock z\n";

  @Test
  void neighbouringLinesAreChangedApart() {
    assertThat(
            StatementMerge.of(
                BASE,
                BASE.replace("rough top to 20", "rough top to 20.5"),
                BASE.replace("finish top to 19", "finish top to 19.1")))
        .contains(HEAD + "  rough top to 20.5\n  finish top to 19.1\n  lock z\n");
  }

  @Test
  void aLineLaidOutAnewTakesTheOthersChange() {
    String laidOut = BASE.replaceAll("(?m)^  (rough|finish|lock)", "    $1 ");
    assertThat(StatementMerge.of(BASE, laidOut, BASE.replace("to 19", "to 19.1")))
        .contains(
            laidOut.replace("finish  top to 19", "x").replace("    x", "  finish top to 19.1"));
  }

  @Test
  void whatBothChangeIsForAPerson() {
    assertThat(
            StatementMerge.of(
                BASE, BASE.replace("to 19", "to 19.1"), BASE.replace("to 19", "to 18")))
        .isEmpty();
    assertThat(StatementMerge.of(BASE, BASE + "  unlock z\n", BASE + "  lock x\n")).isEmpty();
    assertThat(
            StatementMerge.of(
                BASE, BASE.replace("  lock z\n", ""), BASE.replace("lock z", "lock x")))
        .isEmpty();
  }

  @Test
  void aTitlesBlanksAreItsOwn() {
    String twice = BASE.replace("\"Top\"", "\"Top  \"");
    String other = BASE.replace("\"Top\"", "\"Top \"");
    assertThat(StatementMerge.of(BASE, twice, other)).isEmpty();
  }
}
