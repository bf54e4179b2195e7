package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.examples.ExampleFolder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The steps round the examples' outlines. */
final class CliStepsTests {
  @ParameterizedTest
  @ValueSource(strings = {"hand-hole-door.plan", "boiler-badge.plan"})
  void tablesFitAScreenAndStayWithinTheTolerance(String plan) {
    Result result = CommandRun.in(ExampleFolder.PATH).run("steps", plan);
    assertThat(result.err()).isEmpty();
    assertThat(result.exitCode()).isZero();
    assertThat(result.outLines()).allMatch(line -> line.length() <= 80);
    assertThat(result.out()).contains("steps", "bound", "to be filed away");
    JsonObject json =
        JsonParser.parseString(
                CommandRun.in(ExampleFolder.PATH).run("steps", plan, "--format", "json").out())
            .getAsJsonObject();
    assertThat(json.getAsJsonArray("cuts")).hasSize(2);
    JsonObject finish = json.getAsJsonArray("cuts").get(1).getAsJsonObject();
    // The drawings' tolerance is 0.15 either way.
    assertThat(finish.getAsJsonObject("bound").get("mm").getAsDouble()).isBetween(0.0, 0.15);
    assertThat(finish.getAsJsonArray("stations")).hasSize(finish.get("steps").getAsInt() + 1);
  }

  /** A number from zero is worth nothing without the way it grows. */
  @Test
  void stopsFromZeroSayWhichWayTheyGrow() {
    String out =
        String.join(
            " ",
            CommandRun.in(ExampleFolder.PATH)
                .run("steps", "engine-bed-packer.plan")
                .out()
                .split("\\s+"));
    assertThat(out)
        .containsPattern(
            "zero of X the left edge; grows as the cutter goes right: table left, (counter-)?clockwise");
  }

  @Test
  void oneSetupAndOneThatIsNotThere() {
    assertThat(
            CommandRun.in(ExampleFolder.PATH).run("steps", "hand-hole-door.plan", "top-face").out())
        .contains("no slot, pocket or outline");
    Result result =
        CommandRun.in(ExampleFolder.PATH).run("steps", "hand-hole-door.plan", "nowhere");
    assertThat(result.exitCode()).isEqualTo(Handwheel.EXIT_TROUBLE);
    assertThat(result.errLines()).hasSize(1);
  }
}
