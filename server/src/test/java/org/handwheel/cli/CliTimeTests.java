package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import org.handwheel.cli.CommandRun.Result;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Long plans are checked in one run, in a time that a person waits for. */
final class CliTimeTests {
  @TempDir Path folder;

  /** The bound is wide, for slow machines under load; the time itself is printed by --timing. */
  @Test
  void fiveThousandLines() throws IOException {
    Samples.writeBearingBlock(folder);
    String plan = Samples.longPlan(5000);
    assertThat(plan.lines().count()).isBetween(5000L, 5100L);
    Samples.write(folder, "long.plan", plan);
    Result result =
        Assertions.assertTimeout(
            Duration.ofSeconds(30),
            () -> CommandRun.in(folder).run("check", "--timing", "long.plan"));
    assertThat(result.exitCode()).isLessThan(Handwheel.EXIT_TROUBLE);
    assertThat(result.errLines()).anyMatch(line -> line.matches(" +total +[0-9.]+ ms"));
  }
}
