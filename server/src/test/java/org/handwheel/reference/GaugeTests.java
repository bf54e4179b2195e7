package org.handwheel.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.handwheel.shop.drill.Drill;
import org.handwheel.shop.drill.Drills;
import org.handwheel.shop.thread.Threads;
import org.handwheel.units.Length;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/**
 * Drills and screw numbers against GNU units, once as recorded and once, where the program is
 * installed, asked again.
 *
 * <p>Trap X12: its {@code drillgauge} interpolates, so only whole numbers are asked.
 */
class GaugeTests {
  private static final Drills DRILLS = Drills.load();
  private static final Threads THREADS = Threads.load(DRILLS);

  private static List<List<String>> recorded() {
    return CheckTable.read("gauges.csv");
  }

  /** The gauges the program has a size for. */
  static List<String> compared() {
    return recorded().stream()
        .map(gauge -> gauge.get(0))
        .filter(gauge -> ours(gauge).isPresent())
        .toList();
  }

  /** Source: GNU units 2.22 (Debian package units), computed and recorded. */
  @Test
  void agreeWithTheRecordedGauges() {
    assertThat(recorded()).hasSize(80 + 26 + 15);
    int compared = 0;
    for (List<String> gauge : recorded()) {
      Optional<Length> ours = ours(gauge.get(0));
      if (ours.isPresent()) {
        assertThat(ours.get()).as(gauge.get(0)).isEqualTo(Length.inches(gauge.get(1)));
        compared++;
      }
    }
    assertThat(compared).as("80 numbers, 26 letters, screws 0 to 6, 8, 10 and 12").isEqualTo(116);
  }

  /** Source: the installed GNU units, asked now. */
  @Test
  void agreeWithTheInstalledProgram(TestReporter reporter)
      throws IOException, InterruptedException {
    List<String> questions = new ArrayList<>();
    for (List<String> gauge : recorded()) {
      if (ours(gauge.get(0)).isPresent()) {
        questions.add(gauge.get(0));
      }
    }
    List<String> answers = ask(reporter, questions);
    assertThat(answers).hasSameSizeAs(questions);
    for (int i = 0; i < questions.size(); i++) {
      assertThat(ours(questions.get(i)))
          .as(questions.get(i))
          .contains(Length.inches(answers.get(i).strip()));
    }
  }

  private static Optional<Length> ours(String gauge) {
    if (gauge.startsWith("drillgauge")) {
      return DRILLS.find("no " + number(gauge)).map(Drill::diameter);
    }
    if (gauge.startsWith("screwgauge")) {
      return THREADS
          .find("UNC no " + number(gauge))
          .or(() -> THREADS.find("UNF no " + number(gauge)))
          .map(thread -> thread.major());
    }
    return DRILLS.find("letter " + gauge.substring("drill".length())).map(Drill::diameter);
  }

  private static String number(String gauge) {
    return gauge.substring(gauge.indexOf('(') + 1, gauge.indexOf(')'));
  }

  private static List<String> ask(TestReporter reporter, List<String> questions)
      throws IOException, InterruptedException {
    Process units;
    try {
      units =
          new ProcessBuilder("units", "--quiet", "--terse", "--one-line")
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
    } catch (IOException missing) {
      String notice = "SKIPPED: GNU units is not installed, the installed program was not asked";
      reporter.publishEntry(notice);
      System.out.println(notice);
      return abort(notice);
    }
    StringBuilder input = new StringBuilder();
    questions.forEach(question -> input.append(question).append("\nin\n"));
    units.getOutputStream().write(input.toString().getBytes(StandardCharsets.US_ASCII));
    units.getOutputStream().close();
    String output = new String(units.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
    assertThat(units.waitFor(20, TimeUnit.SECONDS)).isTrue();
    return output.toLowerCase(Locale.ROOT).lines().toList();
  }
}
