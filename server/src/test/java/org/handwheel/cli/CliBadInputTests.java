package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.handwheel.cli.CommandRun.Result;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** {@code check} on what it cannot read: one line that says why, and exit code 2. */
final class CliBadInputTests {
  @TempDir Path folder;

  @Test
  void aMissingFile() {
    assertRefused("no-such.plan", "no-such.plan: there is no such file", "check", "no-such.plan");
  }

  @Test
  void aMissingFolder() {
    assertRefused("plans", "plans: there is no such file", "check", "plans");
  }

  @Test
  void aFileUsedAsAFolder() throws IOException {
    Samples.write(folder, "a.plan", Samples.CLEAN);
    assertRefused(
        "a.plan/b.plan", "a.plan/b.plan: there is no such file", "check", "a.plan/b.plan");
  }

  @Test
  void aFolderWithoutPlans() throws IOException {
    Samples.write(folder, "mill.shop", "shop\n");
    assertRefused(".", ".: there is no plan (*.plan) in this folder", "check");
  }

  @Test
  void anotherKindOfFile() throws IOException {
    Samples.write(folder, "README.md", "# Launch\n");
    assertRefused(
        "README.md",
        "README.md: it is neither a plan (*.plan) nor a shop file (*.shop)",
        "check",
        "README.md");
  }

  @Test
  void aBinaryFile() throws IOException {
    byte[] bytes = Samples.CLEAN.getBytes(StandardCharsets.UTF_8);
    bytes[11] = 0;
    Samples.write(folder, "a.plan", bytes);
    assertRefused("a.plan", "a.plan: it is not text (byte 12 is zero)", "check");
  }

  @Test
  void fiftyMegabytes() throws IOException {
    try (RandomAccessFile file = new RandomAccessFile(folder.resolve("a.plan").toFile(), "rw")) {
      file.setLength(50L << 20);
    }
    long start = System.nanoTime();
    assertRefused("a.plan", "a.plan: it is larger than 10 MB", "check", "a.plan");
    assertThat(System.nanoTime() - start).isLessThan(60_000_000_000L);
  }

  @Test
  void fiftyMegabytesOnStandardInput() {
    byte[] bytes = new byte[50 << 20];
    Arrays.fill(bytes, (byte) '\n');
    Result result = CommandRun.in(folder).reading(bytes).run("check", "-");
    assertThat(result)
        .isEqualTo(new Result(2, "", "handwheel: standard input: it is larger than 10 MB\n"));
  }

  @Test
  void whatIsNotUtf8() throws IOException {
    byte[] bytes = (Samples.CLEAN + "  note \"caf?\"\n").getBytes(StandardCharsets.UTF_8);
    int at = Samples.CLEAN.length() + "  note \"caf".length();
    bytes[at] = (byte) 0xE9;
    Samples.write(folder, "a.plan", bytes);
    assertRefused(
        "a.plan", "a.plan: it is not UTF-8 (line 4, byte " + (at + 1) + " of the file)", "check");
  }

  @Test
  void utf16() throws IOException {
    Samples.write(folder, "a.plan", ("\ufeff" + Samples.CLEAN).getBytes(StandardCharsets.UTF_16LE));
    assertRefused("a.plan", "a.plan: it is UTF-16; save it as UTF-8", "check");
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void aFileWithoutPermission() throws IOException {
    Path file = Samples.write(folder, "a.plan", Samples.CLEAN);
    assertThat(file.toFile().setReadable(false)).isTrue();
    assumeTrue(!Files.isReadable(file), "the superuser reads everything");
    assertRefused("a.plan", "a.plan: it cannot be read: access denied", "check");
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void aPipeThatNobodyFills() throws Exception {
    Path pipe = folder.resolve("a.plan");
    int made = new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor();
    assumeTrue(made == 0, "no pipe can be made here");
    assertRefused("a.plan", "a.plan: it is not an ordinary file", "check");
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void linksThatLeadOut() throws IOException {
    Samples.write(folder, "secret.plan", Samples.CLEAN);
    Path shed = Files.createDirectories(folder.resolve("shed"));
    Files.createSymbolicLink(shed.resolve("a.plan"), folder.resolve("secret.plan"));
    Result result = CommandRun.in(shed).run("check");
    assertThat(result)
        .isEqualTo(new Result(2, "", "handwheel: a.plan: a link leads outside the workspace\n"));
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void aShopBehindALinkThatLeadsOut() throws IOException {
    Samples.write(folder, "secret.shop", "shop\n");
    Path shed = Files.createDirectories(folder.resolve("shed"));
    Files.createSymbolicLink(shed.resolve("mill.shop"), folder.resolve("secret.shop"));
    Samples.write(shed, "a.plan", Samples.CLEAN + "  use \"mill.shop\"\n");
    Result result = CommandRun.in(shed).run("check");
    assertThat(result.exitCode()).isEqualTo(1);
    assertThat(result.out().replaceAll("\\s+", " "))
        .contains("cannot read \"mill.shop\": a link leads outside the workspace");
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void aCircleOfFolders() throws IOException {
    Samples.write(folder, "plans/a.plan", Samples.CLEAN);
    Files.createSymbolicLink(folder.resolve("plans/again"), folder.resolve("plans"));
    Files.createSymbolicLink(folder.resolve("plans/b.plan"), Path.of("b.plan"));
    Result result = run("check");
    assertThat(result.errLines())
        .singleElement()
        .asString()
        .startsWith("handwheel: plans/b.plan: ");
    assertThat(result.outLines()).containsExactly("1 plan, nothing found");
  }

  @Test
  void aShopThatIsMissing() throws IOException {
    Samples.write(folder, "a.plan", Samples.CLEAN + "  use \"mill.shop\"\n");
    Result result = run("check");
    assertThat(result.exitCode()).isEqualTo(1);
    assertThat(result.out())
        .contains("error[use-path] cannot read \"mill.shop\": there is no such file");
  }

  @Test
  void aShopThatCannotBeRead() throws IOException {
    Samples.write(folder, "mill.shop", new byte[] {'s', 'h', 'o', 'p', '\n', (byte) 0xFF});
    Samples.write(folder, "a.plan", Samples.CLEAN + "  use \"mill.shop\"\n");
    assertThat(run("check").out().replaceAll("\\s+", " "))
        .contains("cannot read \"mill.shop\": it is not UTF-8 (line 2, byte 6 of the file)");
  }

  @Test
  void oneBadFileDoesNotHideTheOthers() throws IOException {
    Samples.write(folder, "bad.plan", new byte[] {0});
    Samples.write(folder, "bearing.plan", Samples.COMMA);
    Result result = run("check");
    assertThat(result.exitCode()).isEqualTo(2);
    assertThat(result.out()).contains("bearing.plan:6:10: error[syntax]");
    assertThat(result.err()).isEqualTo("handwheel: bad.plan: it is not text (byte 1 is zero)\n");
    JsonObject root =
        JsonParser.parseString(run("check", "--format", "json").out()).getAsJsonObject();
    assertThat(root.getAsJsonArray("unreadable").toString())
        .isEqualTo("[{\"path\":\"bad.plan\",\"reason\":\"it is not text (byte 1 is zero)\"}]");
    assertThat(root.getAsJsonArray("findings")).hasSize(1);
  }

  @Test
  void anEmptyFile() throws IOException {
    Samples.write(folder, "a.plan", "");
    Result result = run("check");
    assertThat(result.err()).isEmpty();
    assertThat(result.out()).contains("1 plan").doesNotContain("^");
  }

  @Test
  void aWorkspaceThatIsMissing() {
    Result result = run("check", "--workspace", "shed");
    assertThat(result).isEqualTo(new Result(2, "", "handwheel: shed: there is no such folder\n"));
  }

  @Test
  void aNameThatNoFileHas() {
    Result result = run("check", "a\0b.plan");
    assertThat(result.exitCode()).isEqualTo(2);
    assertThat(result.errLines()).singleElement().asString().contains("no file can have this name");
  }

  @Test
  void brackets() throws IOException {
    String deep = "(".repeat(50_000) + "1" + ")".repeat(50_000);
    Samples.write(folder, "a.plan", Samples.CLEAN + "  let a = " + deep + "\n");
    Result result = run("check");
    assertThat(result.exitCode()).isEqualTo(1);
    assertThat(result.out()).contains("brackets are nested more than 64 deep");
    assertThat(result.errLines()).isEmpty();
  }

  @Test
  void bracketsAsDeepAsAllowed() throws IOException {
    String deep = "(".repeat(64) + "1" + ")".repeat(64);
    Samples.write(folder, "a.plan", Samples.CLEAN + "  let a = " + deep + "\n");
    assertThat(run("check").out()).doesNotContain("nested");
  }

  @Test
  void controlCharactersDoNotReachTheTerminal() throws IOException {
    Samples.write(folder, "a.plan", "plan \"x\"\n  \u001b[2J\u202e\u0007bad\n");
    String out = run("check").out();
    assertThat(out).contains("bad").doesNotContain("\u001b").doesNotContain("\u202e");
    assertThat(out.chars().filter(c -> c != '\n' && Character.isISOControl(c))).isEmpty();
  }

  private Result run(String... args) {
    return CommandRun.in(folder).run(args);
  }

  /** One line, exit code 2; as JSON too, where the report then says it as well. */
  private void assertRefused(String path, String line, String... args) {
    Result result = run(args);
    assertThat(result).isEqualTo(new Result(2, "", "handwheel: " + line + "\n"));
    String[] json = Arrays.copyOf(args, args.length + 2);
    json[args.length] = "--format";
    json[args.length + 1] = "json";
    Result asJson = run(json);
    assertThat(asJson.exitCode()).isEqualTo(2);
    assertThat(asJson.err()).isEqualTo(result.err());
    JsonObject unreadable =
        JsonParser.parseString(asJson.out())
            .getAsJsonObject()
            .getAsJsonArray("unreadable")
            .get(0)
            .getAsJsonObject();
    assertThat(unreadable.get("path").getAsString()).isEqualTo(path.equals(".") ? "" : path);
  }
}
