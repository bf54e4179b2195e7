package org.handwheel.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.handwheel.grammar.HandwheelParser;

/** A tree brought up to date by edits is the tree of the text, whatever the edits. */
class UpdateTests {
  private static final List<String> TEXTS = List.copyOf(Examples.files().values());
  private static final List<String> SNIPPETS =
      List.of(
          "",
          "\n",
          "\r",
          "\r\n",
          " ",
          "\\",
          "\\\n",
          "setup a\n",
          "part",
          "\nstock\n",
          "own vise v\n",
          "# c",
          "\"",
          "(",
          "5",
          "\ud83d\ude00",
          "log",
          "s",
          "plan \"x\"\n");

  @Property(tries = 400)
  void editsGiveTheTreeOfTheText(@ForAll long seed) {
    Random random = new Random(seed);
    String text = TEXTS.get(random.nextInt(TEXTS.size()));
    SyntaxTree tree = SyntaxTree.parse("a.plan", text);
    for (int i = 0; i < 12; i++) {
      int start = random.nextInt(text.length() + 1);
      int end = Math.min(text.length(), start + (random.nextInt(4) == 0 ? random.nextInt(80) : 0));
      text = text.substring(0, start) + snippet(random, text) + text.substring(end);
      tree = tree.update(text);
      assertSame(tree, SyntaxTree.parse("a.plan", text));
    }
  }

  /** A word of the list, or a piece of the text itself, so that sections come twice. */
  private static String snippet(Random random, String text) {
    if (random.nextInt(3) > 0 || text.isEmpty()) {
      return SNIPPETS.get(random.nextInt(SNIPPETS.size()));
    }
    int start = random.nextInt(text.length());
    return text.substring(start, Math.min(text.length(), start + random.nextInt(200)));
  }

  private static void assertSame(SyntaxTree updated, SyntaxTree fresh) {
    assertThat(described(updated)).isEqualTo(described(fresh));
  }

  private static List<String> described(SyntaxTree tree) {
    List<String> rules = List.of(HandwheelParser.ruleNames);
    return tree.sections().stream()
        .map(
            section ->
                tree.base(section)
                    + " "
                    + section.kind()
                    + " "
                    + section.text()
                    + section.tree().toStringTree(rules)
                    + section.problems().stream()
                        .map(p -> p.origin().start() + p.message())
                        .toList())
        .toList();
  }

  @Example
  void sectionsAwayFromTheChangeAreTakenOver() {
    String text =
        "plan \"a\"\n  units mm\npart\n  height 5\nsetup a\n  note \"x\"\nsetup b\n  note \"y\"\n";
    SyntaxTree before = SyntaxTree.parse("a.plan", text);
    SyntaxTree after = before.update(text.replace("height 5", "height 6"));
    assertThat(after.sections()).hasSameSizeAs(before.sections());
    for (int i = 0; i < before.sections().size(); i++) {
      boolean changed = before.sections().get(i).kind() == SectionKind.PART;
      assertThat(after.sections().get(i) == before.sections().get(i)).isEqualTo(!changed);
    }
  }
}
