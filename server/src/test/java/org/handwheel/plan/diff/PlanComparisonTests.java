package org.handwheel.plan.diff;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.handwheel.ide.actions.PlainForm;
import org.handwheel.model.Workspace;
import org.handwheel.plan.format.Formatter;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Mutants;
import org.handwheel.syntax.SyntaxTree;

/** Comparing any two texts: damaged examples as well as whole ones. */
final class PlanComparisonTests {
  private static final Checker CHECKER = new Checker(StandardTables.builtIn());
  private static final Map<String, SyntaxTree> EXAMPLES = examples();

  private static Map<String, SyntaxTree> examples() {
    Map<String, SyntaxTree> examples = new TreeMap<>();
    Path root = Path.of("..", "examples");
    try (Stream<Path> files = Files.walk(root)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        String path = root.relativize(file).toString().replace('\\', '/');
        if (path.endsWith(".plan") || path.endsWith(".shop")) {
          examples.put(path, SyntaxTree.parse(path, Files.readString(file)));
        }
      }
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    return examples;
  }

  private static Checked checked(String path, String text) {
    Map<String, SyntaxTree> files = new HashMap<>(EXAMPLES);
    files.put(path, SyntaxTree.parse(path, text));
    return CHECKER.check(new Workspace(files, Map.of()), path);
  }

  /** One example and a damaged one. */
  private record Pair(String path, String whole, String damaged) {
    static Pair of(long seed) {
      Mutants mutants = new Mutants(seed);
      List<String> paths = List.copyOf(EXAMPLES.keySet());
      String path = paths.get(mutants.below(paths.size()));
      String whole = EXAMPLES.get(path).source().text();
      return new Pair(path, whole, mutants.anywhere(whole));
    }
  }

  @Property(tries = 40, seed = "18980401")
  void anyTwoTextsCompare(@ForAll long seed) {
    Pair pair = Pair.of(seed);
    Checked whole = checked(pair.path, pair.whole);
    Checked damaged = checked(pair.path, pair.damaged);
    PlanDiff there = PlanComparison.of(whole, damaged);
    PlanDiff back = PlanComparison.of(damaged, whole);
    assertThat(there.groups().isEmpty()).as(pair.damaged).isEqualTo(back.groups().isEmpty());
    assertThat(PlanComparison.of(damaged, checked(pair.path, pair.damaged)).isEmpty()).isTrue();
    assertThat(PlanComparison.of(null, damaged).status()).isEqualTo(PlanDiff.Status.ADDED);
    assertThat(PlanComparison.of(damaged, null).status()).isEqualTo(PlanDiff.Status.REMOVED);
  }

  @Property(tries = 40, seed = "18980402")
  void howATextIsLaidOutMakesNoDifference(@ForAll long seed) {
    Pair pair = Pair.of(seed);
    String formatted = Formatter.format(SyntaxTree.parse(pair.path, pair.damaged));
    PlanDiff diff =
        PlanComparison.of(checked(pair.path, pair.damaged), checked(pair.path, formatted));
    assertThat(diff.groups()).as(pair.damaged).isEmpty();
  }

  @Property(tries = 30, seed = "18980403")
  void theFormThatGitComparesIsAForm(@ForAll long seed) {
    Pair pair = Pair.of(seed);
    String once = PlainForm.of(SyntaxTree.parse(pair.path, pair.damaged));
    assertThat(PlainForm.of(SyntaxTree.parse(pair.path, once))).isEqualTo(once);
  }
}
