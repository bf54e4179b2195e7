package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.handwheel.cli.CommandRun.Result;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code .pre-commit-hooks.yaml} names is there and does what hooks are for. */
final class CommitHooksTests {
  private static final Path MANIFEST = Path.of("..", ".pre-commit-hooks.yaml");

  @TempDir Path folder;

  private static List<String> values(String key) throws IOException {
    return Files.readAllLines(MANIFEST).stream()
        .map(line -> line.replaceFirst("^- ", "  "))
        .filter(line -> line.startsWith("  " + key + ": "))
        .map(line -> line.substring(key.length() + 4))
        .toList();
  }

  private Result run(String id, String file) throws IOException {
    int index = values("id").indexOf(id);
    List<String> words = new ArrayList<>(List.of(values("entry").get(index).split(" ")));
    assertThat(words.remove(0)).isEqualTo("handwheel");
    words.add(file);
    return CommandRun.in(folder).run(words.toArray(String[]::new));
  }

  @Test
  void theCheckFailsOnAnError() throws IOException {
    Samples.write(folder, "a.plan", Samples.COMMA);
    Samples.write(folder, "b.plan", Samples.CLEAN);
    assertThat(run("handwheel-check", "a.plan").exitCode()).isEqualTo(1);
    assertThat(run("handwheel-check", "b.plan").exitCode()).isZero();
  }

  /** The runner of the hooks sees itself that a file was changed. */
  @Test
  void formattingChangesTheFile() throws IOException {
    Path plan = Samples.write(folder, "a.plan", "plan \"Gland\"\nunits   mm\n");
    assertThat(run("handwheel-format", "a.plan").exitCode()).isZero();
    assertThat(Files.readString(plan)).isEqualTo("plan \"Gland\"\n  units mm\n");
  }

  @Test
  void theyRunOnPlansAndShops() throws IOException {
    assertThat(values("files"))
        .hasSize(2)
        .allSatisfy(
            pattern ->
                assertThat(List.of("a.plan", "b/c.shop", "x.plan.txt", "plan"))
                    .filteredOn(name -> Pattern.compile(pattern).matcher(name).find())
                    .containsExactly("a.plan", "b/c.shop"));
  }
}
