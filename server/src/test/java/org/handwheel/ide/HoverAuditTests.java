package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.lsp.PackedPages;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.Vocabulary;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * What hovers tell all over the examples: of the first word of every line, and of every word. The
 * table says what a verb's text has to tell in at least one line; what it tells only where it can
 * (holes need a zero, cuts a held piece) is not asked of every line.
 */
final class HoverAuditTests {
  /** Labels and words, by the first word of the line; the verbs not here tell their form. */
  private static final String TABLE =
      """
      clean: The height before; Comes off; The height after; Left to the drawing; Passes; At the machine; The teeth cut; Lock; Stop for each pass at; Backlash; Spindle speed; Table feed; By hand; maker's manual
      rough: The height before; Comes off; The height after; Left to the drawing; Passes; At the machine; The teeth cut; Lock; Stop for each pass at; Backlash; Spindle speed; Table feed; By hand; maker's manual
      finish: The height before; Comes off; The height after; At the machine; The teeth cut; Lock; Stop at; Backlash; Spindle speed; Table feed; By hand; maker's manual
      hold: Lies; Jaws open; Grip; Stands above the jaws; Fixed jaw; Moving jaw; Sits; Front to back ruled by; Left to right ruled by; Turn in plan ruled by; Cuts; eye protection; Form
      setup: Lies; Jaws open; Cuts; Lay out; Time; eye protection; Form
      length: On the drawing; Limits; Aim; Stock; At the end
      width: On the drawing; Limits; Aim; Stock; At the end
      height: On the drawing; Limits; Aim; Stock; At the end
      hole: Diameter; Limits; Depth; At; Wall to the; Form
      drill: X from; Y from; speed; feed; in all; maker's manual; Form
      ream: X from; Y from; speed; feed; in all; maker's manual; Form
      tap: X from; Y from; speed; feed; in all; Form
      countersink: X from; Y from; speed; feed; in all; maker's manual; Form
      counterbore: X from; Y from; Form
      spot: X from; Y from; Form
      measure: Shows; Is good to; Tolerance; By what it shows; By what it is good to; Form
      check: Shows; Is good to; Tolerance; By what it shows; By what it is good to; Form
      cutter: dia; teeth; flute; Owned in; Form
      let: Exactly; Form
      own: Form
      """;

  private static final Pattern MILLIMETRES = Pattern.compile("\\d mm\\b(?!/)");
  private static final Pattern INCHES = Pattern.compile("\\d (in|thou)\\b(?!/)");
  private static final Map<String, List<String>> TEXTS = new TreeMap<>();
  private static final List<String> SILENT = new ArrayList<>();

  @BeforeAll
  static void hoverOverTheFirstWords() {
    for (Path example : Fixtures.examples()) {
      View view = Fixtures.view(Fixtures.path(example), Fixtures.read(example));
      for (Section section : view.tree().sections()) {
        boolean begins = true;
        for (Token token : section.tokens()) {
          boolean word = token.getChannel() == Token.DEFAULT_CHANNEL && token.getType() > 0;
          boolean end = token.getType() == HandwheelLexer.NL;
          if (begins && word && !end) {
            int at = view.tree().base(section) + section.origin(token).start();
            keep(Fixtures.path(example), token, view, at);
          }
          begins = end || (begins && !word);
        }
      }
    }
  }

  private static void keep(String path, Token token, View view, int at) {
    String text =
        Hovers.at(view, at, new PackedPages()).map(hover -> hover.text().plain()).orElse("");
    if (text.isEmpty()) {
      SILENT.add(path + ": " + token.getText());
    } else {
      TEXTS.computeIfAbsent(token.getText(), key -> new ArrayList<>()).add(text);
    }
  }

  @Test
  void everyLineThatBeginsWithAWordOfTheLanguageTellsSomething() {
    assertThat(SILENT).isSubsetOf("mistakes/syntax.plan: lenght", "mistakes/syntax.plan: \"");
    assertThat(TEXTS).hasSizeGreaterThan(90);
  }

  @Test
  void verbsTellWhatTheTableSays() {
    for (String row : TABLE.lines().toList()) {
      String verb = row.substring(0, row.indexOf(':'));
      List<String> texts = TEXTS.getOrDefault(verb, List.of());
      assertThat(texts).as(verb).isNotEmpty();
      Set<String> missing =
          Arrays.stream(row.substring(row.indexOf(':') + 1).split(";"))
              .map(String::strip)
              .filter(label -> texts.stream().noneMatch(text -> text.contains(label)))
              .collect(Collectors.toSet());
      assertThat(missing).as(verb).isEmpty();
    }
  }

  @Test
  void verbsWithoutARowTellTheirFormAndMeaning() {
    Set<String> rows =
        TABLE.lines().map(row -> row.substring(0, row.indexOf(':'))).collect(Collectors.toSet());
    TEXTS.forEach(
        (verb, texts) -> {
          for (String text : texts) {
            assertThat(text.lines().filter(line -> !line.isBlank()).count())
                .as(verb + ": " + text)
                .isGreaterThanOrEqualTo(rows.contains(verb) ? 1 : 2);
          }
        });
  }

  /** Sizes are in millimetres and in inches, whichever the file is in. */
  @Test
  void figuresAreInBothUnits() {
    int figures = 0;
    List<String> oneUnit = new ArrayList<>();
    for (List<String> texts : TEXTS.values()) {
      for (String text : texts) {
        for (String line : text.split("How it is worked out")[0].lines().skip(1).toList()) {
          // A title may be the user's own; a drill is called by the size it is sold by; a form and
          // a line are quoted.
          String told = line.replaceFirst("^[\\d.]+ mm(, [a-z ]+)?: ", "");
          boolean quoted = told.matches("(Form|Written|Other drills): .*");
          int metric = count(MILLIMETRES, told);
          if (!quoted && metric > 0) {
            figures++;
            if (count(INCHES, told) == 0) {
              oneUnit.add(line);
            }
          }
        }
      }
    }
    assertThat(oneUnit).isEmpty();
    assertThat(figures).isGreaterThan(1000);
  }

  private static int count(Pattern pattern, String text) {
    Matcher matcher = pattern.matcher(text);
    int count = 0;
    while (matcher.find()) {
      count++;
    }
    return count;
  }

  /** No word anywhere costs an exception or gives an empty text or one that goes on for ever. */
  @Test
  void everyWordOfTheExamplesCanBeAskedAbout() {
    Map<Integer, Integer> told = new HashMap<>();
    Set<Integer> kinds = new HashSet<>();
    for (Path example : Fixtures.examples()) {
      View view = Fixtures.view(Fixtures.path(example), Fixtures.read(example));
      for (Section section : view.tree().sections()) {
        for (Token token : section.tokens()) {
          if (token.getType() < 0) {
            continue;
          }
          int start = view.tree().base(section) + section.origin(token).start();
          var hover = Hovers.at(view, start, new PackedPages());
          if (!Vocabulary.keyword(token.getType()).isEmpty()) {
            kinds.add(token.getType());
            hover.ifPresent(found -> told.merge(token.getType(), 1, Integer::sum));
          }
          hover.ifPresent(
              found -> {
                assertThat(found.text().title()).isNotBlank();
                assertThat(found.text().plain()).hasSizeLessThan(8000).doesNotContain("`");
                assertThat(found.start()).isLessThan(found.end());
              });
        }
      }
    }
    Set<String> silent = new TreeSet<>();
    kinds.stream()
        .filter(kind -> !told.containsKey(kind))
        .forEach(kind -> silent.add(Vocabulary.keyword(kind)));
    assertThat(silent).as("words that tell nothing anywhere").isEmpty();
  }
}
