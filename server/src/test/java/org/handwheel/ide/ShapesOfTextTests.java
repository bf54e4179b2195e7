package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.handwheel.ide.Folds.Kind;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.Test;

/** Folds and selections. */
final class ShapesOfTextTests {
  private static List<Folds.Fold> folds(String text) {
    return Folds.of(SyntaxTree.parse("a.plan", text));
  }

  @Test
  void sectionsFoldUpToTheirLastWord() {
    assertThat(
            folds("plan \"A\"\n  units mm\n\npart\n  length 3\n\n# about the setup\nsetup one\n"))
        .containsExactly(new Folds.Fold(0, 1, Kind.SECTION), new Folds.Fold(3, 4, Kind.SECTION));
  }

  @Test
  void commentsOfSeveralLinesFold() {
    assertThat(folds("# one\n# two\n# three\nplan \"A\"\n# alone\n  units mm\n"))
        .containsExactly(new Folds.Fold(0, 2, Kind.COMMENT), new Folds.Fold(3, 5, Kind.SECTION));
  }

  @Test
  void nothingToFold() {
    assertThat(folds("")).isEmpty();
    assertThat(folds("plan")).isEmpty();
    assertThat(folds("plan\r\n\r\n")).isEmpty();
  }

  @Test
  void selectionsGrowFromTheWordToTheFile() {
    Fixture fixture =
        Fixture.plan(
            Fixture.HEAD
                + "setup one\n  hold in V80, up top\n  clean top at 0.4, at most 1$0.2\nlog\n");
    assertThat(
            Selections.around(fixture.view().tree(), fixture.cursor()).stream()
                .map(piece -> fixture.text().substring(piece.start(), piece.end())))
        .containsExactly(
            "1.2",
            "at most 1.2",
            "clean top at 0.4, at most 1.2",
            "setup one\n  hold in V80, up top\n  clean top at 0.4, at most 1.2\n",
            fixture.text());
  }

  @Test
  void everyPlaceHasASelection() {
    String text = Fixture.example("bearing-block.plan");
    SyntaxTree tree = SyntaxTree.parse("a.plan", text);
    for (int offset = 0; offset <= text.length(); offset++) {
      List<Selections.Piece> pieces = Selections.around(tree, offset);
      for (int i = 1; i < pieces.size(); i++) {
        assertThat(pieces.get(i).start()).isLessThanOrEqualTo(pieces.get(i - 1).start());
        assertThat(pieces.get(i).end()).isGreaterThanOrEqualTo(pieces.get(i - 1).end());
      }
    }
  }
}
