package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;

/** Whatever the text is like, every feature answers. */
final class BrokenTextTests {
  private static final String PLAN = Fixture.example("bearing-block.plan");
  private static final String SHOP = Fixture.example(Fixture.SHOP);

  @Provide
  Arbitrary<String> inserts() {
    return Arbitraries.of(
        "",
        " ",
        "\n",
        "\r",
        "\"",
        "#",
        "\\\n",
        "(",
        "at",
        "to",
        "setup",
        "own",
        "1/0",
        "9999999999999999999",
        "99999999999999999999999999999 in",
        "-99999999999999 mm",
        "99999999999999999999 in/tooth",
        "99999999999999999999 rpm",
        "99999999999999999999 mm/min",
        "let big = 99999999999999 mm",
        "-",
        "\ud83d\udea2",
        "x",
        "%",
        "let length = 3",
        "top",
        "0",
        "\u0000");
  }

  @Property(tries = 300)
  void aPlan(
      @ForAll @DoubleRange(max = 1) double from,
      @ForAll @DoubleRange(max = 0.1) double length,
      @ForAll("inserts") String insert,
      @ForAll @DoubleRange(max = 1) double cursor) {
    String text = edited(PLAN, from, length, insert);
    everyFeature(Fixture.plan(text), cursor);
  }

  @Property(tries = 100)
  void aShop(
      @ForAll @DoubleRange(max = 1) double from,
      @ForAll @DoubleRange(max = 0.1) double length,
      @ForAll("inserts") String insert,
      @ForAll @DoubleRange(max = 1) double cursor) {
    String text = edited(SHOP, from, length, insert);
    everyFeature(Fixture.shop(text), cursor);
  }

  private static String edited(String text, double from, double length, String insert) {
    int start = (int) (from * text.length());
    int end = Math.min(text.length(), start + (int) (length * text.length()));
    return text.substring(0, start) + insert + text.substring(end);
  }

  private static void everyFeature(Fixture fixture, double cursor) {
    View view = fixture.view();
    int size = fixture.text().length();
    int first = (int) (cursor * size);
    assertThatCode(
            () -> {
              // A stretch of offsets round the cursor, so that every try meets several kinds of
              // places.
              for (int offset = Math.max(0, first - 12);
                  offset <= Math.min(size, first + 12);
                  offset++) {
                Hovers.at(view, offset, RulePages.NONE).ifPresent(hover -> hover.text().markdown());
                References.definition(view, offset);
                References.highlights(view, offset);
                Signatures.at(view.tree(), offset);
                assertThat(Selections.around(view.tree(), offset)).isNotEmpty();
              }
              Hints.of(view, HintSettings.ALL, 0, size);
              Folds.of(view.tree());
              Symbols.of(view.tree());
              WordColours.of(view, 0, size);
              UsePaths.of(view.tree());
              Project project = Project.of(view.workspace(), () -> {});
              new Rename(project).rename(view.tree(), first, "other-name");
            })
        .as(fixture.text())
        .doesNotThrowAnyException();
  }
}
