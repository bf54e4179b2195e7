package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What is written beside the protocol: little, and never a stack trace. */
@Timeout(120)
final class LogLinesTests {
  @TempDir private Path folder;

  private static String line(Level level, String message, Throwable thrown) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    LogRecord logged = new LogRecord(level, message);
    logged.setThrown(thrown);
    new LogLines(new PrintStream(out, true, StandardCharsets.UTF_8)).publish(logged);
    return out.toString(StandardCharsets.UTF_8);
  }

  @Test
  void aFaultIsOneLine() {
    Throwable fault = new IllegalStateException("outer", new IndexOutOfBoundsException("9\nof 3"));
    assertThat(line(Level.SEVERE, "cannot check a.plan", fault))
        .startsWith("handwheel: cannot check a.plan: IndexOutOfBoundsException: 9 of 3 at org.")
        .containsOnlyOnce(System.lineSeparator())
        .endsWith(System.lineSeparator());
    assertThat(line(Level.WARNING, "a\u001b[31m\u202eb" + "x".repeat(5000), null))
        .startsWith("handwheel: a [31m b")
        .hasSizeLessThan(310);
    assertThat(line(Level.INFO, "hello", null)).isEmpty();
  }

  @Test
  void whatEditorsMayDoIsNoLineAtAll() {
    assertThat(line(Level.WARNING, "Unmatched cancel notification for request id 7", null))
        .isEmpty();
  }

  private static void send(OutputStream out, String body) throws IOException {
    byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
    out.write(("Content-Length: " + bytes.length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
    out.write(bytes);
    out.flush();
  }

  @Test
  void aServerWithABadEditorSaysLittle() throws Exception {
    Path errors = folder.resolve("errors.txt");
    Process server =
        new ProcessBuilder(
                ProcessHandle.current().info().command().orElseThrow(),
                "-Xmx256m",
                "-cp",
                System.getProperty("java.class.path"),
                "org.handwheel.cli.Main",
                "lsp")
            .redirectError(errors.toFile())
            .redirectOutput(folder.resolve("answers.txt").toFile())
            .start();
    try (OutputStream out = server.getOutputStream()) {
      send(
          out,
          "{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"initialize\","
              + "\"params\":{\"processId\":null,\"rootUri\":null,\"capabilities\":{}}}");
      send(out, "{\"jsonrpc\":\"2.0\",\"method\":\"initialized\",\"params\":{}}");
      for (int id = 100; id < 150; id++) {
        send(
            out,
            "{\"jsonrpc\":\"2.0\",\"method\":\"$/cancelRequest\",\"params\":{\"id\":" + id + "}}");
      }
      List<String> broken =
          List.of(
              "{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":{}}",
              "{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":[3,",
              "not JSON at all",
              "{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didChange\",\"params\":{\"textDocument\":7}}",
              "{\"jsonrpc\":\"2.0\",\"id\":2,\"method\":\"textDocument/hover\",\"params\":{}}",
              "{\"jsonrpc\":\"2.0\",\"method\":\"no/such\",\"params\":{}}",
              "{\"jsonrpc\":\"2.0\",\"id\":77,\"result\":null}");
      for (String message : broken) {
        send(out, message);
      }
      send(out, "{\"jsonrpc\":\"2.0\",\"id\":3,\"method\":\"shutdown\"}");
      send(out, "{\"jsonrpc\":\"2.0\",\"method\":\"exit\"}");
      assertThat(server.waitFor(60, TimeUnit.SECONDS)).isTrue();
      List<String> said = Files.readAllLines(errors);
      assertThat(said).allMatch(line -> line.startsWith("handwheel: "));
      assertThat(said).hasSizeLessThanOrEqualTo(broken.size());
      assertThat(said).noneMatch(line -> line.contains("Unmatched cancel"));
      String answers = Files.readString(folder.resolve("answers.txt"));
      assertThat(answers).contains("\"id\":3").doesNotContain(".java:");
    } finally {
      server.destroyForcibly();
    }
    assertThat(server.exitValue()).isZero();
  }
}
