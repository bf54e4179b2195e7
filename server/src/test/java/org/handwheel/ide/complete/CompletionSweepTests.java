package org.handwheel.ide.complete;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.ide.Fixtures;
import org.handwheel.ide.View;
import org.handwheel.ide.complete.Completion.Proposals;
import org.handwheel.syntax.Expectations;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Proposals everywhere: at each place of each example there is an answer, and what is proposed can
 * be read. Put behind the words before the cursor, a proposal leaves a line that the grammar reads
 * as the beginning of a line: as plain text, and as a snippet with its places filled in. The lines
 * of a snippet before its last are whole.
 */
final class CompletionSweepTests {
  /** What may stand in a place of a snippet that says in words what belongs there. */
  private static final List<String> FILLINGS = List.of("1", "a", "top", "up", "vise", "M6");

  private static final Pattern STOP = Pattern.compile("\\$\\{\\d+:((?:[^\\\\}]|\\\\.)*)}");

  @TestFactory
  Stream<DynamicTest> everyPlaceAnswers() {
    return Fixtures.examples().stream()
        .map(file -> DynamicTest.dynamicTest(Fixtures.path(file), () -> sweep(file)));
  }

  private static void sweep(Path file) {
    String text = Fixtures.read(file);
    View view = Fixtures.view(Fixtures.path(file), text);
    Set<String> tried = new HashSet<>();
    Set<String> wrong = new TreeSet<>();
    for (int offset = 0; offset <= text.length(); offset++) {
      Proposals proposals = Completion.at(view, offset);
      assertThat(offset).isBetween(proposals.start(), proposals.end());
      Slot slot = Slot.at(view.tree(), offset);
      if (slot.where() == Slot.Where.CODE && slot.start() == offset) {
        int joint = Math.max(proposals.joint(), slot.lineStart());
        String before = text.substring(slot.lineStart(), joint);
        String gap = text.substring(joint, offset);
        for (Proposal proposal : proposals.proposals()) {
          String written = before + proposal.joint() + gap;
          // One number stands for all.
          if (tried.add((written + proposal.snippet()).replaceAll("\\d+", "1"))) {
            check(written + proposal.text(), wrong);
            check(filled(written, proposal.snippet()), wrong);
          }
        }
      }
    }
    assertThat(tried).isNotEmpty();
    assertThat(wrong).isEmpty();
  }

  /** A snippet behind a text, with words that fit in its places: its own if they do. */
  private static String filled(String before, String snippet) {
    StringBuilder text = new StringBuilder(before);
    Matcher stop = STOP.matcher(snippet);
    int done = 0;
    boolean more = stop.find();
    while (more) {
      text.append(unescaped(snippet.substring(done, stop.start())));
      done = stop.end();
      String own = unescaped(stop.group(1));
      more = stop.find();
      String behind = unescaped(snippet.substring(done, more ? stop.start() : snippet.length()));
      text.append(
          Stream.concat(Stream.of(own), FILLINGS.stream())
              .filter(word -> isReadable(text + word + behind))
              .findFirst()
              .orElse(own));
    }
    return text + unescaped(snippet.substring(done));
  }

  private static String unescaped(String snippet) {
    return snippet.replaceAll("\\\\(.)", "$1");
  }

  private static void check(String text, Set<String> wrong) {
    if (!isReadable(text)) {
      wrong.add(text);
    }
  }

  private static boolean isReadable(String written) {
    // A line may go on in the next one.
    String text = written.replaceAll("\\\\\\R", " ");
    String last = text.substring(text.lastIndexOf('\n') + 1);
    return text.lines()
            .limit(Math.max(0, text.lines().count() - 1))
            .allMatch(CompletionSweepTests::isWhole)
        && isPart(last);
  }

  private static boolean isPart(String line) {
    if (line.chars().filter(c -> c == '"').count() % 2 == 1) {
      return isPart(line + '"');
    }
    List<Token> tokens = tokens(line);
    return Expectations.after(tokens).position() == tokens.size();
  }

  private static boolean isWhole(String line) {
    List<Token> tokens = tokens(line);
    Expectations after = Expectations.after(tokens);
    return tokens.isEmpty() || (after.position() == tokens.size() && after.mayEnd());
  }

  private static List<Token> tokens(String line) {
    HandwheelLexer lexer = new HandwheelLexer(CharStreams.fromString(line));
    lexer.removeErrorListeners();
    List<Token> tokens = new ArrayList<>();
    for (Token token : lexer.getAllTokens()) {
      if (token.getChannel() == Token.DEFAULT_CHANNEL && token.getType() != HandwheelLexer.NL) {
        tokens.add(token);
      }
    }
    return tokens;
  }
}
