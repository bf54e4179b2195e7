package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.handwheel.cli.CommandRun.Result;

/** How findings are laid out: within the width, aligned, in characters the reader can show. */
final class CliLayoutTests {
  private static final Glyphs UTF_8 = new Glyphs(StandardCharsets.UTF_8);
  private static final Glyphs ASCII = new Glyphs(StandardCharsets.US_ASCII);

  @Property(tries = 100)
  void noLineIsWiderThanTheScreen(
      @ForAll("mutants") String plan, @ForAll @IntRange(min = 40, max = 100) int width)
      throws IOException {
    try (FileSystem files = Jimfs.newFileSystem(Configuration.unix())) {
      Path folder = files.getPath("/shed");
      Samples.writeBearingBlock(folder);
      Samples.write(folder, "a.plan", plan);
      Result usual = CommandRun.in(folder).run("check", "a.plan");
      assertThat(usual.exitCode()).as(usual.err()).isBetween(0, 1);
      assertThat(usual.outLines()).allMatch(line -> TextWidth.of(line) <= 80);
      Result screen =
          CommandRun.in(folder).onTerminal(width).run("check", "a.plan", "--color=never");
      assertThat(screen.outLines()).allMatch(line -> TextWidth.of(line) <= width);
      Result plain =
          CommandRun.in(folder).charset(StandardCharsets.US_ASCII).run("check", "a.plan");
      assertThat(plain.out()).matches("\\p{ASCII}*");
      assertThat(plain.outLines()).allMatch(line -> line.length() <= 80);
    }
  }

  /** The example with pieces cut out, doubled, swapped or replaced by odd text. */
  @Provide
  Arbitrary<String> mutants() {
    String plan = example();
    Arbitrary<Integer> places = Arbitraries.integers().between(0, plan.length());
    Arbitrary<String> odd =
        Arbitraries.of(
            "",
            "\t",
            "\u2026",
            "\u00b1 9",
            "\ud83d\udea4",
            "\u6c7d\u8239",
            "x".repeat(200),
            "e\u0301",
            "\"",
            "\\\n",
            ",",
            " 1/0 in",
            "1e9",
            "-",
            "\u202e",
            "\r\n",
            "no-such-name",
            " 9999999 mm",
            "w ".repeat(70),
            "\u001b[31m");
    Arbitrary<String> once =
        Combinators.combine(places, Arbitraries.integers().between(0, 40), odd)
            .as(
                (at, length, text) ->
                    plan.substring(0, at)
                        + text
                        + plan.substring(Math.min(plan.length(), at + length)));
    return Combinators.combine(once, places, odd)
        .as(
            (mutant, at, text) ->
                new StringBuilder(mutant).insert(Math.min(at, mutant.length()), text).toString());
  }

  private static String example() {
    try {
      return Samples.example("bearing-block.plan");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Property
  void theMarkStandsUnderThePlace(
      @ForAll("lines") String line,
      @ForAll @IntRange(min = 0, max = 300) int a,
      @ForAll @IntRange(min = 0, max = 300) int b,
      @ForAll @IntRange(min = 36, max = 120) int width) {
    int from = boundary(line, Math.min(a, b));
    int to = boundary(line, Math.max(a, b));
    Excerpt excerpt = Excerpt.of(line, from, to, width, UTF_8);
    String whole = excerpt.before() + excerpt.marked() + excerpt.after();
    assertThat(TextWidth.of(whole)).isLessThanOrEqualTo(width);
    assertThat(excerpt.underline().length()).isLessThanOrEqualTo(width);
    assertThat(excerpt.underline()).matches(" *\\^+");
    assertThat(excerpt.underline().indexOf('^')).isEqualTo(TextWidth.of(excerpt.before()));
    // The start of the place is always to be seen.
    String place = line.substring(from, to).strip();
    if (!place.isEmpty() && !line.contains("\t") && line.substring(from).startsWith(place)) {
      assertThat(excerpt.marked())
          .startsWith(place.substring(0, Character.charCount(place.codePointAt(0))));
    }
  }

  private static int boundary(String line, int wanted) {
    int at = Math.min(wanted, line.length());
    return at > 0 && at < line.length() && Character.isLowSurrogate(line.charAt(at)) ? at - 1 : at;
  }

  @Provide
  Arbitrary<String> lines() {
    return Arbitraries.of(
            "rough", " ", "\t", "\u6c7d\u8239", "\ud83d\udea4", "19.05", "+-", "\u00e9", ", ")
        .list()
        .ofMinSize(1)
        .ofMaxSize(60)
        .map(words -> "x" + String.join("", words));
  }

  @Example
  void tabsAndWideCharactersTakeTheirColumns() {
    Excerpt excerpt = Excerpt.of("\t\u6c7d\u8239\tab \ud83d\udea4 here", 10, 14, 76, UTF_8);
    assertThat(excerpt.before() + excerpt.marked() + excerpt.after())
        .isEqualTo("\u6c7d\u8239    ab \ud83d\udea4 here");
    assertThat(excerpt.marked()).isEqualTo("here");
  }

  @Example
  void theCaretStandsBehindTheLineWhereSomethingIsMissing() {
    Excerpt excerpt = Excerpt.of("  touch top with", 16, 16, 76, UTF_8);
    assertThat(excerpt.underline()).isEqualTo(" ".repeat("touch top with".length()) + "^");
  }

  @Example
  void longLinesAreCutAroundThePlace() {
    String line = "a".repeat(100) + " here " + "b".repeat(100);
    Excerpt excerpt = Excerpt.of(line, 101, 105, 40, UTF_8);
    assertThat(excerpt.before()).startsWith("\u2026a").endsWith(" ");
    assertThat(excerpt.marked()).isEqualTo("here");
    assertThat(excerpt.after()).startsWith(" b").endsWith("\u2026");
    assertThat(Excerpt.of(line, 101, 105, 40, ASCII).before()).startsWith("...a");
    assertThat(Excerpt.of(line, 0, 206, 40, UTF_8).marked()).startsWith("aaa").hasSize(38);
  }

  @Example
  void numbersStayWithTheirUnits() {
    assertThat(Wrapping.wrap("", "  ", "it goes 0.15 mm (5.9 thou) below, and 3 rpm", 24))
        .containsExactly("it goes 0.15 mm", "  (5.9 thou) below, and", "  3 rpm");
  }

  @Example
  void wordsTooLongForALineAreCut() {
    assertThat(Wrapping.wrap("", "  ", "a " + "b".repeat(25) + " c", 10))
        .containsExactly("a", "  bbbbbbbb", "  bbbbbbbb", "  bbbbbbbb", "  b c");
  }

  @Example
  void anOldConsoleGetsPlainSpellings() {
    assertThat(
            ASCII.show(
                "\u00b10.05 \u00d7 3 \u00b5m, 45\u00b0 \u2192 \u230012 \u2026 \u201cx\u201d \u00bd"))
        .isEqualTo("+-0.05 x 3 um, 45deg -> dia12 ... \"x\" 1/2");
    assertThat(ASCII.show("\u6c7d e\u0301 \u00e9")).isEqualTo("?? e ?");
    assertThat(new Glyphs(StandardCharsets.ISO_8859_1).show("\u00b1 \u00e9 \u2026"))
        .isEqualTo("\u00b1 \u00e9 ...");
  }

  /** East Asian Width and general categories as in Unicode Standard Annex 11. */
  @Example
  void widthsFollowUnicode() {
    assertThat(TextWidth.of("steam")).isEqualTo(5);
    assertThat(TextWidth.of("\u6c7d\u8239")).isEqualTo(4);
    assertThat(TextWidth.of("\uff21\uff61")).isEqualTo(3);
    assertThat(TextWidth.of("\ud83d\udea4")).isEqualTo(2);
    assertThat(TextWidth.of("e\u0301\u200b")).isEqualTo(1);
    assertThat(List.of("\u00b1", "\u00b5", "\u2300", "\u2026"))
        .allMatch(text -> TextWidth.of(text) == 1);
  }
}
