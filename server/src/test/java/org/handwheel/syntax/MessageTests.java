package org.handwheel.syntax;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.handwheel.grammar.HandwheelLexer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Broken lines and the one message that each gives. */
class MessageTests {
  /** What the parser generator would say. */
  private static final Pattern INNER_WORDS =
      Pattern.compile("<EOF>|extraneous|mismatched|no viable|missing \\S+ at|null|^$|\\.$");

  private static final Set<String> TOKEN_NAMES = tokenNames();

  /**
   * A broken line.
   *
   * @param section the header before it, or nothing
   * @param fixed the line after its fix, empty if it has none
   */
  record Row(String section, String line, int column, int length, String message, String fixed) {
    static Row of(String row) {
      String[] cells = row.split("\t", -1);
      return new Row(
          cells[0],
          cells[1],
          Integer.parseInt(cells[2]),
          Integer.parseInt(cells[3]),
          cells[4],
          cells[5]);
    }

    String text(String ofLine) {
      return section.isEmpty() ? ofLine + "\n" : section + "\n" + ofLine + "\n";
    }
  }

  static List<Row> rows() throws IOException {
    try (InputStream table = MessageTests.class.getResourceAsStream("messages.tsv")) {
      String text =
          new String(Objects.requireNonNull(table).readAllBytes(), StandardCharsets.UTF_8);
      return text.lines().filter(line -> !line.startsWith("# ")).map(Row::of).toList();
    }
  }

  @ParameterizedTest
  @MethodSource("rows")
  void aBrokenLineGivesOneMessage(Row row) {
    SyntaxTree tree = SyntaxTree.parse("x.plan", row.text(row.line()));
    List<Finding> problems = problems(tree);
    assertThat(problems).extracting(Finding::message).containsExactly(row.message());
    Finding problem = problems.get(0);
    assertThat(problem.rule()).isEqualTo("syntax");
    assertThat(problem.severity()).isEqualTo(Severity.ERROR);
    assertThat(tree.line(problem.origin())).isEqualTo(row.section().isEmpty() ? 0 : 1);
    int start = tree.start(problem.origin());
    assertThat(tree.source().columnAt(start)).isEqualTo(row.column());
    assertThat(tree.end(problem.origin()) - start).isEqualTo(row.length());
    assertPlain(row.message());
    assertNoTokenName(row.message());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void aFixAppliesAndTheLineThenParses(Row row) {
    String text = row.text(row.line());
    SyntaxTree tree = SyntaxTree.parse("x.plan", text);
    List<Finding.Fix> fixes = problems(tree).get(0).fixes();
    assertThat(fixes.isEmpty()).isEqualTo(row.fixed().isEmpty());
    for (Finding.Fix fix : fixes) {
      String fixed = apply(tree, fix);
      assertThat(fixed.stripTrailing()).isEqualTo(row.text(row.fixed()).stripTrailing());
      assertThat(problems(SyntaxTree.parse("x.plan", fixed))).isEmpty();
      assertThat(fix.title()).isNotBlank();
    }
  }

  @Test
  void theTableIsLongEnough() throws IOException {
    assertThat(rows()).hasSizeGreaterThanOrEqualTo(150);
    assertThat(rows().stream().filter(row -> !row.fixed().isEmpty())).hasSizeGreaterThan(30);
  }

  /** Every fix the parser offers on any one-word slip of an example mends its line. */
  @Test
  void everyFixOnAMutantApplies() {
    Mutants mutants = new Mutants(7);
    List<String> texts = List.copyOf(Examples.files().values());
    int fixes = 0;
    for (int i = 0; i < 4000; i++) {
      String text = mutants.anywhere(texts.get(mutants.below(texts.size())));
      SyntaxTree tree = SyntaxTree.parse("x.plan", text);
      int before = problems(tree).size();
      for (Finding problem : problems(tree)) {
        for (Finding.Fix fix : problem.fixes()) {
          fixes++;
          int after = problems(SyntaxTree.parse("x.plan", apply(tree, fix))).size();
          assertThat(after).as("%s\n%s", fix, text).isLessThanOrEqualTo(before);
        }
      }
    }
    assertThat(fixes).isGreaterThan(200);
  }

  static List<Finding> problems(SyntaxTree tree) {
    return tree.sections().stream().flatMap(section -> section.problems().stream()).toList();
  }

  static String apply(SyntaxTree tree, Finding.Fix fix) {
    StringBuilder text = new StringBuilder(tree.source().text());
    List<Finding.Edit> edits = new ArrayList<>(fix.edits());
    edits.sort(Comparator.comparingInt((Finding.Edit e) -> tree.start(e.origin())).reversed());
    for (Finding.Edit edit : edits) {
      text.replace(tree.start(edit.origin()), tree.end(edit.origin()), edit.text());
    }
    return text.toString();
  }

  /** A message without words of the program's inside. */
  static void assertPlain(String message) {
    if (INNER_WORDS.matcher(message).find()) {
      fail(message);
    }
  }

  private static void assertNoTokenName(String message) {
    String own = message.replaceAll("`[^`]*`", "").replaceAll("\\([^)]*\\)", "");
    Stream.of(own.split("[^A-Za-z_]+"))
        .forEach(word -> assertThat(TOKEN_NAMES).as(message).doesNotContain(word));
  }

  private static Set<String> tokenNames() {
    Set<String> names = new TreeSet<>();
    for (int type = 1; type <= HandwheelLexer.VOCABULARY.getMaxTokenType(); type++) {
      String name = HandwheelLexer.VOCABULARY.getSymbolicName(type);
      if (name != null) {
        names.add(name);
      }
    }
    return names;
  }
}
