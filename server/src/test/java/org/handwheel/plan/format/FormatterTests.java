package org.handwheel.plan.format;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.syntax.TextEdit;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The usual form: what it looks like, and that it changes nothing but the look. */
final class FormatterTests {
  private static final Path EXAMPLES = Path.of("..", "examples");
  private static final Path PAIRS =
      Path.of("src", "test", "resources", "org", "handwheel", "plan", "format");

  private static String format(String text) {
    return Formatter.format(SyntaxTree.parse("a.plan", text));
  }

  private static void check(String before, String after) {
    assertThat(format(before)).isEqualTo(after);
    assertThat(format(after)).as("again").isEqualTo(after);
  }

  /** A statement of a setup. */
  private static void checkLine(String before, String after) {
    check("setup one\n" + before + "\n", "setup one\n" + after + "\n");
  }

  private static List<Path> examples() {
    try (Stream<Path> files = Files.walk(EXAMPLES)) {
      return files
          .filter(file -> file.toString().endsWith(".plan") || file.toString().endsWith(".shop"))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  // ---- Pairs of files

  @TestFactory
  Stream<DynamicTest> inputsBecomeOutputs() throws IOException {
    try (Stream<Path> files = Files.list(PAIRS)) {
      return files.filter(file -> file.toString().endsWith(".in")).sorted().toList().stream()
          .map(
              file ->
                  DynamicTest.dynamicTest(
                      file.getFileName().toString(),
                      () -> {
                        Path out =
                            file.resolveSibling(
                                file.getFileName().toString().replaceAll("in$", "out"));
                        check(read(file), read(out));
                      }));
    }
  }

  // ---- One thing at a time

  @Test
  void tokensHaveOneBlankBetweenThem() {
    checkLine("clean   top\tat 0.4", "  clean top at 0.4");
    checkLine("note \"two  blanks\"", "  note \"two  blanks\"");
    check("stock\nsize 60x33.5x24", "stock\n  size 60 x 33.5 x 24\n");
    check("stock\nsize 60×33.5 × 24mm\n", "stock\n  size 60 x 33.5 x 24 mm\n");
  }

  @Test
  void tolerancesAreTight() {
    check(
        "part\nlength 56±0.1\nwidth 30 + 0 / - 0.05\nheight 20 +/- 0.1\n",
        "part\n  length 56 +-0.1\n  width 30 +0/-0.05\n  height 20 +-0.1\n");
    check("part\nheight 18.97 /19.00\n", "part\n  height 18.97 / 19.00\n");
    check("part\nheight 1 in +.002/-0\n", "part\n  height 1 in +0.002/-0\n");
  }

  @Test
  void numbersAndNamesAreNotTouched() {
    checkLine("finish top to 16.00", "  finish top to 16.00");
    checkLine("rough top to 1-3/8 in leaving 1/64 in", "  rough top to 1-3/8 in leaving 1/64 in");
    checkLine("hold in BigVise, UP Top", "  hold in BigVise, up top");
    checkLine("pocket Radius depth 05.0", "  pocket Radius depth 05.0");
    check("let Width2=WIDTH/2\n", "let Width2 = WIDTH/2\n");
  }

  @Test
  void keywordsAreLowerCaseAndHaveOneSpelling() {
    checkLine("CLEAN Top AT .4 Inch", "  clean top at 0.4 in");
    check("UNITS inch\n", "units in\n");
    checkLine("hold in v, up top, bar 8 at Mid-Grip", "  hold in v, up top, bar 8 at mid-grip");
    check(
        "part\npattern p of h, circle ⌀ 20, first at 45°\n",
        "part\n  pattern p of h, circle dia 20, first at 45 deg\n");
  }

  @Test
  void sumsHaveBlanksAndSignsHaveNone() {
    check("let a = 1+2\nlet b=- 3 * ( a -1 )\n", "let a = 1 + 2\nlet b = -3 * (a - 1)\n");
    check(
        "let a = b/2\nlet c = b / 2\nlet d = b /2\n",
        "let a = b/2\nlet c = b / 2\nlet d = b / 2\n");
    check("let a = 6 / 2\n", "let a = 6 / 2\n");
  }

  @Test
  void clausesHaveCommas() {
    checkLine(
        "hold in V up top fixed back on pair P", "  hold in V, up top, fixed back, on pair P");
    checkLine(
        "rough top to height leaving 0.2 pass 0.5", "  rough top to height leaving 0.2, pass 0.5");
    checkLine(
        "rough top to height , leaving 0.2 climb", "  rough top to height, leaving 0.2, climb");
    checkLine("touch top with paper 0.05 zero z", "  touch top with paper 0.05, zero z");
    checkLine("seat tapped both parallels tight", "  seat tapped, both parallels tight");
    checkLine(
        "cutter E speed 500 rpm feed 0.05 mm/tooth",
        "  cutter E, speed 500 rpm, feed 0.05 mm/tooth");
    checkLine("lock y z", "  lock y z");
    checkLine("drill a b 5 then 6 depth 3 peck 1", "  drill a b 5 then 6 depth 3, peck 1");
    check(
        "part\nhole a in top dia 5 at (1,2) from left front through\ndatum A top B back\n",
        "part\n  hole a in top, dia 5, at (1, 2) from left front, through\n  datum A top, B back\n");
  }

  @Test
  void commentsStandTwoBlanksBehindAStatement() {
    checkLine("wipe jaws #chips", "  wipe jaws  # chips");
    checkLine("wipe jaws      # chips   ", "  wipe jaws  # chips");
    checkLine(
        "wipe jaws # ignore burr-under-work: checked",
        "  wipe jaws  # ignore burr-under-work: checked");
  }

  @Test
  void commentBlocksKeepWhatIsAlignedInThem() {
    check(
        "setup one\n#  a   1\n   #  bb  2\n  wipe jaws\n",
        "setup one\n  #  a   1\n  #  bb  2\n  wipe jaws\n");
    check(
        "setup one\n#one\n#two\n#\n  wipe jaws\n",
        "setup one\n  # one\n  # two\n  #\n  wipe jaws\n");
    check("setup one\n#one\n#----\n  wipe jaws\n", "setup one\n  #one\n  #----\n  wipe jaws\n");
  }

  @Test
  void aCommentAboveAHeaderBelongsToIt() {
    check(
        "part\n  length 5\n# of the stock\nstock\n", "part\n  length 5\n\n# of the stock\nstock\n");
    check(
        "part\n  length 5\n\n  # of the stock\nstock\n",
        "part\n  length 5\n\n# of the stock\nstock\n");
    check(
        "part\n  length 5\n  # of the part\nstock\n",
        "part\n  length 5\n  # of the part\n\nstock\n");
    check("part\n  length 5\n\n# apart\n\nstock\n", "part\n  length 5\n\n# apart\n\nstock\n");
    check("language 1\n# the plan\nplan \"a\"\n", "language 1\n# the plan\nplan \"a\"\n");
  }

  @Test
  void sectionsHaveOneEmptyLineBetweenThem() {
    check(
        "\n\npart\n\n\n length 5\n \n\n\nstock\nsetup a\n\n",
        "part\n\n  length 5\n\nstock\n\nsetup a\n");
    check("\n \n", "");
    check("", "");
  }

  @Test
  void joinsAreKept() {
    checkLine(
        "hold in V\\\nup top  \\   # so far\n fixed back",
        "  hold in V, \\\n    up top, \\  # so far\n    fixed back");
    check(
        "setup one\n  wipe jaws \\\n\n  wipe table\n",
        "setup one\n  wipe jaws \\\n\n  wipe table\n");
    check(
        "setup one\nwipe jaws \\\n# why\nwipe table\n",
        "setup one\n  wipe jaws \\\n    # why\n  wipe table\n");
    check("setup one\n  wipe jaws \\\nsetup two\n", "setup one\n  wipe jaws \\\nsetup two\n");
  }

  @Test
  void brokenLinesAreLeftByteForByte() {
    checkLine("clean   top  at at  0.4  #why ", "clean   top  at at  0.4  #why ");
    checkLine("\tpolish   top", "\tpolish   top");
    checkLine(
        "hold in V,  \\\n up up,  \\\n   fixed  back\nwipe  jaws",
        "hold in V,  \\\n up up,  \\\n   fixed  back\n  wipe jaws");
    check("setup \"one\nwipe   jaws\n", "setup \"one\n  wipe jaws\n");
    check("setup one\n  wipe jaws \\", "setup one\n  wipe jaws \\");
  }

  @Test
  void lineEndsOfAFileAreAllTheSame() {
    check(
        "part\r\n length 5\r\n\r\n\r\nstock\r\n size 1 x 2 x 3",
        "part\r\n  length 5\r\n\r\nstock\r\n  size 1 x 2 x 3\r\n");
    check("part\n length 5\r\n width 5\n", "part\n  length 5\n  width 5\n");
    check("part\r length 5\r", "part\n  length 5\n");
  }

  @Test
  void aFileOfANewerLanguageLevelIsNotTouched() {
    String text = "language 2\npart\nlength    5\n\n\n";
    assertThat(format(text)).isEqualTo(text);
    assertThat(format("language 99999999999999999999\n\n\n")).endsWith("\n\n\n");
  }

  @Test
  void editsAreSmall() {
    String text = "setup one\n  clean  top at 0.4\n  wipe jaws\n";
    assertThat(Formatter.edits(SyntaxTree.parse("a.plan", text)))
        .containsExactly(new TextEdit(18, 19, ""));
  }

  @Test
  void aNewLineFormatsTheLineBeforeAndStandsIn() {
    String text = "setup one\nwipe   jaws\n";
    assertThat(afterNewLine(text + "wipe  table\n", text.length() - 1 + 1))
        .isEqualTo("setup one\n  wipe jaws\nwipe  table\n");
    assertThat(afterNewLine("setup one\n", 10)).isEqualTo("setup one\n  ");
    assertThat(afterNewLine("setup one\n  wipe jaws\n\n", 22))
        .isEqualTo("setup one\n  wipe jaws\n  \n");
    assertThat(afterNewLine("setup one\n  hold in V \\\n", 24))
        .isEqualTo("setup one\n  hold in V \\\n    ");
    assertThat(afterNewLine("setup one\n  wipe jaws\n  \n  ", 27))
        .isEqualTo("setup one\n  wipe jaws\n  \n");
    assertThat(afterNewLine("language 1\n", 11)).isEqualTo("language 1\n");
  }

  private static String afterNewLine(String text, int offset) {
    return TextEdit.apply(text, Formatter.editsOnNewLine(SyntaxTree.parse("a.plan", text), offset));
  }

  // ---- Laws

  @TestFactory
  Stream<DynamicTest> examplesKeepTheirMeaning() {
    return examples().stream()
        .map(file -> DynamicTest.dynamicTest(file.toString(), () -> checkLaws(read(file))));
  }

  @TestFactory
  Stream<DynamicTest> examplesHaveTheUsualForm() {
    return examples().stream()
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.toString(), () -> assertThat(format(read(file))).isEqualTo(read(file))));
  }

  @Property(tries = 400, seed = "20261127")
  void mutantsKeepTheirMeaning(@ForAll("mutants") String text) {
    checkLaws(text);
  }

  @Property(tries = 100, seed = "20261127")
  void aRangeIsPartOfTheWhole(
      @ForAll("mutants") String text,
      @ForAll("fractions") double from,
      @ForAll("fractions") double to) {
    SyntaxTree tree = SyntaxTree.parse("a.plan", text);
    int start = (int) (Math.min(from, to) * text.length());
    int end = (int) (Math.max(from, to) * text.length());
    List<TextEdit> edits = Formatter.edits(tree, start, end);
    assertThat(Formatter.edits(tree)).containsAll(edits);
    String ranged = TextEdit.apply(text, edits);
    assertThat(words(ranged)).isEqualTo(words(text));
    assertThat(Formatter.edits(tree, 0, text.length())).isEqualTo(Formatter.edits(tree));
  }

  @Provide
  Arbitrary<Double> fractions() {
    return Arbitraries.doubles().between(0, 1);
  }

  /** Examples with a few pieces cut out, put in, swapped or strewn with blanks. */
  @Provide
  Arbitrary<String> mutants() {
    List<String> texts = examples().stream().map(FormatterTests::read).toList();
    List<String> bits =
        List.of(
            " ",
            "   ",
            "\n",
            "\n\n\n",
            "\r\n",
            "\t",
            "\\\n",
            " \\  # c\n",
            "#c\n",
            "# ignore overcut: x",
            ",",
            "(",
            ")",
            "/",
            "-",
            "+-",
            "±",
            "×",
            "x",
            " x ",
            "X",
            ".5",
            " + 0 / -0.1",
            "\"",
            "\u00a0",
            "in",
            "INCH",
            "°",
            "at",
            "setup q\n",
            "PART\n",
            "1-3/8 in",
            "é",
            "\ud83d\ude00",
            "language 1\n");
    Arbitrary<List<Change>> changes =
        Combinators.combine(
                Arbitraries.doubles().between(0, 1),
                Arbitraries.integers().between(0, 6),
                Arbitraries.of(bits))
            .as(Change::new)
            .list()
            .ofMaxSize(8);
    return Combinators.combine(Arbitraries.of(texts), changes)
        .as(
            (text, list) -> {
              String out = text;
              for (Change change : list) {
                out = change.on(out);
              }
              return out;
            });
  }

  record Change(double where, int cut, String put) {
    String on(String text) {
      int at = (int) (where * text.length());
      return text.substring(0, at) + put + text.substring(Math.min(text.length(), at + cut));
    }
  }

  private static void checkLaws(String text) {
    String once = format(text);
    assertThat(format(once)).as("formatting again changes nothing").isEqualTo(once);
    assertThat(words(once)).as("the same words").isEqualTo(words(text));
    assertThat(comments(once)).as("the same comments").isEqualTo(comments(text));
    Checked before = check(text);
    Checked after = check(once);
    assertThat(meaning(after)).as("the same findings").isEqualTo(meaning(before));
    if (before.run() != null && after.run() != null) {
      assertThat(sizes(after)).as("the same sizes").isEqualTo(sizes(before));
    }
  }

  private static Checked check(String text) {
    TreeMap<String, SyntaxTree> files = new TreeMap<>();
    for (Path file : examples()) {
      String path = EXAMPLES.relativize(file).toString().replace('\\', '/');
      files.put(path, SyntaxTree.parse(path, read(file)));
    }
    String path = text.contains("own vise") && !text.contains("setup one \"") ? "a.shop" : "a.plan";
    files.put(path, SyntaxTree.parse(path, text));
    return new Checker(StandardTables.builtIn())
        .check(new Workspace(files, java.util.Map.of()), path);
  }

  private static List<String> meaning(Checked checked) {
    return checked.findings().stream()
        .map(finding -> finding.rule() + " " + finding.severity() + " " + plain(finding.message()))
        .sorted()
        .toList();
  }

  /** Messages cite the text; blanks and spelling in a citation may differ. */
  private static String plain(String message) {
    return message.replaceAll("`[^`]*`", "`").replaceAll("\\s+", "");
  }

  private static List<String> sizes(Checked checked) {
    List<String> sizes = new ArrayList<>();
    checked
        .run()
        .setups()
        .forEach(
            setup ->
                sizes.add(
                    new java.util.TreeMap<>(java.util.Map.copyOf(ranges(setup.after())))
                        .toString()));
    checked
        .run()
        .cuts()
        .forEach(cut -> sizes.add(cut.passes() + " " + cut.removal() + " " + cut.meanForce()));
    return sizes;
  }

  private static java.util.Map<String, String> ranges(org.handwheel.work.Workpiece work) {
    java.util.Map<String, String> ranges = new TreeMap<>();
    work.sizes()
        .forEach((dimension, size) -> ranges.put(dimension.word(), size.range().toString()));
    work.faces()
        .forEach(
            (face, state) -> ranges.put(face.word(), state.condition() + "" + state.flatness()));
    return ranges;
  }

  /** All visible tokens but free commas, by kind and canonical text, with the line ends. */
  private static List<String> words(String text) {
    List<String> words = new ArrayList<>();
    for (Section section : SyntaxTree.parse("a.plan", text).sections()) {
      for (Token token : section.tokens()) {
        boolean counts =
            token.getChannel() == Token.DEFAULT_CHANNEL
                && token.getType() != Token.EOF
                && token.getType() != HandwheelLexer.COMMA;
        if (!counts) {
          continue;
        }
        boolean ends = token.getType() == HandwheelLexer.NL;
        if (ends && (words.isEmpty() || words.get(words.size() - 1).equals("NL"))) {
          continue; // empty lines do not count
        }
        String written = token.getText().toLowerCase(Locale.ROOT);
        words.add(ends ? "NL" : token.getType() + " " + spelled(token, written));
      }
    }
    if (!words.isEmpty() && words.get(words.size() - 1).equals("NL")) {
      words.remove(words.size() - 1);
    }
    return words;
  }

  private static String spelled(Token token, String written) {
    return switch (token.getType()) {
      case HandwheelLexer.X,
          HandwheelLexer.PM,
          HandwheelLexer.MINUS,
          HandwheelLexer.IN,
          HandwheelLexer.DEG,
          HandwheelLexer.DIA ->
          "";
      case HandwheelLexer.DEC -> written.startsWith(".") ? "0" + written : written;
      default -> written;
    };
  }

  private static List<String> comments(String text) {
    List<String> comments = new ArrayList<>();
    for (Section section : SyntaxTree.parse("a.plan", text).sections()) {
      for (Token token : section.tokens()) {
        if (token.getType() == HandwheelLexer.COMMENT
            || (token.getType() == HandwheelLexer.JOIN && token.getText().contains("#"))) {
          comments.add(token.getText().replaceAll("^\\\\", "").replaceAll("[#\\s]+", " ").strip());
        }
      }
    }
    return comments;
  }
}
