package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.handwheel.model.Axis;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.model.Stock.Skin;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.work.Drawing;

/**
 * Works out a whole plan from the part, the stock and the shop: the order of the faces, how each is
 * held and cut, what is measured with what, the holes and slots, and the inspection.
 *
 * <p>A plan is only given if the same check that every plan goes through has nothing to say about
 * it but what it said about the part and the stock alone. The same files give the same bytes.
 */
public final class Drafter {
  private final StandardTables tables;

  public Drafter(StandardTables tables) {
    this.tables = tables;
  }

  /** What must be there for a draft: whether a file has it, as far as its sections tell. */
  public static boolean isBare(SyntaxTree tree) {
    return has(tree, SectionKind.PART)
        && has(tree, SectionKind.STOCK)
        && !has(tree, SectionKind.SETUP)
        && !has(tree, SectionKind.LOG)
        && !has(tree, SectionKind.INSPECT);
  }

  private static boolean has(SyntaxTree tree, SectionKind kind) {
    return tree.sections().stream().anyMatch(section -> section.kind() == kind);
  }

  /** The text of a plan without its setups, logs and inspection. */
  public static String bareText(SyntaxTree tree) {
    StringBuilder text = new StringBuilder();
    for (Section section : tree.sections()) {
      switch (section.kind()) {
        case SETUP, LOG, INSPECT -> {}
        default -> text.append(section.text());
      }
    }
    return text.toString().stripTrailing() + "\n";
  }

  /**
   * Drafts a plan that has no setups yet.
   *
   * @param most how many different plans at most, the cheapest first; at least 1
   * @throws IllegalArgumentException if the workspace has no such file
   */
  public Drafted draft(Workspace workspace, String path, int most, DraftProgress progress) {
    SyntaxTree tree =
        workspace.file(path).orElseThrow(() -> new IllegalArgumentException("no file " + path));
    if (!isBare(tree)) {
      return new Drafted.Missing(List.of(notBare(tree)));
    }
    Checked bare = new Checker(tables).check(workspace, path);
    List<String> missing = new ArrayList<>(unreadable(bare));
    Optional<Task> found = Task.of(bare, tables);
    if (found.isEmpty()) {
      missing.add("the plan cannot be worked through");
      return new Drafted.Missing(missing);
    }
    Task task = found.get();
    missing.addAll(lacking(task));
    if (!missing.isEmpty()) {
      return new Drafted.Missing(missing);
    }
    PlanText text = new PlanText(workspace, tree, first(task), tables);
    Search search = new Search(task, text, progress);
    Completion completion = new Completion(task, text, bare);
    missing.addAll(completion.lackingTools());
    if (!missing.isEmpty()) {
      return new Drafted.Missing(missing);
    }
    Why finishing = Why.of("the whole");
    List<Drafted.Draft> drafts = search.plans(Math.max(1, most), completion, finishing);
    if (!drafts.isEmpty()) {
      return new Drafted.Plans(drafts);
    }
    return new Drafted.Missing(
        finishing.isEmpty() ? search.failure() : completion.missing(finishing));
  }

  private static String notBare(SyntaxTree tree) {
    if (!has(tree, SectionKind.PART)) {
      return "the plan has no `part`: what is to be made?";
    }
    return has(tree, SectionKind.STOCK)
        ? "the plan has setups, a log or an inspection already"
        : "the plan has no `stock`: what is it to be made of?";
  }

  /** What is wrong with the text as it is, so that nothing may be built on it. */
  private static List<String> unreadable(Checked bare) {
    Set<String> messages = new LinkedHashSet<>();
    for (Finding finding : bare.findings()) {
      if (finding.severity() == Severity.ERROR || finding.rule().equals("face-not-cleaned")) {
        int line =
            bare.tree().contains(finding.origin()) ? bare.tree().line(finding.origin()) + 1 : 0;
        messages.add((line > 0 ? "line " + line + ": " : "") + finding.message());
      }
    }
    return List.copyOf(messages);
  }

  /** What the plan or the shop plainly lacks, before anything is tried. */
  private static List<String> lacking(Task task) {
    List<String> missing = new ArrayList<>();
    Plan plan = task.plan();
    if (task.stock().sizes().isEmpty()) {
      missing.add("the stock has no `size`");
    }
    if (task.shop().all(Owned.Vise.class).isEmpty() && !task.toCut().isEmpty()) {
      missing.add("the shop has no vise (`own vise`)");
    }
    if (plan.machine() == null) {
      missing.add("it is not said for which machine the plan is (`own machine` in the shop)");
    }
    for (PartDimension dimension : PartDimension.values()) {
      Drawing.Demand demand = task.demand(dimension);
      boolean cut = task.toCut().stream().anyMatch(face -> face.dimension() == dimension);
      if (demand != null && cut) {
        lackingInstrument(task, demand).ifPresent(missing::add);
      }
    }
    return missing;
  }

  private static Optional<String> lackingInstrument(Task task, Drawing.Demand demand) {
    Length dial =
        Length.max(
            Length.max(task.dialError(Axis.X), task.dialError(Axis.Y)), task.dialError(Axis.Z));
    Length width = demand.limits().width();
    if (task.instrument(demand, Length.ZERO).isEmpty()) {
      return Optional.of(
          "no instrument is fine enough for the "
              + demand.dimension().word()
              + " of "
              + demand.nominal()
              + ": its tolerance is "
              + width
              + " in all, and one that reaches it and is good to "
              + Length.ofMillimetres(width.millimetres() / 4)
              + " is wanted");
    }
    return dial.times(2).isLessThan(width)
        ? Optional.empty()
        : Optional.of(
            "no dial is fine enough for the "
                + demand.dimension().word()
                + ": a setting may be off by "
                + dial
                + ", and the tolerance is "
                + width
                + " in all");
  }

  /** Lines for the beginning: the saw's burrs come off, and the head is set true. */
  private static List<String> first(Task task) {
    boolean sawn =
        Face.all().stream()
            .anyMatch(
                face ->
                    task.start().start().face(face).burr() != null
                        || task.start().start().face(face).skin() == Skin.SAWN);
    List<String> lines = new ArrayList<>();
    if (sawn) {
      lines.add("deburr all edges");
    }
    if (!task.part().callouts().isEmpty() && !task.toCut().isEmpty()) {
      // As true as the shop's limits take it to be: squareness rests on it.
      lines.add(
          "tram head "
              + task.numbers().write(task.numbers().usual("0.02", "0.0008"))
              + " over "
              + task.numbers().write(task.numbers().usual("150", "6")));
    }
    return lines;
  }
}
