package org.handwheel.cli;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.handwheel.lsp.Serve;
import org.jspecify.annotations.Nullable;

/**
 * The server over standard input and output. It stands apart from the commands, since an editor
 * waits: what understands options takes longer to start than the server.
 */
final class StdioServer {
  private StdioServer() {}

  /** Whether a command line asks for the server and for nothing out of the ordinary. */
  static boolean isPlain(String... args) {
    return (args.length == 1 || (args.length == 2 && args[1].equals("--stdio")))
        && args[0].equals("lsp");
  }

  /** Serves until the editor leaves, and returns the exit code. */
  static int serve(InputStream in, OutputStream out, OutputStream err) throws InterruptedException {
    // Standard output belongs to the protocol: a stray print anywhere must not reach it.
    PrintStream log = new PrintStream(err, true, StandardCharsets.UTF_8);
    System.setOut(log);
    @Nullable String version = version();
    return Serve.serve(
        new BufferedInputStream(in),
        new BufferedOutputStream(out),
        log,
        version == null ? "(unpackaged)" : version);
  }

  /** The version in the manifest of the jar, if it runs from one. */
  static @Nullable String version() {
    return StdioServer.class.getPackage().getImplementationVersion();
  }
}
