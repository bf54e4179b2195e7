package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A message that says it is too long costs no memory and does not hurt the ones after it. */
class MessageLimitTests {
  private final List<Long> refused = new ArrayList<>();

  private InputStream limited(InputStream... parts) {
    return new MessageLimit(
        new SequenceInputStream(Collections.enumeration(List.of(parts))), refused::add);
  }

  private static InputStream text(String text) {
    return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
  }

  /** So many bytes that nobody has to keep. */
  private static InputStream filler(long count) {
    return new InputStream() {
      private long left = count;

      @Override
      public int read() {
        return left-- > 0 ? 'x' : -1;
      }

      @Override
      public int read(byte[] to, int offset, int length) {
        if (left <= 0) {
          return -1;
        }
        int some = (int) Math.min(length, left);
        left -= some;
        return some;
      }
    };
  }

  private static String whole(InputStream in) throws IOException {
    return new String(in.readAllBytes(), StandardCharsets.UTF_8);
  }

  @Test
  void usualMessagesPassUnchanged() throws IOException {
    String two = "Content-Length: 2\r\n\r\n{}Content-Type: a\r\nContent-Length: 4\r\n\r\n{ä}";
    assertThat(whole(limited(text(two)))).isEqualTo(two);
    assertThat(refused).isEmpty();
  }

  @Test
  void aMessageThatIsTooLongIsReadPast() throws IOException {
    long length = MessageLimit.MOST_BYTES + 1L;
    String next = "Content-Length: 2\r\n\r\n{}";
    InputStream in =
        limited(text("Content-Length: " + length + "\r\n\r\n"), filler(length), text(next));
    assertThat(whole(in)).isEqualTo(next);
    assertThat(refused).containsExactly(length);
  }

  @Test
  void aLengthOfNearlyTwoGigabytesOrMoreAllocatesNothing() throws IOException {
    for (String length : List.of("2147483647", "999999999999999999")) {
      InputStream in = limited(text("content-length:" + length + "\n\nshort"));
      assertThat(whole(in)).isEmpty();
    }
    assertThat(refused).containsExactly(2147483647L, 999999999999999999L);
  }

  @Test
  void whatIsNoHeadIsPassedOn() throws IOException {
    for (String odd : List.of("\r\n\r\n", "Content-Length: many\r\n\r\n", "X".repeat(20_000))) {
      assertThat(whole(limited(text(odd)))).isEqualTo(odd);
    }
    assertThat(refused).isEmpty();
  }
}
