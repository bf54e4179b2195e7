package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;

import org.handwheel.lsp.PackedPages;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is told of the properties of a shop's things. */
final class PropertyHoverTests {
  private static final String SHOP =
      """
      language 1
      shop "Shed"
        units in

      own vise V
        jaw-width: 3
        jaw-square: 0.001 over 4
        fixed-jaw: operator-back
        opening: 70 mm

      own material bronze-gear
        force: 1500
        force-exponent: 0.25
        density: 8800
        speed-hss: 20, 30 m/min

      own drill D
        dia: 1/4
        angle: 118 deg

      own limits mine
        efficiency: 0.7
        heavy-pass: 0.015
        touch: 0.0004

      own severities mine
        heavy-pass: error
      """;

  private static String plain(String property) {
    View view = Fixtures.view("a.shop", SHOP);
    return Hovers.at(view, SHOP.indexOf("  " + property) + 3, new PackedPages())
        .map(hover -> hover.text().plain())
        .orElse("");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "jaw-width | jaw-width of a vise: width of the jaws",
        "jaw-width | Here: 76.20 mm (3.000 in)",
        "jaw-width | Usual: 80.00 mm (3.1496 in)",
        "jaw-width | It has to be there.",
        "jaw-square | Here: 0.025 mm (1 thou) over 101.60 mm (4.000 in)",
        "fixed-jaw | May be: operator-back, operator-front, operator-left, operator-right",
        "opening | Here: 70.00 mm (2.7559 in)",
        "force: | Here: 1500",
        "force: | taken where it is missing: 1500",
        "force-exponent | Here: 0.25",
        "density | Here: 8800",
        "speed-hss | Here: 20, 30 m/min",
        "dia | Here: 6.35 mm (0.250 in)",
        "angle | Here: 118 deg",
        "efficiency | Here: 0.7",
        "efficiency | Without this line: 0.75",
        "heavy-pass: 0 | Here: 0.381 mm (15 thou)",
        "heavy-pass: 0 | Without this line: 0.508 mm (20 thou)",
        "touch | Without this line: 0.01 mm (0.4 thou)",
        "heavy-pass: error | how grave the rule heavy-pass is in this shop",
        "heavy-pass: error | Without this line: warning",
      })
  void aPropertyTells(String property, String told) {
    assertThat(plain(property)).contains(told);
  }

  @ParameterizedTest
  @ValueSource(strings = {"force:", "force-exponent", "density", "efficiency"})
  void aPlainNumberIsNoLength(String property) {
    assertThat(plain(property)).isNotEmpty().doesNotContain(" mm", " in)");
  }

  @Test
  void theThingTellsThemSoToo() {
    View view = Fixtures.view("a.shop", SHOP);
    String text =
        Hovers.at(view, SHOP.indexOf("own material") + 1, new PackedPages())
            .map(hover -> hover.text().plain())
            .orElse("");
    assertThat(text).contains("force: 1500\n", "density: 8800\n");
  }
}
