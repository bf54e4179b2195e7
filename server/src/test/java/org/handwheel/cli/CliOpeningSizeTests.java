package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.handwheel.examples.ExampleFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The tolerance of a slot's width where people read it. */
final class CliOpeningSizeTests {
  private static final String PLAN =
      """
      language 1
      plan "Oil box"
        units mm
        use "inch-mill.shop"
      part
        length 56
        width 30
        height 20
        slot oil in top, width 8 +0.06/-0, length 30, depth 2, at (28, 15)
      stock
        size 56 x 30 x 20
        milled left right front back top bottom
      setup slots
        hold in V80, up top, fixed back, on pair P3x10
        seat tapped, both parallels tight
        find left from operator-left with finder F5, zero x at edge
        find front from operator-front with finder F5, zero y at edge
        cutter SD6
        touch top with paper 0.05, zero z
        slot oil with SD6, pass 1
        deburr edges of top
      inspect
        check oil with caliper
      """;

  @TempDir Path folder;

  @BeforeEach
  void write() throws IOException {
    Files.copy(
        ExampleFolder.PATH.resolve("shop").resolve("inch-mill.shop"),
        folder.resolve("inch-mill.shop"));
    Files.writeString(folder.resolve("a.plan"), PLAN);
    Files.writeString(folder.resolve("b.plan"), PLAN.replace("+0.06/-0", "+0.09/-0"));
  }

  /** Aimed at 8.03: stops 1.015 off the middle, to half a thou inward 1.0033 or 1.016. */
  @Test
  void stepsTellWhatTheWidthBecomes() {
    assertThat(CommandRun.in(folder).run("steps", "a.plan").out().replaceAll("\\s+", " "))
        .contains("width", "; the drawing allows 8.00..8.06 mm (0.315..0.3173 in)");
    JsonObject json =
        JsonParser.parseString(
                CommandRun.in(folder).run("steps", "a.plan", "--format", "json").out())
            .getAsJsonObject();
    JsonObject cut = json.getAsJsonArray("cuts").get(0).getAsJsonObject();
    JsonObject width = cut.getAsJsonArray("openings").get(0).getAsJsonObject();
    assertThat(width.get("size").getAsString()).isEqualTo("width");
    assertThat(mm(width, "drawn")).isEqualTo(8);
    assertThat(mm(width, "least")).isEqualTo(8);
    assertThat(mm(width, "most")).isEqualTo(8.06);
    assertThat(mm(width, "becomesLeast")).isBetween(8.0, 8.06);
    assertThat(mm(width, "becomesLeast")).isEqualTo(mm(width, "becomesMost"));
  }

  private static double mm(JsonObject object, String name) {
    return object.getAsJsonObject(name).get("mm").getAsDouble();
  }

  @Test
  void whatIsLeftIsInTheJson() throws IOException {
    assertThat(against("a.plan").getAsJsonArray("left")).isEmpty();
    assertThat(against("a.plan").getAsJsonArray("over")).isEmpty();
    Files.writeString(
        folder.resolve("c.plan"),
        PLAN.replace("stock\n", "  hole foot in top, dia 6, through, at (6, 6)\nstock\n"));
    JsonObject layer = against("c.plan").getAsJsonArray("left").get(0).getAsJsonObject();
    assertThat(layer.get("face").getAsString()).isEqualTo("top");
    assertThat(mm(layer, "from")).isZero();
    assertThat(mm(layer, "to")).isPositive();
    assertThat(mm(layer, "first")).isEqualTo(6);
    assertThat(mm(layer, "second")).isEqualTo(6);
    // The area of a circle of 6 mm; its polygon is a little smaller.
    assertThat(layer.get("mm2").getAsDouble()).isBetween(28.2, 28.28);
  }

  private JsonObject against(String plan) {
    return JsonParser.parseString(
            CommandRun.in(folder).run("steps", plan, "--format", "json").out())
        .getAsJsonObject()
        .getAsJsonObject("against");
  }

  @Test
  void theSheetListsTheWidthWithItsLimits() throws IOException {
    CommandRun.in(folder).run("sheet", "a.plan", "-o", "a.html");
    String text =
        org.jsoup.Jsoup.parse(Files.readString(folder.resolve("a.html")))
            .text()
            .replaceAll("\\s+", " ");
    assertThat(text).contains("slot oil, width 8.00 mm (0.315 in)", "8.00..8.06 mm");
  }

  @Test
  void theDifferenceIsOneOfTheLimits() {
    assertThat(CommandRun.in(folder).run("diff", "a.plan", "b.plan").out().replaceAll("\\s+", " "))
        .contains("width limits: 8.00..8.06 mm (0.315..0.3173 in)")
        .contains("8.00..8.09 mm (0.315..0.3185 in)");
  }

  @Test
  void theInstrumentIsHeldAgainstTheWidth() {
    assertThat(CommandRun.in(folder).run("check", "a.plan").out().replaceAll("\\s+", " "))
        .contains("the tolerance of the width of `oil` is 0.06 mm", "tolerance-not-measurable");
  }
}
