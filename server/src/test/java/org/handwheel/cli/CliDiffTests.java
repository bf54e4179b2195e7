package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.examples.OtherUnit;
import org.handwheel.plan.format.Formatter;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What {@code handwheel diff} says of two files or folders. */
final class CliDiffTests {
  @TempDir Path folder;

  @BeforeEach
  void bearingBlock() throws IOException {
    for (String shop : List.of("shop/inch-mill.shop", "shop/metric-mill.shop")) {
      Samples.write(folder, shop, Samples.example(shop));
    }
    write("a.plan", plan());
  }

  private static String plan() throws IOException {
    return Samples.example("bearing-block.plan");
  }

  private void write(String name, String text) throws IOException {
    Samples.write(folder, name, text);
  }

  private Result diff(String... more) {
    List<String> args = new ArrayList<>(List.of("diff", "a.plan", "b.plan"));
    args.addAll(List.of(more));
    return CommandRun.in(folder).run(args.toArray(String[]::new));
  }

  private Result changed(String from, String to) throws IOException {
    assertThat(plan()).contains(from);
    write("b.plan", plan().replace(from, to));
    return diff();
  }

  private static void assertNoChange(Result result) {
    assertThat(result.err()).isEmpty();
    assertThat(result.out()).isEqualTo("no change\n");
    assertThat(result.exitCode()).isZero();
  }

  // ---- What is no change

  static Stream<String> examples() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("..", "examples"))) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.endsWith(".plan"))
          .sorted()
          .toList()
          .stream();
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void convertedToTheOtherUnitAndLaidOutAnewThereIsNoChange(String example) throws IOException {
    String text = Samples.example(example);
    String converted = OtherUnit.rewrite(text);
    assertThat(converted).isNotEqualTo(text);
    String uncommented =
        converted.replaceAll("(?m)[ ]*#(?! *ignore).*$", "").replaceAll("(?m)^ +", "      ");
    write("a.plan", text);
    write("b.plan", "# converted\n\n" + uncommented);
    assertNoChange(diff());
    assertThat(diff("--format", "markdown").out()).isEqualTo("## Plans: no change\n");
    write("b.plan", Formatter.format(SyntaxTree.parse("b.plan", uncommented)));
    assertNoChange(diff());
  }

  @Test
  void aLengthWrittenAsAFractionIsNoChange() throws IOException {
    write("a.plan", plan().replace("paper 0.05", "paper 1.5875"));
    write("b.plan", plan().replace("paper 0.05", "paper 1/16 in"));
    assertNoChange(diff());
  }

  @Test
  void theOrderOfOwnedThingsIsNoChange() throws IOException {
    write(
        "a.shop", "shop\n  units mm\nown cutter A\n  kind endmill\nown cutter B\n  kind endmill\n");
    write(
        "b.shop", "shop\n  units mm\nown cutter B\n  kind endmill\nown cutter A\n  kind endmill\n");
    assertNoChange(CommandRun.in(folder).run("diff", "a.shop", "b.shop"));
  }

  // ---- What is one

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "width 30.00 +0/-0.05|width 30.00 +0/-0.08|limits: 29.95..30.00",
        "length 56.00|length 56.50|size",
        "cutter EM16|cutter FC40|cutter",
        "rough front to width leaving 0.25, pass 0.5|rough front to width leaving 0.25, pass 0.4"
            + "|depth per pass: 0.5",
        "rough bottom to height leaving 0.25|rough bottom to height leaving 0.2|leaving: 0.25",
        "  hold in V80, up back, fixed top, on soft-strip 1.6, bar 8 at mid-grip"
            + "|  hold in V80, up back, fixed top, on pair P6x10, bar 8 at mid-grip|Setup two",
        "material gunmetal-LG2|material cast-iron|material",
        "conventional\\n  deburr all|climb\\n  deburr all|climb",
        "ream journal with R14|ream journal with R8|R8",
        "rev 2|rev 3|rev 3"
      })
  void isSaidWithWhatItWas(String from, String to, String said) throws IOException {
    Result result = changed(from.replace("\\n", "\n"), to.replace("\\n", "\n"));
    assertThat(result.exitCode()).isEqualTo(1);
    assertThat(result.err()).isEmpty();
    assertThat(result.out()).contains(said).contains("1 file is different");
  }

  @Test
  void theOrderOfTheFacesIsSaid() throws IOException {
    String plan = plan();
    int two = plan.indexOf("setup two");
    int three = plan.indexOf("setup three");
    int four = plan.indexOf("setup four");
    write(
        "b.plan",
        plan.substring(0, two)
            + plan.substring(three, four)
            + plan.substring(two, three)
            + plan.substring(four));
    String out = diff().out();
    assertThat(out).contains("faces are cut in this order").contains("to place");
    assertThat(out).contains("Findings");
  }

  @Test
  void aFindingThatAppearsIsToldWithItsLine() throws IOException {
    Result result = changed("finish bottom to height", "finish bottom to 20.80");
    assertThat(result.out().replaceAll("\\s+", " "))
        .contains("+ error[overcut] line 71: this goes 0.15 mm (5.9 thou) below the least height");
    Result back = CommandRun.in(folder).run("diff", "b.plan", "a.plan");
    assertThat(back.out()).contains("- error[overcut] line 71").contains("1 finding vanished");
  }

  @Test
  void linesThatOnlyMoveGiveNoFindings() throws IOException {
    String mistakes = Samples.example("mistakes/four-in-one.plan").replace("../shop", "shop");
    write("a.plan", mistakes);
    write("b.plan", mistakes.replace("part\n", "# a note\n\n\npart\n"));
    assertNoChange(diff());
  }

  @Test
  void aShopFileOfOneSideCountsForItsPlans() throws IOException {
    for (String side : List.of("before", "after")) {
      Samples.write(folder, side + "/bearing-block.plan", plan());
      Samples.write(folder, side + "/shop/inch-mill.shop", Samples.example("shop/inch-mill.shop"));
    }
    String shop = Samples.example("shop/inch-mill.shop");
    Result same = CommandRun.in(folder).run("diff", "before", "after");
    assertNoChange(same);
    Samples.write(
        folder, "after/shop/inch-mill.shop", shop.replace("own cutter EM16 ", "own cutter EM15 "));
    Result result = CommandRun.in(folder).run("diff", "before", "after", "--format", "json");
    assertThat(result.exitCode()).isEqualTo(1);
    JsonArray files =
        JsonParser.parseString(result.out()).getAsJsonObject().getAsJsonArray("files");
    List<String> names = new ArrayList<>();
    for (JsonElement each : files) {
      names.add(each.getAsJsonObject().get("after").getAsString());
    }
    assertThat(names).containsExactly("bearing-block.plan", "shop/inch-mill.shop");
    JsonObject plan = files.get(0).getAsJsonObject();
    assertThat(plan.getAsJsonArray("findings").size()).isPositive();
  }

  @Test
  void filesThatComeAndGoAreNamed() throws IOException {
    write("before/pin.plan", Samples.CLEAN);
    write("before/link.plan", Samples.UNUSED);
    write(
        "after/crank-pin.plan",
        Samples.CLEAN.replace("\n", "  # renamed\n").replace("  # renamed\n  units", "\n  units"));
    write("after/cover.plan", Samples.IGNORING);
    Result result = CommandRun.in(folder).run("diff", "before", "after");
    assertThat(result.out())
        .contains("cover.plan is new: Valve chest cover")
        .contains("link.plan is gone: Stuffing box flange");
  }

  // ---- How it is printed

  @ParameterizedTest
  @ValueSource(strings = {"text", "markdown", "json"})
  void theSameFilesGiveTheSameBytes(String format) throws IOException {
    changed("finish bottom to height", "finish bottom to 20.80");
    assertThat(diff("--format", format).out()).isEqualTo(diff("--format", format).out());
  }

  /** The review in README.md is what the command prints for that change of the example. */
  @Test
  void theReviewInTheReadmeIsReal() throws IOException {
    write("before/bearing-block.plan", plan());
    write("before/shop/inch-mill.shop", Samples.example("shop/inch-mill.shop"));
    write(
        "after/bearing-block.plan",
        plan()
            .replace(
                "rough bottom to height leaving 0.25, pass 0.5",
                "rough bottom to height leaving 0.25, pass 1.0")
            .replace("finish bottom to height", "finish bottom to 20.90"));
    write("after/shop/inch-mill.shop", Samples.example("shop/inch-mill.shop"));
    String review =
        CommandRun.in(folder).run("diff", "before", "after", "--format", "markdown").out();
    String quoted = review.replaceAll("(?m)^", "> ").replaceAll("(?m)^> $", ">").strip();
    assertThat(review).contains("error `overcut`");
    assertThat(Files.readString(Path.of("..", "README.md")))
        .contains(quoted.replaceAll("\n>$", ""));
  }

  @Test
  void textFitsTheScreen() throws IOException {
    changed("finish bottom to height", "finish bottom to 20.80");
    Result result =
        CommandRun.in(folder).onTerminal(80).with("NO_COLOR", "1").run("diff", "a.plan", "b.plan");
    assertThat(result.outLines()).allSatisfy(line -> assertThat(line.length()).isLessThan(81));
  }

  @ParameterizedTest
  @ValueSource(strings = {"a.plan", "a.plan b.plan c.plan", "shop a.plan", "a.plan none.plan"})
  void wrongUseIsSaidInOneLine(String names) {
    List<String> args = new ArrayList<>(List.of("diff"));
    args.addAll(List.of(names.split(" ")));
    Result result = CommandRun.in(folder).run(args.toArray(String[]::new));
    assertThat(result.exitCode()).isEqualTo(2);
    assertThat(result.out()).isEmpty();
    assertThat(result.errLines()).hasSizeLessThan(3);
  }
}
