package org.handwheel.fuzz;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Edits many files for a long time over the protocol. First a plan is written key by key as it was
 * recorded ({@link Writing}); then half of the edits type and take back lines of the examples key
 * by key, as at a keyboard, half are made of chance. Memory and threads must not grow, and at the
 * end the findings must be those of a server that sees the texts for the first time.
 *
 * <p>As a program it takes how many edits to make and the seed.
 */
public final class EditingSoak {
  private static final int FILES = 20;
  private static final int STAGES = 10;

  /** Now and then who writes looks at the findings. */
  private static final int KEYS_BETWEEN_LOOKS = 10;

  private final Random random;
  private final List<Text> texts = new ArrayList<>();
  private final List<String> lines = new ArrayList<>();

  EditingSoak(Path examples, long seed) throws IOException {
    this.random = new Random(seed);
    List<Path> files;
    try (Stream<Path> all = Files.walk(examples)) {
      files = all.filter(Files::isRegularFile).sorted().toList();
    }
    List<Path> plans = new ArrayList<>();
    List<Path> shops = new ArrayList<>();
    for (Path file : files) {
      if (file.toString().endsWith(".shop")) {
        shops.add(file);
      } else if (file.toString().endsWith(".plan") && file.getParent().equals(examples)) {
        plans.add(file);
        lines.addAll(Files.readString(file).lines().filter(line -> !line.isBlank()).toList());
      }
    }
    String root = examples.toAbsolutePath().normalize().toUri().toString();
    for (Path shop : shops) {
      texts.add(new Text(root + examples.relativize(shop), Files.readString(shop)));
    }
    for (int i = 0; texts.size() < FILES; i++) {
      // Copies stand beside the examples, so that what they use is found.
      Path plan = plans.get(i % plans.size());
      texts.add(new Text(root + "soak-" + i + "-" + plan.getFileName(), Files.readString(plan)));
    }
  }

  /** A text open in the editor. */
  private static final class Text {
    private final String uri;
    private String first;
    private String text;
    private int version = 1;

    /** What is still to be typed, and where; and how much of what was typed is to be taken back. */
    private String typing = "";

    private int at;
    private int backspaces;

    Text(String uri, String text) {
      this.uri = uri;
      this.first = text;
      this.text = text;
    }
  }

  /**
   * What a soak came to.
   *
   * @param memory bytes in use after each tenth of the edits
   * @param threads how many there were then of those that came since the soak began
   * @param different the files whose findings were not those of a new server
   * @param written keys of the recorded writing
   * @param faults how often the server could not check a text for a fault of its own
   */
  record Outcome(
      List<Long> memory, List<Integer> threads, List<String> different, int written, int faults) {
    /** By how much memory grew from the middle of the soak to its end, at most. */
    double growth() {
      long middle = Collections.max(memory.subList(STAGES / 2 - 2, STAGES / 2 + 1));
      return (double) memory.get(memory.size() - 1) / middle - 1;
    }
  }

  /** Makes so many edits. */
  Outcome run(int edits) throws IOException, InterruptedException {
    String root = texts.get(0).uri.substring(0, texts.get(0).uri.indexOf("shop/"));
    // What ran in this process before may end meanwhile, which is no matter of the soak.
    Set<Thread> others = Thread.getAllStackTraces().keySet();
    WireSession session = WireSession.begin(root);
    for (Text text : texts) {
      session.open(text.uri, text.version, text.text);
    }
    int written = write(session, root);
    List<Long> memory = new ArrayList<>();
    List<Integer> threads = new ArrayList<>();
    for (int stage = 0; stage < STAGES; stage++) {
      for (int i = 0; i < edits / STAGES; i++) {
        edit(session, texts.get(random.nextInt(texts.size())));
      }
      settle(session);
      memory.add(memoryInUse());
      Set<Thread> own = new HashSet<>(Thread.getAllStackTraces().keySet());
      own.removeAll(others);
      threads.add(own.size());
    }
    List<String> different = compare(session, root);
    session.end();
    return new Outcome(memory, threads, different, written, session.faultCount());
  }

  /** Writes a plan as it was recorded; the file is one of those edited by chance afterwards. */
  private int write(WireSession session, String root) throws IOException {
    Text text = new Text(root + "soak-written.plan", "");
    session.open(text.uri, text.version, text.text);
    int written = 0;
    for (Writing.Key key : Writing.keys()) {
      replace(session, text, key.start(), key.end(), key.piece());
      if (++written % KEYS_BETWEEN_LOOKS == 0) {
        session.findings(text.uri, text.version);
      }
    }
    text.first = text.text;
    texts.add(text);
    return written;
  }

  private void settle(WireSession session) {
    texts.forEach(text -> session.findings(text.uri, text.version));
  }

  private List<String> compare(WireSession session, String root)
      throws IOException, InterruptedException {
    WireSession anew = WireSession.begin(root);
    for (Text text : texts) {
      anew.open(text.uri, text.version, text.text);
    }
    List<String> different = new ArrayList<>();
    for (Text text : texts) {
      JsonArray before = session.findings(text.uri, text.version);
      JsonArray now = last(anew, text);
      if (!before.equals(now)) {
        different.add(text.uri);
      }
    }
    anew.end();
    return different;
  }

  /** Findings may come before the shop a plan uses is open; a request waits for the last. */
  private static JsonArray last(WireSession session, Text text) throws IOException {
    JsonObject params = new JsonObject();
    params.add("textDocument", WireSession.file(text.uri));
    session.answer(session.request("textDocument/foldingRange", params));
    return session.findings(text.uri, text.version);
  }

  private static long memoryInUse() throws InterruptedException {
    Runtime runtime = Runtime.getRuntime();
    long least = Long.MAX_VALUE;
    for (int i = 0; i < 3; i++) {
      System.gc();
      least = Math.min(least, runtime.totalMemory() - runtime.freeMemory());
    }
    return least;
  }

  // ---- Edits
  // --------------------------------------------------------------------------------------------

  private void edit(WireSession session, Text text) throws IOException {
    if (!text.typing.isEmpty()) {
      String key = text.typing.substring(0, 1);
      text.typing = text.typing.substring(1);
      replace(session, text, text.at, text.at, key);
      text.at++;
      return;
    }
    if (text.backspaces > 0) {
      text.backspaces--;
      text.at--;
      replace(session, text, text.at, text.at + 1, "");
      return;
    }
    switch (random.nextInt(40)) {
      case 0 -> {
        // A line of an example is typed at the end of some line, and taken back.
        String line = "\n" + lines.get(random.nextInt(lines.size()));
        int end = text.text.indexOf('\n', random.nextInt(text.text.length() + 1));
        text.at = end < 0 ? text.text.length() : end;
        text.typing = line;
        text.backspaces = line.length();
      }
      case 1 -> replace(session, text, 0, text.text.length(), text.first);
      default -> chance(session, text);
    }
  }

  /** Takes a few characters out, puts a few of the text in, or moves a line. */
  private void chance(WireSession session, Text text) throws IOException {
    int start = random.nextInt(text.text.length() + 1);
    int end = Math.min(text.text.length(), start + random.nextInt(4));
    String piece = "";
    if (random.nextBoolean() && !text.text.isEmpty()) {
      int from = random.nextInt(text.text.length());
      piece = text.text.substring(from, Math.min(text.text.length(), from + random.nextInt(30)));
    }
    if (text.text.length() > 3 * text.first.length()) {
      piece = "";
    }
    replace(session, text, start, end, piece);
  }

  private static void replace(WireSession session, Text text, int start, int end, String piece)
      throws IOException {
    String before = text.text;
    text.text = before.substring(0, start) + piece + before.substring(end);
    text.version++;
    session.change(text.uri, text.version, before, start, end, piece);
  }

  /** Takes how many edits to make, and the seed. */
  public static void main(String[] args) throws IOException, InterruptedException {
    int edits = Integer.parseInt(args[0]);
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 0;
    long start = System.nanoTime();
    Outcome outcome = new EditingSoak(Path.of("../examples"), seed).run(edits);
    System.out.printf(
        Locale.ROOT,
        "%d keys of a recorded writing, then %d edits of %d files with seed %d in %d s%n"
            + "memory after each tenth in MB: %s%n"
            + "threads: %s%n"
            + "%d files with other findings than a new server, %d faults%n",
        outcome.written(),
        edits,
        FILES + 1,
        seed,
        (System.nanoTime() - start) / 1_000_000_000,
        outcome.memory().stream().map(bytes -> bytes / 1_000_000).toList(),
        outcome.threads(),
        outcome.different().size(),
        outcome.faults());
  }
}
