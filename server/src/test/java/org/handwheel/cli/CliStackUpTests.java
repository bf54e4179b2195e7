package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.handwheel.cli.CommandRun.Result;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code stackup}. Sums by hand; H7 and class m as in ISO 286-2 and ISO 2768-1, from memory. */
final class CliStackUpTests {
  @TempDir Path folder;

  private Result run(String... arguments) {
    return CommandRun.in(folder).run(arguments);
  }

  private JsonObject json(String... arguments) {
    Result result = run(arguments);
    assertThat(result.err()).isEmpty();
    assertThat(result.exitCode()).isZero();
    return JsonParser.parseString(result.out()).getAsJsonObject();
  }

  private static double mm(JsonObject root, String interval, String end) {
    return root.getAsJsonObject(interval).getAsJsonObject(end).get("mm").getAsDouble();
  }

  /** 47.9..48.1, less 12.000..12.018 (H7), less 19.95..20: 15.882 to 16.15. */
  @Test
  void addsUpSizesThereAndBack() {
    JsonObject root = json("stackup", "48 +-0.1", "-12 H7", "-20 +0/-0.05", "--format", "json");
    assertThat(root.getAsJsonObject("nominal").get("mm").getAsDouble()).isEqualTo(16);
    assertThat(mm(root, "worstCase", "low")).isEqualTo(15.882);
    assertThat(mm(root, "worstCase", "high")).isEqualTo(16.15);
    // Halves 0.1, 0.009, 0.025: the root of 0.01 + 0.000081 + 0.000625.
    double spread = Math.sqrt(0.010706);
    assertThat(mm(root, "likely", "low")).isCloseTo(16.016 - spread, within(1e-8));
    assertThat(mm(root, "likely", "high")).isCloseTo(16.016 + spread, within(1e-8));
  }

  @Test
  void aBareToleranceHasTheUnitOfItsSize() {
    JsonObject root = json("stackup", "2 in +-0.005", "-1/2 in +-0.002", "--format", "json");
    assertThat(root.getAsJsonObject("worstCase").getAsJsonObject("high").get("in").getAsDouble())
        .isEqualTo(1.507);
  }

  @Test
  void sizesWithoutAToleranceTakeTheGeneralOne() {
    JsonObject root = json("stackup", "48", "-12", "--general", "m", "--format", "json");
    assertThat(mm(root, "worstCase", "low")).isEqualTo(35.5);
    assertThat(mm(root, "worstCase", "high")).isEqualTo(36.5);
  }

  @Test
  void tellsPeopleWhatItSupposes() {
    Result result = run("stackup", "48 +-0.1", "-12 H7");
    assertThat(result.exitCode()).isZero();
    assertThat(result.out())
        .startsWith("a chain of 2 sizes\n")
        .contains("at worst", "35.882..36.10 mm", "single part");
    assertThat(result.outLines()).allMatch(line -> line.length() <= 80);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "48         | 48: no tolerance",
        "48 +-x     | x: ",
        "48 +--0.1  | 48 +--0.1: a tolerance",
        "rubbish    | rubbish: ",
        "12 Q7      | 12 Q7: the tables have no Q7",
        "--fromat   | "
      })
  void refusesWhatIsNoSize(String size, String start) {
    Result result = run("stackup", size);
    assertThat(result.exitCode()).isEqualTo(2);
    assertThat(result.out()).isEmpty();
    assertThat(result.err()).contains(start == null ? "fromat" : start.strip());
  }

  /** 56 +-0.1 less 28 +-0.1 less half of 14 H7, 7 to 7.009: 20.791 to 21.2. */
  @Test
  void addsUpTheDrawingOfAPlan() throws IOException {
    Samples.writeBearingBlock(folder);
    String[] asked = {
      "stackup", "--plan", "bearing-block.plan", "--from", "right", "--to", "right of journal"
    };
    Result text = run(asked);
    assertThat(text.out())
        .startsWith("right to right of journal, along the length\n")
        .contains("(ISO 286, line 19)", "as drawn       21.00 mm", "single part")
        .contains("- half dia of journal  7.00..7.009 mm");
    assertThat(text.outLines()).allMatch(line -> line.length() <= 80);
    JsonObject root =
        json(Stream.concat(Stream.of(asked), Stream.of("--format", "json")).toArray(String[]::new));
    assertThat(mm(root, "worstCase", "low")).isEqualTo(20.791);
    assertThat(mm(root, "worstCase", "high")).isEqualTo(21.2);
    double spread = Math.sqrt(0.1 * 0.1 + 0.1 * 0.1 + 0.0045 * 0.0045);
    assertThat(mm(root, "likely", "high")).isCloseTo(20.9955 + spread, within(1e-8));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "left|fot|there is no point 'fot' on the drawing; did you mean 'foot'?",
        "foot|journal|say --along length or width",
        "left|top|have no direction in common"
      })
  void refusesPointsThatAreNotApart(String from, String to, String words) throws IOException {
    Samples.writeBearingBlock(folder);
    Result result = run("stackup", "--plan", "bearing-block.plan", "--from", from, "--to", to);
    assertThat(result.exitCode()).isEqualTo(2);
    assertThat(result.err()).contains(words);
  }

  @Test
  void refusesHalfAQuestion() {
    assertThat(run("stackup").err()).contains("name the sizes, or a plan with --plan");
    assertThat(run("stackup", "48 +-1", "--from", "left").err()).contains("name it with --plan");
    assertThat(run("stackup", "--plan", "no.plan", "--from", "left", "--to", "right").exitCode())
        .isEqualTo(2);
  }
}
