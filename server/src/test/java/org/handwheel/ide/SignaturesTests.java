package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which slot is being filled. */
final class SignaturesTests {
  private static Optional<Signatures.Signature> at(String marked) {
    Fixture.Marked marks = Fixture.marks(marked);
    return Signatures.at(SyntaxTree.parse("a.plan", marks.text()), marks.cursor());
  }

  private static String active(Signatures.Signature signature) {
    if (signature.active() < 0) {
      return "none";
    }
    Signatures.Slot slot = signature.slots().get(signature.active());
    return signature.label().substring(slot.start(), slot.end());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "clean $0 | face",
        "clean top $0 | face",
        "clean top at $0 | depth",
        "clean top at 0.4, at most $0 | depth",
        "rough bottom to $0 | size",
        "rough bottom to height leaving $0 | allowance",
        "rough bottom to height leaving 0.2, pass $0 | depth",
        "rough bottom to height pass 0.5, leaving $0 | allowance",
        "hold in V80, up top, fixed $0 | face",
        "hold in V80, on pair $0 | parallels",
        "hold on table, up $0 | face",
        "size 50 x $0 | width",
        "size 50 x 30 x $0 | height",
        "measure height with $0 | instrument",
        "ream hole, depth $0 | depth",
        "square back to $0 | face",
        "square all $0 | zone",
        "own vise $0 | name",
        "let rib = $0 | value",
        "in one: read $0 | dimension",
      })
  void theSlotBehindTheLastWord(String line, String slot) {
    Signatures.Signature signature = at("setup one\n  " + line + "\n  lock y\n").orElseThrow();
    assertThat(active(signature)).as(signature.label()).isEqualTo(slot);
  }

  @Test
  void theVerbThatWasWrittenIsShown() {
    assertThat(at("setup one\n  ream $0\n").orElseThrow().label()).startsWith("ream hole, ");
    assertThat(at("setup one\n  check flat $0\n").orElseThrow().label())
        .startsWith("check flat face");
  }

  @Test
  void nothingWithoutAStatement() {
    assertThat(at("setup one\n  $0\n")).isEmpty();
    assertThat(at("setup one\n  cle$0\n")).isEmpty();
    assertThat(at("setup one\n  clean top # at $0\n")).isEmpty();
    assertThat(at("$0")).isEmpty();
    assertThat(at("setup one\n  clean top at 3\n$0")).isEmpty();
  }

  @Test
  void everyPlaceOfAnExampleCanBeAsked() {
    String text = Fixture.example("bearing-block.plan");
    SyntaxTree tree = SyntaxTree.parse("a.plan", text);
    for (int offset = 0; offset <= text.length(); offset++) {
      Signatures.at(tree, offset)
          .ifPresent(s -> assertThat(s.active()).isBetween(-1, s.slots().size() - 1));
    }
  }
}
