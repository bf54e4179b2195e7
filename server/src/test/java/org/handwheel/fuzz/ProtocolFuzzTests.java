package org.handwheel.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A short run of {@link ProtocolFuzz}, and streams that went wrong once. */
final class ProtocolFuzzTests {
  private static final int SESSIONS = 150;

  @Test
  void spoiltSessionsDoNoHarm() throws IOException, InterruptedException {
    String plan = Files.readString(Path.of("../examples/bearing-block.plan"));
    assertThat(new ProtocolFuzz(plan).run(0, SESSIONS)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Content-Length: 2147483647\r\n\r\n{}",
        "Content-Length: 99999999999999\r\n\r\n{}",
        "Content-Length: -1\r\n\r\n{}",
        "Content-Length: many\r\n\r\n{}",
        "\r\n\r\n{}",
        "Content-Length: 2\r\n\r\n[]",
        "Content-Length: 2\r\n\r\n{}",
        "Content-Length: 4\r\n\r\nnull",
        "Content-Length: 2\r\nContent-Type: a; charset=no-such\r\n\r\n{}",
        "Content-Length: 50\r\n\r\n{"
      })
  void oddStreams(String stream) throws InterruptedException {
    assertThat(ProtocolFuzz.tried(stream.getBytes(StandardCharsets.UTF_8))).isEmpty();
  }
}
