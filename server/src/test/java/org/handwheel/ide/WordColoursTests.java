package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import org.handwheel.ide.WordColours.Word;
import org.junit.jupiter.api.Test;

/** What each word is. */
final class WordColoursTests {
  private static String words(Fixture fixture, int start, int end) {
    return WordColours.of(fixture.view(), start, end).stream()
        .map(
            word ->
                fixture.text().substring(word.start(), word.end())
                    + ":"
                    + word.type()
                    + (word.modifier() == WordColours.Modifier.NONE ? "" : "+" + word.modifier()))
        .collect(Collectors.joining(" "));
  }

  private static String marked(String marked) {
    Fixture fixture = Fixture.plan(marked);
    int[] range = fixture.ranges().get(0);
    return words(fixture, range[0], range[1]);
  }

  @Test
  void aCut() {
    assertThat(
            marked(
                Fixture.HEAD
                    + "setup one\n  hold in V80, up top, fixed back\n  [[rough top to height leaving 0.25 mm, travel operator-left to right # x]]\n"))
        .isEqualTo(
            "rough:FUNCTION top:ENUM_MEMBER to:KEYWORD height:PROPERTY leaving:KEYWORD 0.25:NUMBER"
                + " mm:KEYWORD travel:KEYWORD operator-left:ENUM_MEMBER to:KEYWORD right:ENUM_MEMBER"
                + " # x:COMMENT");
  }

  @Test
  void valuesAreDeclaredAndReadOnly() {
    assertThat(marked(Fixture.HEAD + "[[let rib = 3 mm\npart\n  length (rib + 4)]]\n"))
        .isEqualTo(
            "let:KEYWORD rib:VARIABLE+DECLARATION_READONLY 3:NUMBER mm:KEYWORD part:KEYWORD"
                + " length:PROPERTY rib:VARIABLE+READONLY 4:NUMBER");
  }

  @Test
  void namesThatAreWordsAreNames() {
    assertThat(marked(Fixture.HEAD + "part\n  [[hole bore in top, dia 14 H7, through]]\n"))
        .isEqualTo(
            "hole:KEYWORD bore:VARIABLE+DECLARATION in:KEYWORD top:ENUM_MEMBER dia:KEYWORD 14:NUMBER"
                + " H7:NUMBER through:KEYWORD");
  }

  @Test
  void aHoleMayHaveTheWordOfASize() {
    assertThat(marked(Fixture.HEAD + "part\n  [[hole width in top, dia 4, through]]\n"))
        .startsWith("hole:KEYWORD width:VARIABLE+DECLARATION in:KEYWORD");
  }

  @Test
  void thingsOfAShop() {
    Fixture fixture = Fixture.shop("[[own vise V80 \"Big\"\n  jaw-width: 80]]\n");
    assertThat(words(fixture, 0, fixture.text().length()))
        .isEqualTo(
            "own:KEYWORD vise:CLASS V80:VARIABLE+DECLARATION \"Big\":STRING jaw-width:PROPERTY 80:NUMBER");
  }

  @Test
  void commentsBehindJoinsAndBrokenLines() {
    assertThat(
            marked(
                Fixture.HEAD
                    + "setup one\n  [[hold in V80, \\ # on\n    up top\n  clean clean clean]]\n"))
        .contains("# on:COMMENT")
        .contains("up:KEYWORD top:ENUM_MEMBER");
  }

  @Test
  void wordsAreInOrderApartAndOnOneLine() {
    Fixture fixture = Fixture.plan(Fixture.example("bearing-block.plan"));
    List<Word> words = WordColours.of(fixture.view(), 0, fixture.text().length());
    int at = 0;
    for (Word word : words) {
      assertThat(word.start()).isGreaterThanOrEqualTo(at);
      assertThat(word.end()).isGreaterThan(word.start());
      assertThat(fixture.text().substring(word.start(), word.end())).doesNotContain("\n");
      at = word.end();
    }
  }

  @Test
  void aRangeGivesTheSameWordsAsTheWhole() {
    Fixture fixture = Fixture.plan(Fixture.example("bearing-block.plan"));
    int start = 500;
    int end = 1500;
    assertThat(WordColours.of(fixture.view(), start, end))
        .isEqualTo(
            WordColours.of(fixture.view(), 0, fixture.text().length()).stream()
                .filter(word -> word.end() >= start && word.start() <= end)
                .toList());
  }
}
