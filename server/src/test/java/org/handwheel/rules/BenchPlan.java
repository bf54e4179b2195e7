package org.handwheel.rules;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.handwheel.model.Workspace;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SyntaxTree;

/** A small plan for the shop of the examples, put together from its parts. */
record BenchPlan(String material, String part, String stock, String shop, String setups) {
  /** A plan whose stock is given by its size and the words for its faces. */
  static BenchPlan of(String size, String... faces) {
    return new BenchPlan(
        "gunmetal-LG2", "", "  size " + size + "\n  " + String.join("\n  ", faces) + "\n", "", "");
  }

  BenchPlan in(String name) {
    return new BenchPlan(name, part, stock, shop, setups);
  }

  /** With a line in the section of the part. */
  BenchPlan part(String line) {
    return new BenchPlan(material, part + "  " + line + "\n", stock, shop, setups);
  }

  /** With more things in the shop. */
  BenchPlan with(String things) {
    return new BenchPlan(material, part, stock, shop + things, setups);
  }

  BenchPlan setup(String... lines) {
    return new BenchPlan(
        material, part, stock, shop, setups + "\nsetup\n  " + String.join("\n  ", lines) + "\n");
  }

  /** A setup that faces. */
  BenchPlan face(String hold, String face, String cut, String... before) {
    return setup(
        "hold in V80, " + hold,
        String.join("\n  ", before),
        "cutter FC40",
        "touch " + face + " with paper 0.05, zero z",
        "lock y z",
        cut,
        "deburr edges of " + face);
  }

  /** A setup that cuts an end with the side of the cutter. */
  BenchPlan end(String hold, String face, String set, String cut) {
    return setup(
        "hold in V80, " + hold,
        "cutter EM16",
        "touch " + face + " with paper 0.05, zero x",
        set,
        "lock x z",
        cut,
        "deburr edges of " + face);
  }

  Checked check() {
    return check(Rules.all());
  }

  /** What one rule finds, in full as {@link Said} has it; no other rule is asked. */
  String said(String id) {
    List<Rule> one = Rules.all().stream().filter(rule -> rule.id().equals(id)).toList();
    return Said.of(check(one), id);
  }

  private Checked check(List<Rule> rules) {
    String text =
        "language 1\nplan \"Test piece\"\n  units mm\n  use \"shop/inch-mill.shop\"\n"
            + "  use \"shop/more.shop\"\n\npart\n  material "
            + material
            + "\n"
            + part
            + "\nstock\n"
            + stock
            + setups;
    String more = "language 1\nshop \"More\"\n  units mm\n" + shop;
    Map<String, SyntaxTree> files = RulePage.shops();
    files.put("test.plan", SyntaxTree.parse("test.plan", text));
    files.put("shop/more.shop", SyntaxTree.parse("shop/more.shop", more));
    return new Checker(StandardTables.builtIn(), rules)
        .check(new Workspace(files, Map.of()), "test.plan");
  }

  /** The findings with their weight: {@code warning heavy-pass}, in the order of the text. */
  List<String> found() {
    return check().findings().stream().map(BenchPlan::words).toList();
  }

  private static String words(Finding finding) {
    return finding.severity().name().toLowerCase(Locale.ROOT) + " " + finding.rule();
  }
}
