package org.handwheel.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.ide.View;
import org.handwheel.ide.complete.Completion;
import org.handwheel.model.Plan;
import org.handwheel.model.Workspace;
import org.handwheel.model.build.PlanFiles;
import org.handwheel.plan.format.Formatter;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.work.Engine;
import org.handwheel.work.PlanRun;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How the parts of a check grow with the length of a plan, measured by JMH, with the options of the
 * launcher. From the folder {@code server}, with the class path of the tests:
 *
 * <pre>java -cp ... org.openjdk.jmh.Main Growth -prof gc</pre>
 *
 * <p>Its options choose less: {@code -p lines=1000 Growth.key}, {@code -f 1 -wi 2 -i 3}.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 6, time = 1)
@Fork(
    value = 1,
    jvmArgs = {"-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Xms16m", "-Xmx2g"})
public class Growth {
  private static final String PATH = "long.plan";

  @Param({"100", "1000", "10000", "100000"})
  public int lines;

  private final StandardTables tables = StandardTables.builtIn();
  private final Checker checker = new Checker(tables);
  private String text;
  private SyntaxTree shop;
  private SyntaxTree tree;
  private Workspace workspace;
  private Plan plan;
  private View view;
  private int inStatement;
  private Typing key;
  private Typing newLine;
  private Typing brokenLine;

  /** Makes the plan and all that the later steps start from. */
  @Setup
  public void prepare() throws IOException {
    String bench = Files.readString(Path.of("../examples/shop/inch-mill.shop"));
    shop = SyntaxTree.parse("shop/inch-mill.shop", bench);
    text = plan(lines);
    tree = SyntaxTree.parse(PATH, text);
    workspace = Workspace.of(tree, shop);
    plan = PlanFiles.build(workspace, PATH);
    view = new View(workspace, checker.check(workspace, PATH), tables);
    int middle = text.length() / 2;
    inStatement = text.indexOf("rough ", middle) + 6;
    key = new Typing(text.indexOf("pass 0.5", middle) + 5, "9");
    newLine = new Typing(text.indexOf("\n", middle), "\n  unlock x");
    brokenLine = new Typing(text.indexOf("measure ", middle) + 8, "x ");
  }

  @Benchmark
  public List<? extends Token> lex() {
    return new HandwheelLexer(CharStreams.fromString(text)).getAllTokens();
  }

  @Benchmark
  public SyntaxTree parse() {
    return SyntaxTree.parse(PATH, text);
  }

  @Benchmark
  public Plan model() {
    return PlanFiles.build(workspace, PATH);
  }

  @Benchmark
  public PlanRun engine() {
    return Engine.run(plan, tables);
  }

  /** All but the parsing. */
  @Benchmark
  public Checked check() {
    return checker.check(workspace, PATH);
  }

  @Benchmark
  public Object format() {
    return Formatter.edits(tree);
  }

  @Benchmark
  public Object completion() {
    return Completion.at(view, inStatement);
  }

  @Benchmark
  public Checked keyAndCheck() {
    return key.next();
  }

  @Benchmark
  public Checked newLineAndCheck() {
    return newLine.next();
  }

  /** A line that breaks and heals. */
  @Benchmark
  public Checked brokenLineAndCheck() {
    return brokenLine.next();
  }

  /** Puts something in and takes it out again in turns, going on from the last check. */
  private final class Typing {
    private final int at;
    private final String other;
    private SyntaxTree now = tree;
    private Checked last = checker.check(workspace, PATH);

    Typing(int at, String typed) {
      this.at = at;
      this.other = text.substring(0, at) + typed + text.substring(at);
    }

    Checked next() {
      String next = now.source().length() == text.length() ? other : text;
      int tail = text.length() - at;
      now = now.update(now.source().changed(next, at, tail), at, tail);
      last =
          checker.check(new Workspace(Map.of(PATH, now, shop.path(), shop), Map.of()), PATH, last);
      return last;
    }
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
