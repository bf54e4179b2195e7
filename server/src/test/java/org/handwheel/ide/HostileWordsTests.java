package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.antlr.v4.runtime.Token;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.Heading;
import org.commonmark.node.HtmlBlock;
import org.commonmark.node.HtmlInline;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.text.TextContentRenderer;
import org.handwheel.ide.complete.Completion;
import org.handwheel.ide.complete.Proposal;
import org.handwheel.lsp.PackedPages;
import org.handwheel.syntax.Section;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Words of files that would mean something to what shows them: they are shown, and do nothing. */
final class HostileWordsTests {
  private static final String HIDDEN = "\u001b[31m\u0007\u202e\u2066\u200b\u2028";

  static Stream<String> words() {
    return Stream.of(
        "<script>alert(1)</script> <b> &lt; &amp;",
        "[a](command:x) ![c](https://example.org/d.png) <https://example.org> [r]: x",
        "`code` `` [a](b) ``` ~~~ `a`` [x](y) `",
        "**bold** _it_ # head | a | b | ~~x~~ \\ \\\\[a](b)",
        "https://example.org www.example.org fitter@example.org",
        "a" + HIDDEN + "b",
        "- 1. + > ---",
        "x".repeat(1500));
  }

  private static View view(String words) {
    String shop =
        "language 1\nshop \""
            + words
            + "\"\n  units mm\n\nown vise V \""
            + words
            + "\"\n  jaw-width: 80 # "
            + words
            + "\n  jaw-depth: 25\n  opening: 70\n\nown cutter C \""
            + words
            + "\"\n  kind: face-mill\n  dia: 40\n  flute: 8\n  teeth: 4\n";
    String plan =
        "language 1\nplan \""
            + words
            + "\"\n  units mm\n  use \"own.shop\"\n  let edge = 7 mm # "
            + words
            + "\n\npart \""
            + words
            + "\"\n  length 40\n  width 30\n  height 20 +0/-0.1\n  hole h in top, dia 5, at (8, 9) from left front\n"
            + "\nstock\n  size 44 x 34 x 24\n  sawn left\n\nsetup one \""
            + words
            + "\"\n  note \""
            + words
            + "\"\n  hold in V, up top, fixed back, on bed\n  cutter C\n  touch top with paper 0.05, zero z\n"
            + "  clean top at 0.4, at most 1\n\nlog \""
            + words
            + "\"\n  in one: note \""
            + words
            + "\"\n";
    return Fixtures.view("a.plan", plan, Map.of("own.shop", shop));
  }

  /** What of a Markdown text acts: links, pictures, HTML, headings, and blocks of code. */
  private static List<String> acting(String markdown) {
    List<String> acting = new ArrayList<>();
    Parser.builder()
        .build()
        .parse(markdown)
        .accept(
            new AbstractVisitor() {
              @Override
              public void visit(Link node) {
                acting.add("link " + node.getDestination());
              }

              @Override
              public void visit(Image node) {
                acting.add("image " + node.getDestination());
              }

              @Override
              public void visit(HtmlInline node) {
                acting.add("html " + node.getLiteral());
              }

              @Override
              public void visit(HtmlBlock node) {
                acting.add("html " + node.getLiteral());
              }

              @Override
              public void visit(Heading node) {
                acting.add("heading " + node.getLevel());
              }

              @Override
              public void visit(FencedCodeBlock node) {
                acting.add("fence " + node.getInfo());
              }

              @Override
              public void visit(Code node) {
                // Code is the program's own form, or a line as it is written.
                Node before = node.getPrevious();
                String label =
                    before == null ? "" : new TextContentRenderer.Builder().build().render(before);
                if (!label.endsWith(": ") && !label.equals("From ")) {
                  acting.add("code " + node.getLiteral());
                }
              }
            });
    return acting;
  }

  private static void check(String markdown, String plain) {
    assertThat(acting(markdown)).as(markdown).isEmpty();
    // Readers that make links of bare addresses find none.
    assertThat(markdown.replaceAll("(?m)^    .*$|`[^`]*`", ""))
        .doesNotContain("https://", "www.", "r@");
    for (String text : List.of(markdown, plain)) {
      assertThat(text.chars().filter(c -> c != '\n').noneMatch(Character::isISOControl)).isTrue();
      assertThat(text).doesNotContain("\u202e", "\u2066", "\u200b", "\u2028");
    }
  }

  @ParameterizedTest
  @MethodSource("words")
  void hoversShowThem(String words) {
    View view = view(words);
    int told = 0;
    boolean shown = false;
    for (Section section : view.tree().sections()) {
      for (Token token : section.tokens()) {
        if (token.getType() > 0) {
          int at = view.tree().base(section) + section.origin(token).start();
          var hover = Hovers.at(view, at, new PackedPages());
          if (hover.isPresent()) {
            HoverText text = hover.get().text();
            check(text.markdown(), text.plain());
            told++;
            shown |= text.plain().contains(words.substring(0, 1));
            assertThat(text.plain().lines().findFirst().orElse("")).hasSizeLessThan(210);
          }
        }
      }
    }
    assertThat(told).isGreaterThan(60);
    assertThat(shown).isTrue();
  }

  @ParameterizedTest
  @MethodSource("words")
  void proposalsExplainThem(String words) {
    View view = view(words);
    String text = view.tree().source().text();
    int explained = 0;
    for (String place : List.of("hold in V", "cutter C", "clean top")) {
      int at = text.indexOf(place) + place.length() - 1;
      for (Proposal proposal : Completion.at(view, at).proposals()) {
        Explanation about = Completion.about(view, proposal.topic());
        if (!about.isEmpty()) {
          check(about.markdown(), about.plain());
          explained++;
        }
        assertThat(proposal.label()).hasSizeLessThan(210);
      }
    }
    assertThat(explained).isGreaterThan(1);
    Explanation vise = Completion.about(view, "thing vise V");
    assertThat(vise.plain()).contains("jaw-depth: 25").doesNotContain("`From");
    check(vise.markdown(), vise.plain());
  }

  @ParameterizedTest
  @MethodSource("words")
  void outlinesAndHintsNameThem(String words) {
    View view = view(words);
    List<Symbols.Symbol> symbols = new ArrayList<>(Symbols.of(view.tree()));
    assertThat(symbols).isNotEmpty();
    for (int i = 0; i < symbols.size(); i++) {
      symbols.addAll(symbols.get(i).children());
      assertThat(symbols.get(i).name()).isNotBlank().hasSizeLessThan(210);
      for (String shown : List.of(symbols.get(i).name(), symbols.get(i).detail())) {
        assertThat(shown).doesNotContain("\n", "\u001b", "\u202e", "\u2066");
        assertThat(shown).hasSizeLessThan(210);
      }
    }
    List<Hints.Hint> hints = Hints.of(view, HintSettings.ALL, 0, view.tree().source().length());
    assertThat(hints).isNotEmpty();
    for (Hints.Hint hint : hints) {
      check(hint.tooltip().markdown(), hint.tooltip().plain());
      assertThat(hint.label()).hasSizeLessThan(210).doesNotContain("\n");
    }
  }

  @Test
  void whatIsShownKeepsItsWords() {
    assertThat(Shown.line("Gland \u2300 12 \u2014 caf\u00e9"))
        .isEqualTo("Gland \u2300 12 \u2014 caf\u00e9");
    assertThat(Shown.line("a\tb\nc")).isEqualTo("a b c");
    assertThat(Shown.name("y".repeat(300))).hasSize(201).endsWith("\u2026");
    assertThat(Shown.code("a `b` c")).isEqualTo("`` a `b` c ``");
    assertThat(Shown.code(" ")).isEmpty();
  }
}
