package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Path;
import org.handwheel.cli.CommandRun.Result;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code thread}, {@code drill} and {@code fit}. */
final class CliTablesTests {
  @TempDir Path folder;

  /** M5 x 0.8 with a 4.2 mm drill (ISO 261, ISO 2306, from memory); 5.5 mm passes it (ISO 273). */
  @Test
  void describesAThread() {
    Result result = run("thread", "M5");
    assertThat(result.exitCode()).isZero();
    assertThat(result.out())
        .startsWith("M5: ISO metric coarse, 60 degrees\n")
        .contains("  pitch          0.80 mm (31.5 thou), 31.75 threads an inch\n")
        .contains("  tapping drill  4.2 mm, 4.20 mm (0.1654 in): 77 % of thread\n")
        .contains("normal 5.50 mm (0.2165 in)")
        .contains("  countersink    dia 10.40 mm (0.4094 in) at 90 deg\n")
        .contains("Thread: ISO 261", "from memory", "(common\npractice, no source)");
    assertThat(result.outLines()).allMatch(line -> line.length() <= 80);
  }

  /**
   * BSW 1/4 has 20 threads an inch (BS 84, from memory): 0.25 - 0.65 x 1.280654/20 = 0.2084 in for
   * 65 per cent.
   */
  @Test
  void findsADrillForAPerCentOfThread() {
    Result result = run("thread", "BSW", "1/4", "--percent", "65", "--depth", "10mm");
    assertThat(result.out())
        .contains(
            "  for 65 %       hole 5.293 mm (0.2084 in); drill 5.3 mm, 5.30 mm (0.2087 in):\n")
        .contains("  bottoming tap  drill 13.81 mm (0.5437 in) deep at full diameter");
  }

  @Test
  void aThreadAsJson() {
    JsonObject root = json("thread", "M8x1", "--depth", "12 mm", "--format", "json");
    assertThat(root.get("thread").getAsString()).isEqualTo("M8x1");
    assertThat(root.getAsJsonObject("pitch").get("mm").getAsInt()).isEqualTo(1);
    assertThat(root.getAsJsonObject("tappingDrill").get("drill").getAsString()).isEqualTo("7 mm");
    assertThat(root.getAsJsonObject("blindHole").getAsJsonObject("taper").get("mm").getAsInt())
        .isEqualTo(20);
    assertThat(root.getAsJsonArray("sources")).isNotEmpty();
  }

  /** No 7 is 0.2010 in (ASME B94.11M, from memory; equal in GNU units), for UNC 1/4-20. */
  @ParameterizedTest
  @ValueSource(strings = {"no 7", "No. 7", "#7"})
  void describesADrill(String name) {
    Result result = run("drill", name);
    assertThat(result.out())
        .startsWith("no 7: number drill\n  diameter       5.105 mm (0.201 in)\n")
        .contains("  fractional     13/64 in, 5.159 mm (0.2031 in): 0.054 mm (2.1 thou) larger\n")
        .contains("  number         no 8, ")
        .contains("  metric         5.1 mm, 5.10 mm (0.2008 in): 0.005 mm (0.2 thou) smaller\n")
        .contains("  tapping for    UNC 1/4-20\n")
        .contains("GNU units", "manual and\nlocal rules come first");
    assertThat(result.outLines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void findsTheDrillsNearASize() {
    assertThat(run("drill", "5.13mm").out())
        .startsWith("5.13mm: no drill of this size\n")
        .contains("  number         no 7, ", "  metric         5.1 mm, ");
    assertThat(run("drill", "letter", "F").out()).startsWith("letter F: letter drill\n");
    JsonObject root = json("drill", "0.2013 in", "--format", "json");
    assertThat(root.has("series")).isFalse();
    assertThat(root.getAsJsonArray("nearest")).hasSize(4);
  }

  /** 10 H7 is 10 +0.015/0, g6 -0.005/-0.014 (ISO 286-1 and 286-2, from memory). */
  @Test
  void givesTheLimitsOfAFit() {
    Result result = run("fit", "10 H7/g6");
    assertThat(result.out())
        .isEqualTo(
            """
            10.00 mm (0.3937 in) H7/g6: a fit
              H7 limits      10.00..10.015 mm (0.3937..0.3943 in)
                deviations   0.00 mm (0 thou) to +0.015 mm (0.6 thou)
                tolerance    0.015 mm (0.6 thou)
                middle       10.008 mm (0.394 in)
              g6 limits      9.986..9.995 mm (0.3931..0.3935 in)
                deviations   -0.014 mm (-0.6 thou) to -0.005 mm (-0.2 thou)
                tolerance    0.009 mm (0.4 thou)
                middle       9.99 mm (0.3933 in)
              together       clearance fit
              clearance      0.005..0.029 mm (0.2..1.1 thou)

            ISO 286-1 table 3, holes (from memory; to 120 mm E, H11, K7, M7 and N7 also read
            in tool makers' tables)

            ISO 286-1 table 2, shafts (from memory; to 65 mm d to s also read in a
            reproduction of JIS B 0401 and h in a tool maker's table)
            """);
    assertThat(run("fit", "10", "H7").out()).startsWith("10.00 mm (0.3937 in) H7: a hole\n");
    assertThat(run("fit", "10H7").out()).isEqualTo(run("fit", "10 H7").out());
    assertThat(run("fit", "10mm", "H7", "g6").out()).isEqualTo(result.out());
    assertThat(run("fit", "1/2", "in", "H8").out()).startsWith("12.70 mm (0.500 in) H8: a hole\n");
  }

  /** 10 H7/p6: p6 is +0.024/+0.015 (ISO 286-2, from memory), so they just touch at the loosest. */
  @Test
  void namesInterference() {
    assertThat(run("fit", "10 H7/p6").out())
        .contains("  together       interference fit\n")
        .contains("  interference   0.00..0.024 mm (0..0.9 thou)\n");
    JsonObject root = json("fit", "10 H7/k6", "--format", "json");
    assertThat(root.get("fit").getAsString()).isEqualTo("transition");
    assertThat(root.getAsJsonArray("members")).hasSize(2);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "thread M99 | no thread 'M99' is known; write it as M5, M8x1, UNC 1/4-20, BSW 1/4 or BA 2",
        "thread M5 --percent 3 | --percent: give between 30 and 100",
        "thread M5 --depth 10 | --depth: in which unit? write `10 mm` or `10 in`",
        "thread M5 --depth 0mm | --depth: a thread is over zero and up to 1 m deep",
        "drill cheese | there is no drill 'cheese'; write it as no 7, letter F, 5/16 in or 6.8mm",
        "drill 0mm | 0mm: a drill is over zero and up to 500 mm",
        "drill no 99 | there is no drill 'no 99'; write it as no 7, letter F, 5/16 in or 6.8mm",
        "fit 10 | 10: write a size and a tolerance, such as 10 H7 or 12 H7/g6",
        "fit 10 Z9 | the tables have no Z9 for 10.00 mm (0.3937 in); they hold D to P and d to s, grades 5 to 11, over 0 to 315 mm",
        "fit 999 H7 | the tables have no H7 for 999.00 mm (39.3307 in); they hold D to P and d to s, grades 5 to 11, over 0 to 315 mm",
        "fit 10 h7 H7 | a fit is a hole and a shaft, such as H7/g6: capital letters are holes"
      })
  void refusesInOneLine(String arguments, String line) {
    assertThat(run(arguments.split(" ", -1)))
        .isEqualTo(new Result(2, "", "handwheel: " + line + "\n"));
  }

  private JsonObject json(String... arguments) {
    Result result = run(arguments);
    assertThat(result.exitCode()).isZero();
    return JsonParser.parseString(result.out()).getAsJsonObject();
  }

  private Result run(String... arguments) {
    return CommandRun.in(folder).run(arguments);
  }
}
