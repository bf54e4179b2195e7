package org.handwheel.bench;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.jar.Attributes;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;

/**
 * Compares the start of the server with that of {@link BareServer}, started the same way: by the
 * same launcher, from a jar with the same libraries, with a class-data archive made of the same
 * session. Each is started so many times in turns, from a finished build:
 *
 * <pre>java -cp target/test-classes:target/handwheel.jar org.handwheel.bench.StartUp 20</pre>
 */
public final class StartUp {
  private static final String PLAN =
      """
      language 1
      plan "Packing piece"
        units mm
      part
        length 40
        width 20
        height 10 +0/-0.05
      stock
        size 44 x 22 x 13
      setup one
        hold in V80, up top, fixed back
      """;

  private final Path folder;

  private StartUp(Path folder) {
    this.folder = folder;
  }

  /** Times since the process was started, in milliseconds. */
  private record Times(double greeted, double firstFinding) {}

  /** Takes how many times to start each. */
  public static void main(String[] args) throws IOException, InterruptedException {
    int count = args.length > 0 ? Integer.parseInt(args[0]) : 20;
    Path folder = Files.createTempDirectory("handwheel-start");
    new StartUp(folder).run(count);
  }

  private void run(int count) throws IOException, InterruptedException {
    Path handwheel = Path.of("bin/handwheel").toAbsolutePath();
    Path bare = bareServer(handwheel);
    List<Times> own = new ArrayList<>();
    List<Times> others = new ArrayList<>();
    // The first start of each only warms the disk.
    start(handwheel);
    start(bare);
    for (int i = 0; i < count; i++) {
      own.add(start(handwheel));
      others.add(start(bare));
    }
    report("handwheel", own);
    report("bare server", others);
    System.out.printf(
        Locale.ROOT,
        "first finding: %.2f times the bare server%n",
        median(own.stream().map(Times::firstFinding).toList())
            / median(others.stream().map(Times::firstFinding).toList()));
  }

  private static void report(String name, List<Times> times) {
    System.out.printf(
        Locale.ROOT,
        "%-12s greeted after %.0f ms, first finding after %.0f ms (medians of %d starts)%n",
        name,
        median(times.stream().map(Times::greeted).toList()),
        median(times.stream().map(Times::firstFinding).toList()),
        times.size());
  }

  private static double median(List<Double> values) {
    List<Double> sorted = new ArrayList<>(values);
    Collections.sort(sorted);
    return sorted.get(sorted.size() / 2);
  }

  // ---- The bare server, packed as Handwheel is
  // --------------------------------------------------------------

  private Path bareServer(Path launcher) throws IOException, InterruptedException {
    Path lib = Files.createDirectories(folder.resolve("bare/lib"));
    Path bin = Files.createDirectories(folder.resolve("bare/bin"));
    Path jar = lib.resolve("handwheel.jar");
    pack(launcher.resolveSibling("../target/handwheel.jar").normalize(), jar);
    Path copy = bin.resolve("handwheel");
    Files.copy(launcher, copy, StandardCopyOption.COPY_ATTRIBUTES);
    Process archiving =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin/java").toString(),
                "-XX:ArchiveClassesAtExit=" + lib.resolve("handwheel.jsa"),
                "-XX:+UseSerialGC",
                "-jar",
                jar.toString())
            .redirectInput(Path.of("src/main/class-data/session.lsp").toFile())
            .redirectOutput(folder.resolve("archive.log").toFile())
            .redirectErrorStream(true)
            .start();
    archiving.waitFor();
    return copy;
  }

  /** The same jar with another main class. */
  private static void pack(Path from, Path to) throws IOException {
    Manifest manifest = new Manifest();
    manifest.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
    manifest.getMainAttributes().put(Attributes.Name.MAIN_CLASS, BareServer.class.getName());
    try (JarFile source = new JarFile(from.toFile());
        JarOutputStream out = new JarOutputStream(Files.newOutputStream(to), manifest)) {
      for (JarEntry entry : Collections.list(source.entries())) {
        if (!entry.getName().equals(JarFile.MANIFEST_NAME)) {
          out.putNextEntry(new JarEntry(entry.getName()));
          try (InputStream in = source.getInputStream(entry)) {
            in.transferTo(out);
          }
        }
      }
      String name = BareServer.class.getName().replace('.', '/') + ".class";
      out.putNextEntry(new JarEntry(name));
      try (InputStream in = BareServer.class.getResourceAsStream("/" + name)) {
        in.transferTo(out);
      }
    }
  }

  // ---- One start
  // ------------------------------------------------------------------------------------------

  private Times start(Path launcher) throws IOException, InterruptedException {
    String root = folder.toUri().toString();
    long start = System.nanoTime();
    Process process =
        new ProcessBuilder(launcher.toString(), "lsp")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    OutputStream out = process.getOutputStream();
    InputStream in = process.getInputStream();
    send(
        out,
        "{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"initialize\",\"params\":{\"processId\":null,"
            + "\"rootUri\":\""
            + root
            + "\",\"capabilities\":{\"textDocument\":{\"publishDiagnostics\":"
            + "{\"relatedInformation\":true}}}}}");
    awaitText(in, "\"id\":1");
    double greeted = since(start);
    send(out, "{\"jsonrpc\":\"2.0\",\"method\":\"initialized\",\"params\":{}}");
    send(
        out,
        "{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":{\"textDocument\":"
            + "{\"uri\":\""
            + root
            + "a.plan\",\"languageId\":\"handwheel\",\"version\":1,\"text\":\""
            + PLAN.replace("\"", "\\\"").replace("\n", "\\n")
            + "\"}}}");
    awaitText(in, "\"diagnostics\":[{");
    double found = since(start);
    process.destroy();
    process.waitFor();
    return new Times(greeted, found);
  }

  private static double since(long start) {
    return (System.nanoTime() - start) / 1e6;
  }

  private static void send(OutputStream out, String body) throws IOException {
    byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
    out.write(("Content-Length: " + bytes.length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
    out.write(bytes);
    out.flush();
  }

  /** Reads until something was said. */
  private static void awaitText(InputStream in, String wanted) throws IOException {
    StringBuilder said = new StringBuilder();
    byte[] buffer = new byte[8192];
    while (said.indexOf(wanted) < 0) {
      int count = in.read(buffer);
      if (count < 0) {
        throw new IOException("it ended after: " + said);
      }
      said.append(new String(buffer, 0, count, StandardCharsets.UTF_8));
    }
  }
}
