package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.examples.ExampleFolder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The coordinates of the examples' holes. */
final class CliCoordinatesTests {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "boiler-flange.plan",
        "valve-chest-cover.plan",
        "bearing-block.plan",
        "boiler-badge.plan",
        "stern-gland.plan",
        "boiler-cradle-foot.plan"
      })
  void tablesFitAScreen(String plan) {
    Result result = CommandRun.in(ExampleFolder.PATH).run("coordinates", plan);
    assertThat(result.err()).isEmpty();
    assertThat(result.exitCode()).isZero();
    assertThat(result.outLines()).allMatch(line -> line.length() <= 80);
    assertThat(result.out()).contains("From zero", "From the hole before");
  }

  @Test
  void theFlangeInJson() {
    String out =
        CommandRun.in(ExampleFolder.PATH)
            .run("coordinates", "boiler-flange.plan", "bores", "--format", "json")
            .out();
    JsonObject table =
        JsonParser.parseString(out)
            .getAsJsonObject()
            .getAsJsonArray("tables")
            .get(0)
            .getAsJsonObject();
    assertThat(table.getAsJsonArray("holes")).hasSize(8);
    JsonObject first = table.getAsJsonArray("holes").get(0).getAsJsonObject();
    assertThat(first.get("hole").getAsString()).isEqualTo("drain");
    assertThat(first.getAsJsonObject("x").getAsJsonObject("at").get("mm").getAsDouble())
        .isEqualTo(8.0);
    assertThat(first.getAsJsonObject("x").get("divisions").getAsDouble()).isEqualTo(315.0);
    assertThat(table.getAsJsonObject("x").get("dial").getAsString()).isEqualTo("in");
  }

  /**
   * The point of a countersink goes further down than its cone is deep: (6.4 - 3.2)/2 for 90 deg.
   */
  @Test
  void aCountersinkIsCountedFromTheRim() {
    String out =
        String.join(
            " ",
            CommandRun.in(ExampleFolder.PATH)
                .run("coordinates", "name-plate.plan")
                .out()
                .split("\\s+"));
    assertThat(out)
        .contains("1.60 mm (63 thou) deep, from where its cone touches the rim of the hole: Z")
        .doesNotContain("1 turns", "deep, its end 1.60 mm");
  }

  @Test
  void noHolesAndNoSuchSetup() {
    assertThat(CommandRun.in(ExampleFolder.PATH).run("coordinates", "rudder-key.plan").out())
        .contains("no holes are cut");
    Result result =
        CommandRun.in(ExampleFolder.PATH).run("coordinates", "boiler-flange.plan", "nowhere");
    assertThat(result.exitCode()).isEqualTo(Handwheel.EXIT_TROUBLE);
    assertThat(result.errLines()).hasSize(1);
  }
}
