package org.handwheel.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A level is too new by its number alone, and half typed it is not. */
final class LanguageLevelTests {
  @ParameterizedTest
  @CsvSource({
    "'language 1', false",
    "'language 2', true",
    "'language 99999999999999999999', true",
    "'language 2 more', true",
    "'language ', false",
    "'language', false",
    "'language x', false",
  })
  void tooNew(String line, boolean expected) {
    SyntaxTree tree = SyntaxTree.parse("a.plan", line + "\nplan \"A\"\n");
    assertThat(LanguageLevel.isTooNew(tree)).isEqualTo(expected);
  }
}
