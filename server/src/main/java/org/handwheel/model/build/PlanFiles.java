package org.handwheel.model.build;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.MachineLineContext;
import org.handwheel.grammar.HandwheelParser.PlanHeaderContext;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.model.Plan;
import org.handwheel.model.Setup;
import org.handwheel.model.Shop;
import org.handwheel.model.Stock;
import org.handwheel.model.Workspace;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;

/** Builds a plan with the shop files it uses; a pure function of the workspace. */
public final class PlanFiles {
  private final Workspace workspace;
  private final FileBuilder file;
  private Shop shop = Shop.EMPTY;

  private final @Nullable PlanReading earlier;

  private PlanFiles(Workspace workspace, SyntaxTree tree, @Nullable PlanReading earlier) {
    this.workspace = workspace;
    this.file = new FileBuilder(tree);
    this.earlier = earlier;
  }

  /**
   * The plan in a file of the workspace.
   *
   * @throws IllegalArgumentException if the workspace has no such file
   */
  public static Plan build(Workspace workspace, String path) {
    return read(workspace, path, null).plan();
  }

  /**
   * The plan in a file of the workspace, going on from an earlier reading of it: a setup whose text
   * and whose ground are the same is not read again. The result equals a reading from the
   * beginning.
   *
   * @param earlier a reading of this or any other plan, or nothing
   * @throws IllegalArgumentException if the workspace has no such file
   */
  public static PlanReading read(Workspace workspace, String path, @Nullable PlanReading earlier) {
    SyntaxTree tree =
        workspace.file(path).orElseThrow(() -> new IllegalArgumentException("no file " + path));
    return new PlanFiles(workspace, tree, earlier).read();
  }

  /** The names and values a plan has after it was built, for whoever asks what a node is worth. */
  static FileBuilder built(Workspace workspace, SyntaxTree tree) {
    PlanFiles files = new PlanFiles(workspace, tree, null);
    files.read();
    return files.file;
  }

  private PlanReading read() {
    SyntaxTree tree = file.tree();
    List<Section> later = new ArrayList<>();
    Section planSection = null;
    Section partSection = null;
    Section stockSection = null;
    for (Section section : tree.sections()) {
      section.problems().forEach(file.problems()::add);
      switch (section.kind()) {
        case PREAMBLE -> readCommonOnly(section);
        case PLAN -> {
          planSection = once(section, planSection);
          readCommonOnly(section);
        }
        case PART -> partSection = once(section, partSection);
        case STOCK -> stockSection = once(section, stockSection);
        case SETUP, LOG, INSPECT -> later.add(section);
        case SHOP, OWN ->
            file.problems()
                .error(
                    "misplaced-line",
                    section.header(),
                    "`" + section.kind().word() + "` belongs in a shop file, not in a plan");
      }
    }
    UsedShops used = UsedShops.read(workspace, file, earlier == null ? Map.of() : earlier.shops());
    Plan before = earlier == null ? null : earlier.plan();
    shop = same(used.shop(), before == null ? null : before.shop());
    Part part = partSection == null ? null : new PartBuilder(file, partSection).build();
    Stock stock = stockSection == null ? null : new StockBuilder(file, stockSection).build();
    part = part == null ? null : same(part, before == null ? null : before.part());
    stock = stock == null ? null : same(stock, before == null ? null : before.stock());
    EarlierSetups known =
        new EarlierSetups(file, shop, part, earlier == null ? Map.of() : earlier.setups());
    Owned.Machine machine = machine(tree);
    SetupsBuilder setups = new SetupsBuilder(file, shop, part, known);
    later.stream().filter(s -> s.kind() == SectionKind.SETUP).forEach(setups::declare);
    later.stream().filter(s -> s.kind() == SectionKind.SETUP).forEach(setups::read);
    requireSizes(partSection, stockSection, stock, setups.setups());
    RecordsBuilder records = new RecordsBuilder(file, shop, part);
    later.forEach(records::read);
    Origin header = planSection == null ? tree.sections().get(0).header() : planSection.header();
    Plan plan =
        new Plan(
            tree.path(),
            title(planSection),
            revision(planSection),
            header,
            machine,
            shop,
            part,
            stock,
            setups.setups(),
            records.logs(),
            records.inspections(),
            file.names().names(),
            used.paths(),
            file.problems().findings());
    return new PlanReading(plan, used.files(), known.forNext());
  }

  /** The very thing of an earlier reading if this one is equal, so that comparing is quick. */
  private static <T> T same(T now, @Nullable T before) {
    return before != null && now.equals(before) ? before : now;
  }

  /**
   * Setups cannot be worked through without the stock's size; says so once, where it would stand.
   */
  private void requireSizes(
      @Nullable Section part,
      @Nullable Section stockSection,
      @Nullable Stock stock,
      List<Setup> setups) {
    boolean said = stock != null && (!stock.sizes().isEmpty() || stock.sizeOrigin() != null);
    boolean broken = stockSection != null && !stockSection.problems().isEmpty();
    if (setups.isEmpty() || said || broken) {
      return;
    }
    Section at = stockSection != null ? stockSection : part;
    file.problems()
        .error(
            "missing-line",
            at == null ? setups.get(0).header() : at.header(),
            "say how large the stock is, or nothing can be worked out: in `stock`, `size LENGTH x"
                + " WIDTH x HEIGHT`");
  }

  private Section once(Section section, @Nullable Section before) {
    if (before == null) {
      return section;
    }
    file.problems()
        .repeated(
            "repeated-line",
            section.header(),
            "a plan has one `" + section.kind().word() + "` section; this one is not read",
            before.header());
    return before;
  }

  private void readCommonOnly(Section section) {
    for (ContentContext line : section.lines()) {
      if (section.isBroken(line) || line.header() != null || line.statement() == null) {
        continue;
      }
      if (!file.readCommon(section, line) && !(line.statement() instanceof MachineLineContext)) {
        file.misplaced(section, line);
      }
    }
  }

  private static @Nullable String revision(@Nullable Section section) {
    if (section == null || section.lines().isEmpty()) {
      return null;
    }
    return section.lines().get(0).header() instanceof PlanHeaderContext header
            && header.revision() != null
        ? header.revision().getText()
        : null;
  }

  private static String title(@Nullable Section section) {
    if (section == null || section.lines().isEmpty()) {
      return "";
    }
    return section.lines().get(0).header() instanceof PlanHeaderContext header
        ? FileBuilder.unquote(header.title())
        : "";
  }

  private Owned.@Nullable Machine machine(SyntaxTree tree) {
    Owned.Machine named = null;
    boolean said = false;
    for (Section section : tree.sections()) {
      if (!section.has(MachineLineContext.class)) {
        continue;
      }
      for (ContentContext line : section.lines()) {
        if (line.statement() instanceof MachineLineContext machine && !section.isBroken(line)) {
          if (said) {
            file.problems()
                .error("repeated-line", section.origin(machine), "the machine is already given");
            continue;
          }
          said = true;
          named = new Resolver(file, shop).machine(section, machine.machineRef());
        }
      }
    }
    List<Owned.Machine> owned = shop.all(Owned.Machine.class);
    if (said || owned.isEmpty()) {
      return named;
    }
    if (owned.size() > 1) {
      String names = String.join(", ", owned.stream().map(Owned::name).toList());
      file.problems()
          .warning(
              "missing-line",
              tree.sections().get(Math.min(1, tree.sections().size() - 1)).header(),
              "the shop has several machines (" + names + "); say which: `machine NAME`");
      return null;
    }
    return owned.get(0);
  }
}
