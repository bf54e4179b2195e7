package org.handwheel.ide.complete;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.antlr.v4.runtime.CharStreams;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.ide.Fixtures;
import org.handwheel.ide.View;
import org.handwheel.model.OwnKind;
import org.handwheel.model.OwnProperties;
import org.handwheel.syntax.Expectations;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.Vocabulary;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;
import org.junit.jupiter.params.provider.MethodSource;

/** The tables of what belongs where agree with what reading a file accepts. */
final class SectionWordsTests {
  private static final List<String> STATEMENTS =
      List.of(
          "units mm",
          "let a = 5 mm",
          "note \"a\"",
          "material brass",
          "machine inch-mill",
          "length 5",
          "width 5",
          "height 5",
          "datum A top",
          "square all 0.1",
          "parallel top to bottom 0.1",
          "flat top 0.1",
          "tolerance ISO 2768 m",
          "tolerance 0.0 +-0.2, 0.00 +-0.05",
          "surface top ra 1.6 um",
          "break edges 0.3",
          "hole h in top, dia 5, at (1, 1) from left front, through",
          "pattern p of h, circle dia 5, count 3, about (1, 1)",
          "size 1 x 2 x 3",
          "sawn top",
          "rolled top",
          "cast top",
          "drawn top",
          "milled top",
          "ground top",
          "kerf 1",
          "wander 1",
          "make 2",
          "hold in V80, up top, fixed back, on bed",
          "seat tapped",
          "true V80 with dti",
          "tram head 0.1 over 100",
          "cutter FC40",
          "touch top with paper 0.05, zero z",
          "find left from operator-left with finder F5",
          "zero x",
          "set z 5 below top",
          "lock x",
          "unlock x",
          "move head up 5",
          "clean top at 0.4, at most 1",
          "rough top to height leaving 0.2",
          "finish top to height",
          "spot h",
          "drill h 5",
          "ream h",
          "tap h",
          "bore h",
          "counterbore h",
          "countersink h",
          "slot s",
          "pocket s",
          "profile s",
          "step s",
          "chamfer s",
          "outline s",
          "window s",
          "corner s",
          "deburr all edges",
          "wipe jaws",
          "measure height with mic25",
          "check height with mic25",
          "in one: read height 5 with mic25",
          "language 1");

  static Stream<String> statements() {
    return STATEMENTS.stream();
  }

  /** Every word a statement may start with has its line above. */
  @ParameterizedTest
  @MethodSource("statements")
  void sectionsHaveTheStatementsTheyAccept(String statement) {
    for (SectionKind kind : SectionKind.values()) {
      boolean ofShop = kind == SectionKind.SHOP || kind == SectionKind.OWN;
      boolean misplaced = isMisplaced(kind, statement, ofShop ? "a.shop" : "a.plan");
      HandwheelLexer lexer = new HandwheelLexer(CharStreams.fromString(statement));
      int first = lexer.nextToken().getType();
      boolean offered = SectionWords.of(kind).contains(first);
      if (first != HandwheelLexer.LANGUAGE) { // may stand anywhere, and is wanted at the start only
        assertThat(offered).as(kind + ": " + statement).isEqualTo(!misplaced);
      }
    }
  }

  private static boolean isMisplaced(SectionKind kind, String statement, String path) {
    String header =
        switch (kind) {
          case PREAMBLE -> "";
          case OWN -> "own vise V\n";
          case SETUP -> "setup two\n";
          default -> kind.word() + "\n";
        };
    View view = Fixtures.view(path, header + statement + "\n");
    int line = header.isEmpty() ? 0 : 1;
    return view.checked().findings().stream()
        .filter(finding -> finding.rule().equals("misplaced-line"))
        .anyMatch(finding -> view.tree().line(finding.origin()) == line);
  }

  @org.junit.jupiter.api.Test
  void everyFirstWordIsTried() {
    List<String> tried = STATEMENTS.stream().map(line -> line.split(" ", 2)[0]).toList();
    for (Expectations.Expected expected : Expectations.after(List.of()).expected()) {
      String word = Vocabulary.keyword(expected.tokenType());
      boolean used = SectionWords.of(SectionKind.SETUP).contains(expected.tokenType());
      if (used && !word.equals("use")) {
        assertThat(tried).contains(word);
      }
    }
  }

  /**
   * With every property of the table nothing is unknown; without the needed ones each is missed.
   */
  @ParameterizedTest
  @EnumSource(
      value = OwnKind.class,
      names = {"SEVERITIES"},
      mode = Mode.EXCLUDE)
  void propertiesAreThoseThatAreRead(OwnKind kind) {
    StringBuilder all = new StringBuilder("shop\n  units mm\nown " + kind.word() + " a\n");
    Map<String, OwnProperties.Property> needed = new TreeMap<>();
    for (OwnProperties.Property property : OwnProperties.of(kind)) {
      all.append("  ").append(property.word()).append(": ").append(property.usual()).append('\n');
      if (property.need() == OwnProperties.Need.REQUIRED) {
        needed.put(property.word(), property);
      }
      assertThat(property.choices().isEmpty() || property.choices().contains(property.usual()))
          .as(property.word())
          .isTrue();
    }
    assertThat(Fixtures.view("a.shop", all.toString()).checked().findings()).isEmpty();
    for (String missing : needed.keySet()) {
      String without = all.toString().replaceAll("(?m)^  " + missing + ": .*\n", "");
      Optional<Finding> finding =
          Fixtures.view("a.shop", without).checked().findings().stream().findFirst();
      assertThat(finding.map(Finding::rule)).as(missing).contains("missing-property");
    }
    String nothing = "shop\n  units mm\nown " + kind.word() + " a\n";
    boolean misses =
        Fixtures.view("a.shop", nothing).checked().findings().stream()
            .anyMatch(finding -> finding.rule().equals("missing-property"));
    assertThat(misses).as("needs something").isEqualTo(!needed.isEmpty());
  }
}
