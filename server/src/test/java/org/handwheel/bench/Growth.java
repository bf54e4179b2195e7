package org.handwheel.bench;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.antlr.v4.runtime.CharStreams;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.model.Plan;
import org.handwheel.model.Workspace;
import org.handwheel.model.build.PlanFiles;
import org.handwheel.plan.format.Formatter;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.work.Engine;

/**
 * How the parts of a check grow with the length of a plan: processor time of the thread and memory
 * set aside, which other work on the machine does not change. As a program it takes the numbers of
 * lines:
 *
 * <pre>java -cp ... org.handwheel.bench.Growth 100 1000 10000 100000</pre>
 */
public final class Growth {
  private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();
  private static final String PATH = "long.plan";

  /** Long enough for the compiler to have seen it all, short enough to wait for. */
  private static final long ENOUGH_NANOS = 3_000_000_000L;

  private final SyntaxTree shop;
  private final StandardTables tables = StandardTables.builtIn();
  private final Checker checker = new Checker(tables);

  private Growth(String shop) {
    this.shop = SyntaxTree.parse("shop/inch-mill.shop", shop);
  }

  /** Takes numbers of lines. */
  public static void main(String[] args) throws IOException {
    Growth growth = new Growth(Files.readString(Path.of("../examples/shop/inch-mill.shop")));
    System.out.println("| lines | step | ms | kB | us a line |");
    System.out.println("|---|---|---|---|---|");
    for (String lines : args) {
      growth.measure(Integer.parseInt(lines));
    }
  }

  private void measure(int lines) {
    String text = plan(lines);
    SyntaxTree tree = SyntaxTree.parse(PATH, text);
    Workspace workspace = Workspace.of(tree, shop);
    Plan plan = PlanFiles.build(workspace, PATH);
    report(lines, "lex", () -> new HandwheelLexer(CharStreams.fromString(text)).getAllTokens());
    report(lines, "parse", () -> SyntaxTree.parse(PATH, text));
    report(lines, "model", () -> PlanFiles.build(workspace, PATH));
    report(lines, "engine", () -> Engine.run(plan, tables));
    report(lines, "check", () -> checker.check(workspace, PATH));
    report(lines, "format", () -> Formatter.edits(tree));
    int middle = text.indexOf("pass 0.5", text.length() / 2) + 5;
    report(lines, "edit and check", typing(text, middle, "9"));
    int line = text.indexOf("\n", text.length() / 2);
    report(lines, "new line and check", typing(text, line, "\n  unlock x"));
    int word = text.indexOf("measure ", text.length() / 2) + 8;
    report(lines, "broken line and check", typing(text, word, "x "));
  }

  /** Puts something in and takes it out again in turns. */
  private Runnable typing(String text, int at, String typed) {
    String other = text.substring(0, at) + typed + text.substring(at);
    SyntaxTree[] tree = {SyntaxTree.parse(PATH, text)};
    Checked[] last = {checker.check(Workspace.of(tree[0], shop), PATH)};
    return () -> {
      String next = tree[0].source().length() == text.length() ? other : text;
      int tail = text.length() - at;
      tree[0] = tree[0].update(tree[0].source().changed(next, at, tail), at, tail);
      last[0] = checker.check(Workspace.of(tree[0], shop), PATH, last[0]);
    };
  }

  private static void report(int lines, String name, Runnable work) {
    List<Long> times = new ArrayList<>();
    List<Long> sizes = new ArrayList<>();
    long all = 0;
    while (times.size() < 6 || (all < ENOUGH_NANOS && times.size() < 400)) {
      long bytes = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
      long start = THREADS.getCurrentThreadCpuTime();
      work.run();
      long time = THREADS.getCurrentThreadCpuTime() - start;
      times.add(time);
      sizes.add(THREADS.getThreadAllocatedBytes(Thread.currentThread().getId()) - bytes);
      all += time;
    }
    double ms = median(times) / 1e6;
    System.out.printf(
        Locale.ROOT,
        "| %d | %s | %.2f | %.0f | %.2f |%n",
        lines,
        name,
        ms,
        median(sizes) / 1000,
        ms * 1000 / lines);
  }

  /** Of the second half, when the compiler is done. */
  private static double median(List<Long> values) {
    List<Long> later = new ArrayList<>(values.subList(values.size() / 2, values.size()));
    Collections.sort(later);
    return later.get(later.size() / 2);
  }

  /** A plan of about so many lines: a block brought to height again and again. */
  static String plan(int lines) {
    StringBuilder text =
        new StringBuilder(
            """
            language 1
            plan "Made long"
              units mm
              use "shop/inch-mill.shop"
            part
              material gunmetal-LG2
              height 21.00 +0/-0.05
              length 56 +-0.1
              width 30 +0/-0.05
            stock
              size 60 x 33.5 x 24.5
            """);
    for (int i = 0; i < (lines - 11) / 13; i++) {
      text.append("setup s").append(i).append(" \"Bottom, to height\"\n");
      text.append(
          """
            hold in V80, up bottom, fixed back, on pair P6x10
            seat tapped, both parallels tight
            cutter FC40
            touch bottom with paper 0.05, zero z
            lock y z
            rough bottom to height leaving 0.25, pass 0.5
            deburr edges of bottom
            measure height with mic25
            finish bottom to height
            deburr edges of bottom
            measure height with mic25

          """);
    }
    return text.toString();
  }
}
