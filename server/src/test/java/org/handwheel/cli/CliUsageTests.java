package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.rules.Rules;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Help, versions, wrong usage and {@code explain}. */
final class CliUsageTests {
  private static final String PAGE =
      """
      # overcut

      A pass goes **below** the size the part must have. It is the mistake that costs
      the part, so it is an error.

      ## What to do

      Set the pass so that `leaving` stays:

      ```plan
      rough bottom to height leaving 0.20, pass 0.50
      finish bottom to height
      ```

      - Measure, then work out the last cut from what you measured and not from what the dial says.
      - See [the reference](https://example.org/language).

      1. first
      2. second
      """;

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "check",
        "explain",
        "dial",
        "speeds",
        "material",
        "thread",
        "drill",
        "fit",
        "stackup"
      })
  void helpFitsTheScreen(String command) {
    Result result = command.isEmpty() ? run("--help") : run(command, "--help");
    assertThat(result.exitCode()).isZero();
    assertThat(result.err()).isEmpty();
    assertThat(result.out()).matches("\\p{ASCII}+").contains("Example");
    assertThat(result.outLines()).allMatch(line -> line.length() <= 80).hasSizeGreaterThan(8);
    assertThat(result.out()).startsWith("Usage: handwheel " + command);
  }

  @Test
  void versionNamesTheJavaToo() {
    Result result = run("--version");
    assertThat(result.exitCode()).isZero();
    assertThat(result.outLines()).hasSize(2);
    assertThat(result.out())
        .startsWith("handwheel ")
        .contains("\nJava " + System.getProperty("java.version"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "                     | handwheel: say what to do, such as `check`",
        "chek                 | handwheel: there is no command 'chek'; did you mean 'check'?",
        "polish               | handwheel: there is no command 'polish'",
        "--verson             | handwheel: there is no option '--verson'; did you mean '--version'?",
        "check --fromat json  | handwheel check: there is no option '--fromat'; did you mean '--format'?",
        "check --format xml   | handwheel check: Invalid value for option '--format': 'xml' is none of text, json",
        "check --fail-on info | handwheel check: Invalid value for option '--fail-on': 'info' is none of error, warning, none",
        "explain a b          | handwheel explain: there is no use for 'b'",
        "dial                 | handwheel dial: Missing required parameter: 'LENGTH'"
      })
  void wrongUsageIsOneLineAndAHint(String args, String line) {
    Result result = run(args == null ? new String[0] : args.split(" ", -1));
    assertThat(result.exitCode()).isEqualTo(2);
    assertThat(result.out()).isEmpty();
    assertThat(result.errLines()).hasSize(2);
    assertThat(result.errLines().get(0)).startsWith(line);
    assertThat(result.errLines().get(1)).matches("For its options: handwheel( \\w+)? --help");
  }

  @Test
  void explainsARule() {
    Result result =
        CommandRun.in(folder).pages(rule -> Optional.of(PAGE)).run("explain", "overcut");
    assertThat(result.exitCode()).isZero();
    assertThat(result.out())
        .isEqualTo(
            """
            overcut  (error)

            A pass goes below the size the part must have. It is the mistake that costs the
            part, so it is an error.

            What to do

            Set the pass so that `leaving` stays:

                rough bottom to height leaving 0.20, pass 0.50
                finish bottom to height

            - Measure, then work out the last cut from what you measured and not from what
              the dial says.
            - See the reference (https://example.org/language).

            1. first
            2. second
            """);
  }

  @Test
  void listsAllRulesWithTheirFirstSentence() {
    for (Result result : List.of(run("explain"), run("explain", "--list"))) {
      assertThat(result.exitCode()).isZero();
      assertThat(result.outLines())
          .hasSize(Rules.severities().size())
          .allMatch(line -> line.endsWith("  A page."))
          .allMatch(line -> line.length() <= 80);
      assertThat(result.outLines()).isSorted();
      assertThat(result.out()).contains("overcut").contains("error");
    }
  }

  @Test
  void suggestsTheRuleThatWasMeant() {
    assertThat(run("explain", "overcutt"))
        .isEqualTo(
            new Result(2, "", "handwheel: there is no rule 'overcutt'; did you mean 'overcut'?\n"));
    assertThat(run("explain", "quux").err())
        .isEqualTo("handwheel: there is no rule 'quux'; handwheel explain --list shows all\n");
  }

  @Test
  void anInternalErrorIsOneLine() {
    CommandRun run = CommandRun.in(folder).pages(rule -> Optional.empty());
    Result result = run.run("explain", "overcut");
    assertThat(result.exitCode()).isEqualTo(2);
    assertThat(result.out()).isEmpty();
    assertThat(result.errLines())
        .containsExactly(
            "handwheel: internal error: IllegalStateException: the rule overcut has no page");
    Result traced = run.with("HANDWHEEL_DEBUG", "1").run("explain", "overcut");
    assertThat(traced.exitCode()).isEqualTo(2);
    assertThat(traced.errLines())
        .hasSizeGreaterThan(5)
        .anyMatch(line -> line.contains("ExplainCommand"));
  }

  @Test
  void explainsForAnOldConsole() {
    Map<String, String> pages = Map.of("overcut", "# overcut\n\nMore than \u00b10.05 \u2026\n");
    Result result =
        CommandRun.in(folder)
            .charset(StandardCharsets.US_ASCII)
            .pages(rule -> Optional.ofNullable(pages.get(rule)))
            .run("explain", "overcut");
    assertThat(result.out()).endsWith("More than +-0.05 ...\n");
  }

  private Result run(String... args) {
    return CommandRun.in(folder).run(args);
  }
}
