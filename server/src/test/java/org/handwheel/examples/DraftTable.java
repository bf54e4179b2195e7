package org.handwheel.examples;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.handwheel.model.Workspace;
import org.handwheel.plan.draft.Drafted;
import org.handwheel.plan.draft.Drafter;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;

/**
 * Prints how much processor time each example's draft takes: the first time in this process, and
 * the middle of {@value #TIMES} more. For a person to run and read; the tests only have a generous
 * limit.
 */
final class DraftTable {
  private static final int TIMES = 9;
  private static final ThreadMXBean CLOCK = ManagementFactory.getThreadMXBean();

  private DraftTable() {}

  public static void main(String[] arguments) {
    Drafter drafter = new Drafter(StandardTables.builtIn());
    System.out.println("| Example | Draft | Setups tried | First, ms | Then, ms |");
    System.out.println("|---|---|---|---|---|");
    ExampleFiles.texts().keySet().stream()
        .filter(path -> path.endsWith(".plan") && !path.startsWith("mistakes/"))
        .sorted()
        .forEach(path -> System.out.println(row(drafter, path)));
  }

  private static String row(Drafter drafter, String path) {
    Workspace bare = bare(path);
    List<Double> times = new ArrayList<>();
    Drafted drafted = null;
    int[] tried = new int[1];
    for (int i = 0; i <= TIMES; i++) {
      long start = CLOCK.getCurrentThreadCpuTime();
      drafted = drafter.draft(bare, path, 1, count -> tried[0] = count);
      times.add((CLOCK.getCurrentThreadCpuTime() - start) / 1e6);
    }
    List<Double> later = times.subList(1, times.size()).stream().sorted().toList();
    return String.format(
        Locale.ROOT,
        "| %s | %s | %d | %.0f | %.0f |",
        path,
        outcome(drafted),
        tried[0],
        times.get(0),
        later.get(TIMES / 2));
  }

  private static String outcome(Drafted drafted) {
    if (drafted instanceof Drafted.Missing missing) {
      return missing.missing().size() + " missing: " + missing.missing().get(0);
    }
    Drafted.Draft draft = ((Drafted.Plans) drafted).drafts().get(0);
    return draft.setups().size()
        + " setups"
        + (draft.leftOut().isEmpty() ? "" : "; " + String.join("; ", draft.leftOut()));
  }

  /** All examples, this one without its setups; the same as for its draft in the tests. */
  static Workspace bare(String path) {
    Map<String, String> texts = ExampleFiles.texts();
    texts.put(path, Drafter.bareText(SyntaxTree.parse(path, texts.getOrDefault(path, ""))));
    return Workspace.of(
        texts.entrySet().stream()
            .map(file -> SyntaxTree.parse(file.getKey(), file.getValue()))
            .toArray(SyntaxTree[]::new));
  }
}
