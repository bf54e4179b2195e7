package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.handwheel.cli.CommandRun.Result;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code dial}: lengths in both units and on dials. */
final class CliDialTests {
  @TempDir Path folder;

  @BeforeEach
  void fillTheShop() throws IOException {
    Samples.write(folder, "shop/inch-mill.shop", Samples.example("shop/inch-mill.shop"));
  }

  /**
   * Inches and millimetres: 1 in = 25.4 mm exactly (NIST Special Publication 811, appendix B.8).
   * 1.8 mm is about 70 thou and 1.5 mm about 60 (common practice, no source). Drill and rule sizes
   * in 64ths are exact binary fractions.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "25.4mm   | 25.4mm = 25.40 mm (1.000 in)       | 1 in, exactly",
        "1in      | 1in = 25.40 mm (1.000 in)          | 1 in, exactly",
        "1-3/8 in | 1-3/8 in = 34.925 mm (1.375 in)    | 1-3/8 in, exactly",
        "1/8 in   | 1/8 in = 3.175 mm (0.125 in)       | 1/8 in, exactly",
        "1.8 mm   | 1.8 mm = 1.80 mm (70.9 thou)       | 5/64 in, 0.184 mm (7.3 thou) more",
        "1.5 mm   | 1.5 mm = 1.50 mm (59.1 thou)       | 1/16 in, 0.088 mm (3.4 thou) more",
        "10 thou  | 10 thou = 0.254 mm (10 thou)       | 1/64 in, 0.143 mm (5.6 thou) more",
        "7.5mm    | 7.5mm = 7.50 mm (0.2953 in)        | 19/64 in, 0.041 mm (1.6 thou) more",
        "20 mm    | 20 mm = 20.00 mm (0.7874 in)       | 25/32 in, 0.156 mm (6.2 thou) less"
      })
  void convertsUnits(String length, String both, String nearest) {
    Result result = run("dial", length);
    assertThat(result).isEqualTo(new Result(0, both + "\n  nearest 64th   " + nearest + "\n", ""));
  }

  @Test
  void takesUnitsAsArgumentsOfTheirOwn() {
    assertThat(run("dial", "10", "thou", "1/8", "in").out())
        .isEqualTo(run("dial", "10 thou", "1/8 in").out());
  }

  @Test
  void takesBareNumbersInTheUnitsSaid() {
    assertThat(run("dial", "2", "--units", "in").out()).startsWith("2 = 50.80 mm (2.000 in)");
    assertThat(run("dial", "2", "--units", "mm").out()).startsWith("2 = 2.00 mm (78.7 thou)");
    assertRefused("2: in which unit? write `2 mm` or `2 in`, or --units", "dial", "2");
  }

  @Test
  void countsTurnsAndDivisionsOfAMachine() {
    Result result = run("dial", "1-3/8 in", "--machine", "INCH-MILL", "--axis", "y");
    assertThat(result.out())
        .isEqualTo(
            """
            1-3/8 in = 34.925 mm (1.375 in)
              nearest 64th   1-3/8 in, exactly
              dial y         13 turns + 75 divisions, exactly

            dial y: 2.54 mm (0.100 in) a turn, 100 divisions of 0.025 mm (1 thou)
              y              clockwise: cutter toward you (table away from you)
              y              counter-clockwise: cutter away from you (table toward you)
              y              backlash 0.203 mm (8 thou)
              Come to every setting turning the same way, so that the backlash is taken up.
            """);
  }

  @Test
  void putsAxesWithTheSameScrewTogether() {
    assertThat(run("dial", "1mm", "--machine", "inch-mill").out())
        .contains("  dial x y z     0 turns + 39 divisions, 0.009 mm (0.4 thou) less\n")
        .contains("  x              clockwise: cutter right (table left)\n")
        .contains("  z              clockwise: cutter down\n");
  }

  @Test
  void aKneeGoesAgainstTheCutter() throws IOException {
    Samples.write(
        folder,
        "knee.shop",
        """
        language 1
        shop "Boiler house"
          units mm
        own machine knee-mill
          lead-z: 2.5
          divisions-z: 62.5
          clockwise-z: up
          z-moves: knee
        """);
    assertThat(run("dial", "3mm", "--shop", "knee.shop", "--machine", "knee-mill").out())
        .contains("  dial z         1 turn + 12.5 divisions, exactly\n")
        .contains("62.5 divisions of 0.04 mm (1.6 thou)\n")
        .contains("  z              clockwise: cutter down (knee up)\n")
        .contains("  z              counter-clockwise: cutter up (knee down)\n");
  }

  /** 3 mm / 3.175 mm x 125 = 118.11 divisions; 118 are 2.9972 mm. */
  @Test
  void takesAScrewByItsLead() {
    String expected =
        """
        3mm = 3.00 mm (0.1181 in)
          nearest 64th   1/8 in, 0.175 mm (6.9 thou) more
          dial           0 turns + 118 divisions, 0.003 mm (0.1 thou) less

        dial: 3.175 mm (0.125 in) a turn, 125 divisions of 0.025 mm (1 thou)
        """;
    assertThat(run("dial", "3mm", "--lead", "1/8 in", "--divisions", "125").out())
        .isEqualTo(expected);
    assertThat(run("dial", "3mm", "--pitch=1/8 in", "--divisions=125").out()).isEqualTo(expected);
  }

  @Test
  void givesJson() {
    Result result = run("dial", "3mm", "--machine", "inch-mill", "--axis", "x", "--format", "json");
    JsonObject root = JsonParser.parseString(result.out()).getAsJsonObject();
    JsonObject length = root.getAsJsonArray("lengths").get(0).getAsJsonObject();
    assertThat(length.getAsJsonObject("length").get("mm").getAsBigDecimal())
        .isEqualByComparingTo("3");
    JsonObject setting = length.getAsJsonArray("settings").get(0).getAsJsonObject();
    assertThat(setting.get("turns").getAsInt()).isEqualTo(1);
    assertThat(setting.get("reading").getAsInt()).isEqualTo(18);
    assertThat(setting.get("divisions").getAsInt()).isEqualTo(118);
    assertThat(setting.getAsJsonObject("error").get("mm").getAsBigDecimal())
        .isEqualByComparingTo("-0.0028");
    JsonObject dial = root.getAsJsonArray("dials").get(0).getAsJsonObject();
    assertThat(dial.get("clockwiseMoves").getAsString()).isEqualTo("left");
  }

  @Test
  void printsForAnOldConsole() {
    Result result =
        CommandRun.in(folder)
            .charset(StandardCharsets.US_ASCII)
            .run("dial", "10 \u00b5m", "--units", "mm");
    assertThat(result.out()).startsWith("10 um = 0.01 mm (0.4 thou)\n");
  }

  @Test
  void staysInTheWidth() {
    assertThat(run("dial", "1/8 in", "--machine", "inch-mill").outLines())
        .allMatch(line -> TextWidth.of(line) <= 80);
    assertThat(
            CommandRun.in(folder)
                .onTerminal(50)
                .run("dial", "3mm", "--machine=inch-mill")
                .outLines())
        .allMatch(line -> TextWidth.of(line) <= 50);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "long           | there is no value `long`",
        "19,05 mm       | write a decimal point, not a comma: 19.05",
        "1/0 in         | division by zero",
        "45 deg         | expected a length, got an angle",
        "'1 # mm'       | this is not a length",
        "''             | this is not a length",
        "-- -5mm        | give the length without a sign",
        "101 m          | ",
        "1000000 mm     | no dial counts further than 100 m",
        "9e99 mm        | ",
        "99999999999999999999 mm | this length is larger than 10 km"
      })
  void refusesWhatIsNoLength(String length, String problem) {
    String[] args =
        length.startsWith("-- ")
            ? new String[] {"dial", "--", length.substring(3)}
            : new String[] {"dial", length};
    Result result = run(args);
    assertThat(result.exitCode()).isEqualTo(2);
    assertThat(result.out()).isEmpty();
    assertThat(result.errLines())
        .singleElement()
        .asString()
        .contains(problem == null ? "" : problem);
  }

  @Test
  void refusesWrongCombinations() {
    assertRefused(
        "there is no machine 'inch-mil'; did you mean 'inch-mill'?",
        "dial",
        "1in",
        "--machine",
        "inch-mil");
    assertRefused(
        "there is no machine 'jig-borer'; there is inch-mill",
        "dial",
        "1in",
        "--machine",
        "jig-borer");
    assertRefused(
        "no.shop: there is no such file",
        "dial",
        "1in",
        "--machine",
        "inch-mill",
        "--shop",
        "no.shop");
    assertRefused("a dial needs both --lead and --divisions", "dial", "1in", "--lead", "1mm");
    assertRefused("a dial needs both --lead and --divisions", "dial", "1in", "--divisions", "100");
    assertRefused("name the machine with --machine", "dial", "1in", "--axis", "x");
    assertRefused(
        "give --machine, or --lead and --divisions, not both",
        "dial",
        "1in",
        "--machine",
        "inch-mill",
        "--lead",
        "1mm");
    assertRefused(
        "--axis: the axes are x, y and z", "dial", "1in", "--machine", "inch-mill", "--axis", "a");
    assertRefused(
        "--divisions: none is not a number such as 100 or 62.5",
        "dial",
        "1in",
        "--lead",
        "1mm",
        "--divisions",
        "none");
    assertRefused(
        "--divisions: a dial has between 1 and 100000 divisions",
        "dial",
        "1in",
        "--lead",
        "1mm",
        "--divisions",
        "0");
    assertRefused(
        "--lead: a turn is between 0.001 mm and 1 m",
        "dial",
        "1in",
        "--lead",
        "0mm",
        "--divisions",
        "100");
  }

  @Test
  void saysWhenNoShopHasAMachine() throws IOException {
    Path empty = Samples.write(folder, "empty/x.shop", "shop\n").getParent();
    Result result = CommandRun.in(empty).run("dial", "1in", "--machine", "mill");
    assertThat(result)
        .isEqualTo(
            new Result(
                2, "", "handwheel: no shop file here has a machine; name one with --shop\n"));
  }

  private void assertRefused(String line, String... args) {
    assertThat(run(args)).isEqualTo(new Result(2, "", "handwheel: " + line + "\n"));
  }

  private Result run(String... args) {
    return CommandRun.in(folder).run(args);
  }
}
