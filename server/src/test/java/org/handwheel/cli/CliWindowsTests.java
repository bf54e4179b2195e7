package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.util.List;
import org.handwheel.cli.CommandRun.Result;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The command line on a file system, a console and line ends as on Windows. */
final class CliWindowsTests {
  /** What consoles of western Windows use. */
  private static final Charset CODE_PAGE_850 = Charset.forName("IBM850");

  private FileSystem system;
  private Path launch;

  @BeforeEach
  void fill() throws IOException {
    system =
        Jimfs.newFileSystem(
            Configuration.windows().toBuilder()
                .setRoots("C:\\", "D:\\")
                .setWorkingDirectory("C:\\launch")
                .build());
    launch = system.getPath("C:\\launch");
    Samples.write(launch, "shop\\inch-mill.shop", Samples.example("shop/inch-mill.shop"));
    Samples.write(launch, "plans\\bearing.plan", "\ufeff" + Samples.COMMA.replace("\n", "\r\n"));
  }

  @AfterEach
  void close() throws IOException {
    system.close();
  }

  @Test
  void showsPathsTheWayWindowsWritesThem() {
    for (String argument : List.of("plans", "plans\\bearing.plan", "plans/bearing.plan", ".")) {
      Result result = run("check", argument);
      assertThat(result.out())
          .startsWith("plans\\bearing.plan:6:10: error[syntax] write a decimal point")
          .endsWith("1 error in 1 plan\r\n");
      assertThat(result.out().replace("\r\n", "")).doesNotContain("\n").doesNotContain("\r");
    }
  }

  @Test
  void givesForwardSlashesToPrograms() {
    String json = run("check", "--format", "json").out();
    assertThat(
            JsonParser.parseString(json)
                .getAsJsonObject()
                .getAsJsonArray("findings")
                .get(0)
                .getAsJsonObject()
                .get("path")
                .getAsString())
        .isEqualTo("plans/bearing.plan");
  }

  @Test
  void readsAnotherDrive() throws IOException {
    Samples.write(system.getPath("D:\\stick"), "a.plan", Samples.COMMA);
    assertThat(run("check", "D:\\stick").out()).startsWith("D:\\stick\\a.plan:6:10: error[syntax]");
    assertThat(run("check", "--format", "json", "D:\\stick\\a.plan").out())
        .contains("\"path\": \"D:/stick/a.plan\"");
  }

  @Test
  void refusesNamesThatWindowsDoesNotAllow() {
    assertThat(run("check", "plans\\*.plan"))
        .isEqualTo(
            new Result(2, "", "handwheel: plans\\*.plan: no file can have this name here\r\n"));
  }

  @Test
  void usesTheSignsOfTheCodePage() throws IOException {
    Samples.write(
        launch, "a.plan", "plan \"x\"\n  units mm\n  hoole \u00b1 \u6c7d \u2026 \u00e9\n");
    Result result = run("check", "a.plan");
    assertThat(result.out()).contains("    hoole \u00b1 ?? ... \u00e9\r\n    ^^^^^\r\n");
  }

  @Test
  void findsTheMachine() {
    assertThat(run("dial", "1in", "--machine", "inch-mill", "--shop", "shop\\inch-mill.shop").out())
        .contains("10 turns + 0 divisions, exactly");
    assertThat(run("dial", "1in", "--machine", "inch-mill").exitCode()).isZero();
  }

  private Result run(String... args) {
    return CommandRun.in(launch).charset(CODE_PAGE_850).lineEnd("\r\n").run(args);
  }
}
