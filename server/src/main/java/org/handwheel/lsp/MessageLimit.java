package org.handwheel.lsp;

import java.io.ByteArrayOutputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.function.LongConsumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Passes messages of the protocol on as they come, but for those that say they are too long: these
 * are read past, so that no memory is set aside for them.
 */
final class MessageLimit extends FilterInputStream {
  /** The longest message in bytes: six times the largest file. */
  static final int MOST_BYTES = 64 * 1024 * 1024;

  /** A head longer than this is none, and what follows is passed on as it is. */
  private static final int MOST_HEAD = 8192;

  private static final Pattern LENGTH =
      Pattern.compile(
          "^content-length:[ \\t]*([0-9]{1,18})[ \\t]*\\r?$",
          Pattern.CASE_INSENSITIVE | Pattern.MULTILINE);

  private final LongConsumer refused;
  private byte[] head = new byte[0];
  private int headAt;
  private long left;

  /**
   * @param refused told the length of each message that is not passed on
   */
  MessageLimit(InputStream in, LongConsumer refused) {
    super(in);
    this.refused = refused;
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
  }

  @Override
  public int read(byte[] to, int offset, int length) throws IOException {
    if (length == 0) {
      return 0;
    }
    if (headAt == head.length && left == 0) {
      readHead();
    }
    if (headAt < head.length) {
      int count = Math.min(length, head.length - headAt);
      System.arraycopy(head, headAt, to, offset, count);
      headAt += count;
      return count;
    }
    if (left == 0) {
      return -1;
    }
    int count = in.read(to, offset, (int) Math.min(length, left));
    left = count < 0 ? 0 : left - count;
    return count;
  }

  /** Reads the head of the next message that is not too long; an empty one at the end. */
  private void readHead() throws IOException {
    headAt = 0;
    while (true) {
      head = nextHead();
      long length = length(head);
      if (length <= MOST_BYTES) {
        left = Math.max(0, length);
        return;
      }
      refused.accept(length);
      skipAll(length);
    }
  }

  /** The bytes up to and with the first empty line. */
  private byte[] nextHead() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(64);
    int inLine = 0;
    while (bytes.size() < MOST_HEAD) {
      int next = in.read();
      if (next < 0) {
        break;
      }
      bytes.write(next);
      if (next == '\n') {
        if (inLine == 0) {
          break;
        }
        inLine = 0;
      } else if (next != '\r') {
        inLine++;
      }
    }
    return bytes.toByteArray();
  }

  /** The length a head states; less than nothing if it states none that can be read. */
  private static long length(byte[] head) {
    Matcher matcher = LENGTH.matcher(new String(head, StandardCharsets.ISO_8859_1));
    long length = -1;
    while (matcher.find()) {
      length = Long.parseLong(matcher.group(1));
    }
    return length;
  }

  private void skipAll(long count) throws IOException {
    byte[] scratch = new byte[8192];
    long rest = count;
    while (rest > 0) {
      int read = in.read(scratch, 0, (int) Math.min(scratch.length, rest));
      if (read < 0) {
        return;
      }
      rest -= read;
    }
  }

  @Override
  public int available() throws IOException {
    return headAt < head.length ? head.length - headAt : (int) Math.min(left, in.available());
  }

  @Override
  public boolean markSupported() {
    return false;
  }
}
