package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.handwheel.cli.CommandRun.Result;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code speeds} and {@code material}. */
final class CliSpeedsTests {
  @TempDir Path folder;

  @BeforeEach
  void fillTheShop() throws IOException {
    Samples.writeBearingBlock(folder);
  }

  /** 27.5 m/min, the middle of 21 to 34, over 16 mm: 547 rpm by n = 1000 v/(pi D). */
  @Test
  void givesWhatACutAsks() {
    Result result =
        run(
            "speeds",
            "steel-mild",
            "--cutter",
            "EM16",
            "--machine",
            "inch-mill",
            "--depth",
            "20mm",
            "--width",
            "0.5mm");
    assertThat(result.err()).isEmpty();
    assertThat(result.exitCode()).isZero();
    assertThat(result.out())
        .startsWith("mild steel, EM16, end mill 16.00 mm (0.6299 in), 4 teeth, high-speed steel\n")
        .contains("  cutting speed  21 to 34 m/min (68.9 to 112 ft/min) is usual\n")
        .contains("  spindle        500 rpm, the step of inch-mill next below the 547 rpm wanted;")
        .contains("  feed           0.075 mm (3 thou) a tooth\n")
        .contains("  table feed     150 mm/min (5.91 in/min)\n")
        .contains("  by hand, x     one turn in 1.02 s, 98.4 divisions a second\n")
        .contains("of the motor's 0.45 kW (0.603 hp)")
        .contains("  bends          at most 0.015 mm (0.6 thou) at the tip")
        .contains("Speeds: ", "Feeds: ", "Material: ", "common practice", "from memory")
        .contains("the machine maker's manual and local rules\ncome first");
    assertThat(result.outLines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void needsNoMachine() {
    Result result = run("speeds", "gunmetal-LG2", "--dia", "10 mm", "--teeth", "4");
    assertThat(result.out())
        .contains("  spindle        1432 rpm, for the middle of that;")
        .contains("  table feed     372 mm/min (14.7 in/min)\n")
        .doesNotContain("by hand", "power");
  }

  @Test
  void triesASpeedAndAFeed() {
    Result result =
        run("speeds", "steel-mild", "--dia", "1/2 in", "--speed", "500", "--feed", "2 thou");
    assertThat(result.out())
        .contains("  spindle        500 rpm, as given, 689 rpm wanted;")
        .contains("  feed           0.051 mm (2 thou) a tooth, as given;")
        .contains("  table feed     102 mm/min (4 in/min)\n");
  }

  /** 28.5 m/min, the middle of 24 to 33, over 0.201 in: 1777 rpm; 0.003 in of it a turn. */
  @Test
  void givesTheSpeedOfADrill() {
    Result result =
        run("speeds", "steel-mild", "--hole", "drill", "--dia", "no 7", "--feed", "3thou");
    assertThat(result.err()).isEmpty();
    assertThat(result.out())
        .startsWith("mild steel, drill 5.105 mm (0.201 in)\n")
        .contains("  cutting speed  24 to 33 m/min (78.7 to 108 ft/min) is usual\n")
        .contains("  spindle        1777 rpm, for the middle of that;")
        .contains("  feed           0.076 mm (3 thou) a turn, as given; usual is")
        .contains("  down           135 mm/min (5.33 in/min)\n")
        .contains("Drilling speeds: ", "from memory", "Drill feeds: ");
    assertThat(result.outLines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void givesTheTurnsOfATap() {
    Result result =
        run("speeds", "gunmetal-LG2", "--hole", "tap", "--dia", "BA 2", "--depth", "8.1mm");
    assertThat(result.out())
        .startsWith("leaded gunmetal LG2 (85-5-5-5), tap ")
        .contains("  feed           0.81 mm (31.9 thou) a turn, its pitch\n")
        .contains("  turns          10 to depth\n", "Under power only with a tapping attachment");
  }

  @Test
  void givesAReamerAtAMachineAsJson() {
    Result result =
        run(
            "speeds",
            "steel-mild",
            "--hole",
            "ream",
            "--dia",
            "10mm",
            "--machine",
            "inch-mill",
            "--depth",
            "20mm",
            "--format",
            "json");
    JsonObject hole =
        JsonParser.parseString(result.out())
            .getAsJsonObject()
            .getAsJsonArray("holes")
            .get(0)
            .getAsJsonObject();
    assertThat(hole.get("operation").getAsString()).isEqualTo("ream");
    assertThat(hole.get("speedFrom").getAsString()).isEqualTo("step");
    double rpm = hole.get("rpm").getAsDouble();
    double perTurn = hole.getAsJsonObject("perTurn").get("mm").getAsDouble();
    assertThat(hole.get("seconds").getAsDouble())
        .isCloseTo(60 * 20 / (rpm * perTurn), within(1e-3));
    assertThat(hole.get("zSecondsPerTurn").getAsDouble()).isGreaterThanOrEqualTo(0.7);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "drill|give the tool's size with --dia|",
        "drill|--dia: thick: there is no value|thick",
        "tap|--dia: no thread 'M6.5x9' is known|M6.5x9",
        "dril|Invalid value for option '--hole'|8mm"
      })
  void refusesAToolItDoesNotKnow(String verb, String words, String dia) {
    List<String> arguments =
        dia == null
            ? List.of("speeds", "steel-mild", "--hole", verb)
            : List.of("speeds", "steel-mild", "--hole", verb, "--dia", dia);
    Result result = run(arguments.toArray(String[]::new));
    assertThat(result.exitCode()).isEqualTo(2);
    assertThat(result.err()).contains(words);
    assertThat(result.err()).doesNotContain("Exception");
  }

  @Test
  void givesEveryCutOfAPlan() {
    Result text = run("speeds", "--plan", "bearing-block.plan");
    assertThat(text.exitCode()).isZero();
    assertThat(text.out())
        .startsWith("line 39: clean top at 0.4")
        .contains("as fast as a hand keeps up", "the step of inch-mill")
        .doesNotContain("too fast to keep up", "findings");
    assertThat(text.outLines()).allMatch(line -> line.length() <= 80);
    JsonObject root =
        JsonParser.parseString(
                run("speeds", "--plan", "bearing-block.plan", "--format", "json").out())
            .getAsJsonObject();
    JsonArray cuts = root.getAsJsonArray("cuts");
    int holes = root.getAsJsonArray("holes").size();
    assertThat(holes).isGreaterThan(4);
    assertThat(cuts.size() + holes)
        .isEqualTo((int) text.out().lines().filter(l -> l.startsWith("line ")).count())
        .isGreaterThan(5);
    JsonObject first = cuts.get(0).getAsJsonObject();
    assertThat(first.get("line").getAsInt()).isEqualTo(39);
    double rpm = first.getAsJsonObject("spindle").get("rpm").getAsDouble();
    double perTooth =
        first.getAsJsonObject("feed").getAsJsonObject("perTooth").get("mm").getAsDouble();
    assertThat(rpm).isEqualTo(930);
    assertThat(first.get("tableFeedMmPerMin").getAsDouble())
        .isCloseTo(rpm * perTooth * 4, within(0.001));
    assertThat(root.get("caution").getAsString()).contains("manual");
  }

  @Test
  void aPlanOfANewerLevelGivesNoNumbers() throws IOException {
    Samples.write(folder, "new.plan", "language 99\nplan \"Later\"\n  units mm\n");
    assertRefused(
        "new.plan: it is written in a newer level of the language", "speeds", "--plan", "new.plan");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "speeds | name a material, or a plan with --plan",
        "speeds steel-mild | give the cutter's diameter with --dia, or a cutter with --cutter",
        "speeds steel-mld --dia 10mm | no material 'steel-mld' is known; did you mean 'steel-mild'?",
        "speeds cheese --dia 10mm | no material 'cheese' is known; `handwheel material` lists them, --shop adds the shop's own",
        "speeds steel-mild --dia 10 | --dia: in which unit? write `10 mm` or `10 in`",
        "speeds steel-mild --dia 900mm | --dia: give between 0.10 mm (3.9 thou) and 500.00 mm (19.685 in)",
        "speeds steel-mild --dia 10mm --teeth 0 | --teeth: a cutter has between 1 and 100 teeth",
        "speeds steel-mild --dia 10mm --speed 0 | --speed: a spindle turns at over 0 and up to 200000 rpm",
        "speeds steel-mild --dia 10mm --depth 3mm | a cut has both a --depth and a --width",
        "speeds steel-mild --dia 10mm --depth 3mm --width 11mm | --width: a cut is at most as wide as the cutter, 10.00 mm (0.3937 in)",
        "speeds steel-mild --dia 10mm --cutter EM16 | give --cutter, or --dia and the rest, not both",
        "speeds steel-mild --dia 10mm --axis w | --axis: the axes are x, y and z",
        "speeds steel-mild --cutter EM17 | there is no cutter 'EM17'; did you mean 'EM10'?",
        "speeds steel-mild --dia 10mm --machine lathe --shop none.shop | none.shop: there is no such file",
        "speeds --plan none.plan | none.plan: there is no such file",
        "speeds --plan shop/inch-mill.shop | shop/inch-mill.shop: it is no plan that can be worked through",
        "speeds steel-mild --plan bearing-block.plan | give --plan alone: a plan says the rest itself",
        "material cheese | no material 'cheese' is known; `handwheel material` lists them, --shop adds the shop's own"
      })
  void refusesInOneLine(String arguments, String line) {
    assertRefused(line, arguments.split(" ", -1));
  }

  @Test
  void describesAMaterial() {
    Result result = run("material", "Gunmetal");
    assertThat(result.out())
        .startsWith("gunmetal-LG2: leaded gunmetal LG2 (85-5-5-5)\n")
        .contains("  density        8800 kg/m3 (0.318 lb/in3)\n")
        .contains("  with HSS       30 to 60 m/min (98.4 to 197 ft/min)\n")
        .contains("  mind           ", "from memory", "starting points");
    assertThat(result.outLines()).allMatch(line -> line.length() <= 80);
    JsonObject json =
        JsonParser.parseString(run("material", "copper", "--format", "json").out())
            .getAsJsonObject();
    assertThat(json.get("isoGroup").getAsString()).isEqualTo("N");
    assertThat(json.get("densityKgPerM3").getAsInt()).isEqualTo(8930);
  }

  @Test
  void theShopsOwnMaterialComesFirst() throws IOException {
    Samples.write(
        folder,
        "shop/own.shop",
        """
        language 1
        shop "Own"
        own material liner
          like: gunmetal-LG2
          speed-hss: 20, 30 m/min
        own material whalebone
          density: 1300
        """);
    assertThat(run("material", "liner", "--shop", "shop/own.shop").out())
        .startsWith("liner: the shop's own, like leaded gunmetal LG2 (85-5-5-5)\n")
        .contains("  with HSS       20 to 30 m/min (65.6 to 98.4 ft/min)\n")
        .contains("  drills         20 to 30 m/min (65.6 to 98.4 ft/min)\n")
        .contains("Speeds: the shop file.", "Drilling speeds: the shop file.");
    // 25 m/min, the middle, over 8 mm
    assertThat(
            run("speeds", "liner", "--hole", "drill", "--dia", "8mm", "--shop", "shop/own.shop")
                .out())
        .contains("  spindle        995 rpm, for the middle of that;")
        .contains("Drilling speeds: the shop file.");
    assertThat(run("material", "--shop", "shop/own.shop").outLines())
        .element(1)
        .asString()
        .startsWith("whalebone ");
    assertThat(run("speeds", "whalebone", "--dia", "6mm", "--shop", "shop/own.shop").out())
        .contains("  cutting speed  not known for this material\n")
        .contains("  feed           not known for this material\n")
        .doesNotContain("spindle  ");
  }

  @Test
  void listsAllMaterials() {
    List<String> lines = run("material").outLines();
    assertThat(lines).hasSizeGreaterThan(20).allMatch(line -> line.length() <= 80);
    assertThat(lines).anyMatch(line -> line.matches("stainless-316 +stainless 316"));
  }

  @Test
  void readsWellOnAnOldConsoleAndANarrowOne() {
    Result result =
        CommandRun.in(folder)
            .charset(StandardCharsets.US_ASCII)
            .onTerminal(46)
            .run("speeds", "steel-mild", "--dia", "10mm", "--machine", "inch-mill");
    assertThat(result.out()).matches("(?s)\\p{ASCII}+");
    assertThat(result.outLines()).allMatch(line -> line.length() <= 46);
  }

  private void assertRefused(String line, String... arguments) {
    assertThat(run(arguments)).isEqualTo(new Result(2, "", "handwheel: " + line + "\n"));
  }

  private Result run(String... arguments) {
    return CommandRun.in(folder).run(arguments);
  }
}
