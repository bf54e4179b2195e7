package org.handwheel.plan.draft;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;
import org.handwheel.model.Workspace;
import org.handwheel.plan.format.Formatter;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;

/** Random parts with holes and slots, stock and shops: a clean plan, or what is missing for one. */
class RandomDraftTests {
  private static final StandardTables TABLES = StandardTables.builtIn();

  /** No part, however awkward, keeps anyone waiting longer. */
  private static final long LONGEST_MS = 5_000;

  /** Processor time: other work on the machine does not count. */
  private static final ThreadMXBean CLOCK = ManagementFactory.getThreadMXBean();

  private static final List<String> SKINS = List.of("sawn", "cast", "rolled", "drawn", "milled");
  private static final List<String> MATERIALS =
      List.of("brass-free-cutting", "steel-mild", "gunmetal-LG2", "iron-grey");

  @Property(tries = 100, seed = "11277")
  void draftedCleanOrSaidWhatIsMissing(@ForAll long seed) {
    Random random = new Random(seed);
    String shop = shop(random);
    String plan = plan(random);
    String both = plan + "\n" + shop;
    Workspace workspace = workspace(plan, shop);
    long start = CLOCK.getCurrentThreadCpuTime();
    Drafted drafted = new Drafter(TABLES).draft(workspace, "part.plan", 1, DraftProgress.NONE);
    long millis = (CLOCK.getCurrentThreadCpuTime() - start) / 1_000_000;
    assertThat(millis).as(both).isLessThan(LONGEST_MS);
    Statistics.collect(drafted instanceof Drafted.Plans ? "drafted" : "missing");
    Statistics.coverage(coverage -> coverage.check("drafted").percentage(percent -> percent > 15));
    if (drafted instanceof Drafted.Missing none) {
      assertThat(none.missing()).as(both).isNotEmpty().noneMatch(String::isBlank);
      assertThat(none.missing()).as(both).allMatch(one -> !one.contains("passes the check"));
      return;
    }
    String text = ((Drafted.Plans) drafted).drafts().get(0).text();
    Checked checked = new Checker(TABLES).check(workspace(text, shop), "part.plan");
    assertThat(checked.findings())
        .as(text)
        .noneMatch(one -> one.severity() == Severity.ERROR || one.severity() == Severity.WARNING);
    assertThat(Formatter.edits(SyntaxTree.parse("part.plan", text))).isEmpty();
  }

  private static Workspace workspace(String plan, String shop) {
    return Workspace.of(SyntaxTree.parse("part.plan", plan), SyntaxTree.parse("random.shop", shop));
  }

  private static <T> T one(Random random, List<T> list) {
    return list.get(random.nextInt(list.size()));
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }

  private static String plan(Random random) {
    double length = 20 + random.nextInt(90);
    double width = 8 + random.nextInt(50);
    double height = 4 + random.nextInt(40);
    String within = " +-" + one(random, List.of("0.02", "0.05", "0.1", "0.2"));
    List<String> part = new ArrayList<>();
    part.add("material " + one(random, MATERIALS));
    part.add("length " + number(length) + within);
    part.add("width " + number(width) + within);
    part.add("height " + number(height) + within);
    if (random.nextBoolean()) {
      part.add("datum A top, B back");
      part.add("square B to A 0.05");
      part.add("parallel bottom to A 0.05");
    }
    String at =
        "at (" + number(length * (0.3 + 0.4 * random.nextDouble())) + ", width/2) from left front";
    List<String> openings =
        List.of(
            "hole a in top, dia 5.5, through, " + at,
            "hole b in top, M6, through, " + at,
            "hole c in front, dia 3.2, depth "
                + number(width / 3)
                + ", at (length/2, height/2) from left bottom",
            "slot d in top, " + at + ", length " + number(length / 4) + ", width 6.5, depth 2",
            "hole e in top, dia 8 H7, through, " + at,
            "hole f in top, dia 6, through\npattern g of f, row, count 2, at (8, width/2) from left"
                + " front, by (length - 16, 0)");
    if (random.nextInt(3) > 0) {
      part.addAll(one(random, openings).lines().toList());
    }
    double more = random.nextInt(50) / 10.0;
    String stock =
        "size %s x %s x %s\n%s front back top bottom\n%s left right\n"
            .formatted(
                number(length + more),
                number(width + more),
                number(height + more),
                one(random, SKINS),
                one(random, SKINS));
    return "language 1\nplan \"Random\"\n  units mm\n  use \"random.shop\"\n\npart\n"
        + String.join("\n", part).indent(2)
        + "\nstock\n"
        + stock.indent(2);
  }

  private static String shop(Random random) {
    StringBuilder shop = new StringBuilder("language 1\nshop \"Random\"\n  units mm\n");
    String lead = one(random, List.of("2", "0.1 in", "1.25"));
    shop.append("\nown machine mill\n");
    for (String axis : List.of("x", "y", "z")) {
      shop.append("  lead-").append(axis).append(": ").append(lead).append('\n');
      shop.append("  divisions-").append(axis).append(": 100\n");
      shop.append("  backlash-").append(axis).append(": 0.1\n");
    }
    shop.append("  speeds: 95, 180, 270, 500, 930, 1420, 2100 rpm\n  power: 0.75 kW\n");
    shop.append(
        "\nown vise V\n  jaw-width: %d\n  jaw-depth: %d\n  opening: %d\n"
            .formatted(60 + random.nextInt(60), 18 + random.nextInt(20), 40 + random.nextInt(80)));
    for (int i = random.nextInt(8); i >= 0; i--) {
      shop.append(
          "\nown parallels P%d\n  thickness: %d\n  height: %d\n  length: %d\n  count: %d\n"
              .formatted(
                  i,
                  2 + random.nextInt(8),
                  3 + random.nextInt(26),
                  60 + random.nextInt(50),
                  1 + random.nextInt(4) / 3 + 1 - random.nextInt(2)));
    }
    String rest =
        """

        own packing card
          thickness: 0.4
        #
        own bar B
          dia: 8
        #
        own cutter F
          kind: face-mill
          dia: 40
          teeth: 4
          flute: 8
          made-of: carbide
        #
        own cutter E
          kind: end-mill
          dia: 16
          teeth: 4
          flute: 40
        #
        own cutter S
          kind: slot-drill
          dia: 6
          teeth: 2
          flute: 12
        #
        own drills D
          dia: 13
        #
        own tap T
          dia: 6
          pitch: 1
        #
        own reamer R
          dia: 8
        #
        own instrument caliper
          kind: caliper
          range: 0, 150 mm
          accuracy: 0.02
        #
        own instrument mic
          kind: micrometer
          range: 0, 100 mm
          resolution: 0.01
          accuracy: 0.004
        #
        own instrument square
          kind: square
          accuracy: 0.01
        #
        own instrument dti
          kind: indicator
          accuracy: 0.01
        #
        own finder W
          dia: 6
        """;
    for (String thing : rest.split("#\n", -1)) {
      // Most shops have most things.
      if (random.nextInt(14) > 0) {
        shop.append("\n").append(thing.strip()).append("\n");
      }
    }
    return shop.toString();
  }
}
