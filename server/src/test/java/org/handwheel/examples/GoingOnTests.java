package org.handwheel.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.handwheel.examples.GeneratedPlan.Spelling;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;

/** A check that goes on from the one before the edit says the same as one from the beginning. */
class GoingOnTests {
  private static final List<String> SCRAPS =
      List.of(
          "1",
          ".",
          " ",
          "\n",
          "x",
          "setup",
          "\nsetup new\n",
          "  deburr all edges\n",
          "top",
          "0.5",
          "\nlog\n",
          "  cutter EM10\n",
          "  lock x\n",
          "\n# ignore heavy-pass: why not\n");

  @Property(tries = 60, seed = "20261127")
  void overTheExamples(@ForAll long seed) {
    Random random = new Random(seed);
    List<String> plans =
        ExampleFiles.texts().keySet().stream().filter(p -> p.endsWith(".plan")).sorted().toList();
    String path = plans.get(random.nextInt(plans.size()));
    compare(path, ExampleFiles.texts().get(path), random, 12);
  }

  @Property(tries = 10, seed = "20261128")
  void overALongPlan(@ForAll long seed) {
    compare("long.plan", GeneratedPlan.text(Spelling.MM, seed, 40), new Random(seed), 8);
  }

  /** An edit of one setup leaves the runs of the setups before it as they are: the same objects. */
  @Example
  void setupsBeforeAnEditAreTakenOver() {
    String text = GeneratedPlan.text(Spelling.MM, 3, 40);
    SyntaxTree tree = SyntaxTree.parse("long.plan", text);
    Checked before = ExampleFiles.CHECKER.check(workspace(tree), "long.plan");
    int at = text.indexOf("\n", text.indexOf("setup s30 "));
    SyntaxTree edited = tree.update(text.substring(0, at) + "\n  unlock x" + text.substring(at));
    Checked after = ExampleFiles.CHECKER.check(workspace(edited), "long.plan", before);
    for (int i = 0; i < 30; i++) {
      assertThat(after.run().setups().get(i)).isSameAs(before.run().setups().get(i));
    }
    assertThat(after.run().setups().get(30)).isNotSameAs(before.run().setups().get(30));
  }

  /** The shop's text changes too; the plan rests on a shop that is edited in turn. */
  @Property(tries = 25, seed = "-4135711347266783186")
  void withEditsOfTheShop(@ForAll long seed) {
    Random random = new Random(seed);
    List<String> plans =
        ExampleFiles.texts().keySet().stream().filter(p -> p.endsWith(".plan")).sorted().toList();
    String path = plans.get(random.nextInt(plans.size()));
    SyntaxTree tree = SyntaxTree.parse(path, ExampleFiles.texts().get(path));
    Map<String, SyntaxTree> shops = new HashMap<>(SHOPS);
    List<String> shopPaths = shops.keySet().stream().sorted().toList();
    Checked going = null;
    for (int i = 0; i < 10; i++) {
      if (random.nextBoolean()) {
        tree = tree.update(edit(tree.source().text(), random));
      } else {
        String shop = shopPaths.get(random.nextInt(shopPaths.size()));
        // One shop in three is put back as it was: what was let go must be found again.
        SyntaxTree before = shops.get(shop);
        shops.put(
            shop,
            random.nextInt(3) == 0
                ? before.update(ExampleFiles.texts().get(shop))
                : before.update(edit(before.source().text(), random)));
      }
      going = compare(workspace(tree, shops), path, going);
    }
  }

  private static void compare(String path, String text, Random random, int edits) {
    SyntaxTree tree = SyntaxTree.parse(path, text);
    Checked going = ExampleFiles.CHECKER.check(workspace(tree), path);
    for (int i = 0; i < edits; i++) {
      tree = tree.update(edit(tree.source().text(), random));
      going = compare(workspace(tree), path, going);
    }
  }

  private static Checked compare(Workspace workspace, String path, @Nullable Checked before) {
    String now = workspace.file(path).orElseThrow().source().text();
    Checked going = ExampleFiles.CHECKER.check(workspace, path, before);
    Checked fresh = ExampleFiles.CHECKER.check(workspace, path);
    assertThat(going.findings()).as("findings of%n%s", now).isEqualTo(fresh.findings());
    assertThat(going.usedFiles()).isEqualTo(fresh.usedFiles());
    assertThat(going.plan().equals(fresh.plan())).as("plan of%n%s", now).isTrue();
    assertThat(going.run() == null).isEqualTo(fresh.run() == null);
    if (going.run() != null && fresh.run() != null) {
      assertThat(going.run().setups().equals(fresh.run().setups())).as("runs of%n%s", now).isTrue();
      assertThat(going.run().end()).isEqualTo(fresh.run().end());
      assertThat(going.run().start()).isEqualTo(fresh.run().start());
    }
    return going;
  }

  /**
   * Puts a scrap in, takes a few characters out, moves a line, or moves, takes or doubles a
   * section.
   */
  private static String edit(String text, Random random) {
    int at = random.nextInt(text.length() + 1);
    return switch (random.nextInt(6)) {
      case 0 -> text.substring(0, at) + text.substring(Math.min(text.length(), at + 3));
      case 1 -> {
        int start = text.lastIndexOf('\n', Math.max(0, at - 1)) + 1;
        int end = text.indexOf('\n', at);
        yield end < start
            ? text
            : text.substring(0, start)
                + text.substring(end + 1)
                + text.substring(start, end)
                + "\n";
      }
      case 2 -> editSections(text, random);
      default ->
          text.substring(0, at) + SCRAPS.get(random.nextInt(SCRAPS.size())) + text.substring(at);
    };
  }

  private static String editSections(String text, Random random) {
    List<String> sections =
        SyntaxTree.parse("any.plan", text).sections().stream()
            .map(Section::text)
            .collect(Collectors.toCollection(ArrayList::new));
    int from = random.nextInt(sections.size());
    String section = sections.get(from);
    int kind = random.nextInt(3);
    if (kind < 2) {
      sections.remove(from);
    }
    if (kind > 0) {
      sections.add(random.nextInt(sections.size() + 1), section);
    }
    return String.join("", sections);
  }

  private static Workspace workspace(SyntaxTree tree) {
    return workspace(tree, SHOPS);
  }

  private static Workspace workspace(SyntaxTree tree, Map<String, SyntaxTree> shops) {
    Map<String, SyntaxTree> trees = new HashMap<>(shops);
    trees.put(tree.path(), tree);
    return Workspace.of(trees.values().toArray(SyntaxTree[]::new));
  }

  private static final Map<String, SyntaxTree> SHOPS = shops();

  private static Map<String, SyntaxTree> shops() {
    Map<String, SyntaxTree> shops = new HashMap<>();
    ExampleFiles.texts()
        .forEach(
            (path, text) -> {
              if (path.endsWith(".shop")) {
                shops.put(path, SyntaxTree.parse(path, text));
              }
            });
    return shops;
  }
}
