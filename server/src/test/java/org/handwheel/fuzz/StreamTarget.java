package org.handwheel.fuzz;

import java.util.logging.Level;

/**
 * A target for a fuzzer that is led by coverage: what comes to a server from its editor, byte by
 * byte. It ends when its input ends, and says nothing but messages, without a stack trace.
 */
public final class StreamTarget {
  private StreamTarget() {}

  /** One input of the fuzzer; throws if something is wrong. */
  public static void fuzzerTestOneInput(byte[] data) throws InterruptedException {
    ProtocolFuzz.LIBRARY.setLevel(Level.OFF);
    String wrong = ProtocolFuzz.tried(data);
    if (!wrong.isEmpty()) {
      throw new AssertionError(wrong);
    }
  }
}
