package org.handwheel.fuzz;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.handwheel.ide.Fixtures;
import org.handwheel.ide.HintSettings;
import org.handwheel.ide.Hints;
import org.handwheel.ide.Hovers;
import org.handwheel.ide.Symbols;
import org.handwheel.ide.View;
import org.handwheel.ide.WordColours;
import org.handwheel.ide.actions.Fixes;
import org.handwheel.ide.actions.Organizing;
import org.handwheel.ide.actions.Rewritings;
import org.handwheel.ide.complete.Completion;
import org.handwheel.model.Workspace;
import org.handwheel.plan.format.Formatter;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Mutants;
import org.handwheel.syntax.SyntaxTree;

/**
 * Damages the examples and asks of each damaged text all that an editor asks: findings, formatting,
 * hover, completion, hints, changes. Nothing may fail, hang, or format twice differently.
 *
 * <p>As a program it takes how many texts to try and the first one's number; a text depends on its
 * number alone.
 */
public final class PlanFuzz {
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
  private static final long MOST_NANOS = 2_000_000_000L;

  private final Map<String, SyntaxTree> examples = new TreeMap<>();
  private final List<String> names;
  private final StandardTables tables = StandardTables.builtIn();

  PlanFuzz() {
    for (Path file : Fixtures.examples()) {
      String path = Fixtures.path(file);
      examples.put(path, SyntaxTree.parse(path, Fixtures.read(file)));
    }
    names = List.copyOf(examples.keySet());
  }

  /** A text that went wrong, and how. */
  record Failure(int number, String file, String what) {}

  /** Tries so many texts; the failures. */
  List<Failure> run(int first, int count) {
    List<Failure> failures = new ArrayList<>();
    for (int number = first; number < first + count; number++) {
      Mutants mutants = new Mutants(number);
      String file = names.get(mutants.below(names.size()));
      String text = mutants.anywhere(examples.get(file).source().text());
      int offset = mutants.below(text.length() + 1);
      String what;
      try {
        // Of the processor: what else the machine does is no matter of the text.
        long start = THREADS.getCurrentThreadCpuTime();
        what = tried(file, text, offset);
        if (what.isEmpty() && THREADS.getCurrentThreadCpuTime() - start > MOST_NANOS) {
          what = "it takes longer than two seconds";
        }
      } catch (RuntimeException | StackOverflowError e) {
        what = e + " at " + e.getStackTrace()[0];
      }
      if (!what.isEmpty()) {
        failures.add(new Failure(number, file, what));
      }
    }
    return failures;
  }

  /** What is wrong with the answers about one text; empty if nothing is. */
  private String tried(String file, String text, int offset) {
    SyntaxTree tree = SyntaxTree.parse(file, text);
    Map<String, SyntaxTree> files = new TreeMap<>(examples);
    files.put(file, tree);
    Workspace workspace = new Workspace(files, Map.of());
    View view = new View(workspace, new Checker(tables).check(workspace, file), tables);
    Hovers.at(view, offset, rule -> Optional.empty());
    Completion.at(view, offset);
    Hints.of(view, HintSettings.ALL, 0, text.length());
    WordColours.of(view, 0, text.length());
    Symbols.of(tree);
    int lineStart = tree.source().lineStart(tree.source().lineAt(offset));
    Fixes.at(view, lineStart, offset);
    Rewritings.at(view, offset, offset);
    Organizing.edits(view);
    String formatted = Formatter.format(tree);
    String twice = Formatter.format(SyntaxTree.parse(file, formatted));
    return difference(formatted, twice)
        .map(lines -> "formatting it twice changes it again: " + lines)
        .orElse("");
  }

  /** The first place at which two texts differ, with a little of both. */
  private static Optional<String> difference(String once, String twice) {
    if (once.equals(twice)) {
      return Optional.empty();
    }
    int at = 0;
    while (at < Math.min(once.length(), twice.length()) && once.charAt(at) == twice.charAt(at)) {
      at++;
    }
    return Optional.of(around(once, at) + " against " + around(twice, at));
  }

  private static String around(String text, int at) {
    String part = text.substring(Math.max(0, at - 60), Math.min(text.length(), at + 30));
    return "`" + part.replace("\r", "\\r").replace("\n", "\\n") + "`";
  }

  public static void main(String[] args) {
    int count = Integer.parseInt(args[0]);
    int first = args.length > 1 ? Integer.parseInt(args[1]) : 0;
    List<Failure> failures = new PlanFuzz().run(first, count);
    failures.forEach(System.out::println);
    System.out.println(count + " texts from " + first + ", " + failures.size() + " went wrong");
  }
}
