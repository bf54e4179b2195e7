package org.handwheel.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.handwheel.model.Located;
import org.handwheel.model.LogSection;
import org.handwheel.model.Plan;
import org.handwheel.model.Shop;
import org.handwheel.model.Workspace;
import org.handwheel.model.build.PlanFiles;
import org.handwheel.model.build.PlanReading;
import org.handwheel.model.build.ShopFiles;
import org.handwheel.rules.Checked.Progress;
import org.handwheel.rules.name.MaterialUnknown;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Ignore;
import org.handwheel.syntax.Nearest;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.LengthOverflowException;
import org.handwheel.work.Engine;
import org.handwheel.work.PlanRun;
import org.jspecify.annotations.Nullable;

/**
 * Checks a file: the one function that the command line and the language server call.
 *
 * <p>It reads nothing but the workspace and keeps nothing; the same workspace gives the same
 * result.
 */
public final class Checker {
  private final StandardTables tables;
  private final Map<String, Rule> rules = new LinkedHashMap<>();
  private final Set<String> ids = Rules.severities().keySet();

  public Checker(StandardTables tables) {
    this(tables, Rules.all());
  }

  /** A checker of some of the rules: what one finds may rest on what others find. */
  Checker(StandardTables tables, List<Rule> some) {
    this.tables = tables;
    some.forEach(rule -> rules.put(rule.id(), rule));
  }

  /**
   * Checks the plan or shop file at a path of the workspace.
   *
   * @throws IllegalArgumentException if the workspace has no such file
   */
  public Checked check(Workspace workspace, String path) {
    return check(workspace, path, null);
  }

  /**
   * Checks a file, going on from an earlier check of it where nothing has changed. The result
   * equals that of a check from the beginning.
   *
   * @param earlier what a checker with the same tables said of the file before, if it did
   * @throws IllegalArgumentException if the workspace has no such file
   */
  public Checked check(Workspace workspace, String path, @Nullable Checked earlier) {
    SyntaxTree tree =
        workspace.file(path).orElseThrow(() -> new IllegalArgumentException("no file " + path));
    return isShop(tree) ? checkShop(workspace, tree) : checkPlan(workspace, tree, earlier);
  }

  /** A file is a shop file by its name, or by its first header if the name does not tell. */
  public static boolean isShop(SyntaxTree tree) {
    String name = tree.path().toLowerCase(Locale.ROOT);
    if (name.endsWith(".shop")) {
      return true;
    }
    return !name.endsWith(".plan")
        && tree.sections().stream()
            .map(Section::kind)
            .filter(kind -> kind != SectionKind.PREAMBLE)
            .findFirst()
            .filter(kind -> kind == SectionKind.SHOP || kind == SectionKind.OWN)
            .isPresent();
  }

  private Checked checkShop(Workspace workspace, SyntaxTree tree) {
    ShopFiles.Checkable checked = ShopFiles.check(workspace, tree);
    Shop shop = checked.file().shop();
    List<Finding> findings = new ArrayList<>(checked.file().findings());
    findings.addAll(unsoundSeverities(shop));
    findings.addAll(new MaterialUnknown().check(shop, tables));
    return new Checked(tree, null, null, checked.usedFiles(), settle(tree, shop, findings), null);
  }

  private List<Finding> unsoundSeverities(Shop shop) {
    List<Finding> findings = new ArrayList<>();
    shop.severities()
        .forEach(
            (rule, setting) -> {
              if (!ids.contains(rule)) {
                findings.add(unknownRule("unknown-property", rule, setting.origin()));
              } else if (FindingRules.isFixed(rule) && setting.value() != Severity.ERROR) {
                findings.add(
                    new Finding(
                        "bad-value",
                        Severity.ERROR,
                        setting.origin(),
                        "`" + rule + "` is always an error"));
              }
            });
    return findings;
  }

  private Finding unknownRule(String id, String rule, Origin origin) {
    String message = "there is no rule `" + rule + "`";
    Optional<String> near = Nearest.to(rule, ids);
    return new Finding(
        id,
        Severity.WARNING,
        origin,
        near.map(word -> message + "; did you mean `" + word + "`?").orElse(message));
  }

  private Checked checkPlan(Workspace workspace, SyntaxTree tree, @Nullable Checked earlier) {
    Progress before = earlier == null ? null : earlier.progress();
    PlanReading reading =
        PlanFiles.read(workspace, tree.path(), before == null ? null : before.reading());
    Plan plan = reading.plan();
    List<Finding> findings = new ArrayList<>(plan.findings());
    PlanRun run = null;
    SetupFindings inSetups = null;
    try {
      run = Engine.run(plan, tables, earlier == null ? null : earlier.run());
      inSetups = SetupFindings.of(plan, run, tables, before == null ? null : before.inSetups());
      findings.addAll(new Checkup(plan, run, tables, rules, inSetups).findings());
      for (LogSection log : plan.logs()) {
        addNew(findings, withLog(plan, log), log);
      }
    } catch (LengthOverflowException e) {
      findings.add(
          new Finding(
              "overflow",
              Severity.ERROR,
              plan.header(),
              "the sizes of this plan are too large to be worked out"));
    }
    return new Checked(
        tree,
        plan,
        run,
        plan.usedFiles(),
        settle(tree, plan.shop(), findings),
        new Progress(reading, inSetups));
  }

  /** What is found with the readings of one log, which is worked through from the beginning. */
  private List<Finding> withLog(Plan plan, LogSection log) {
    PlanRun run = Engine.run(plan, log, tables);
    SetupFindings inSetups = SetupFindings.of(plan, run, tables, null);
    return new Checkup(plan, run, tables, rules, inSetups).findings();
  }

  /** Adds what only the readings of a log bring out, saying whose readings they are. */
  private static void addNew(List<Finding> findings, List<Finding> more, LogSection log) {
    Set<String> before = new HashSet<>();
    findings.forEach(finding -> before.add(place(finding)));
    for (Finding finding : more) {
      if (!before.add(place(finding))) {
        continue;
      }
      if (finding.origin().section() == log.header().section()) {
        findings.add(finding);
        continue;
      }
      String words = log.title().isEmpty() ? "with the readings of the log" : log.title();
      List<Related> related = new ArrayList<>(finding.related());
      related.add(new Related(log.header(), "with the readings of this log"));
      findings.add(
          new Finding(
              finding.rule(),
              finding.severity(),
              finding.origin(),
              finding.message() + " (" + words + ")",
              related,
              finding.fixes()));
    }
  }

  private static String place(Finding finding) {
    Origin origin = finding.origin();
    return finding.rule() + "@" + System.identityHashCode(origin.section()) + ":" + origin.start();
  }

  // ---- Severities, comments that silence, order
  // ------------------------------------------------------------

  /** A finding with the offset it is sorted by. */
  private record Placed(int position, Finding finding) {}

  private List<Finding> settle(SyntaxTree tree, Shop shop, List<Finding> findings) {
    boolean tooNew = findings.stream().anyMatch(finding -> finding.rule().equals("language-level"));
    return silence(tree, findings).stream()
        .map(finding -> weigh(finding, shop.severities()))
        .filter(finding -> finding.severity() != Severity.OFF)
        // A file of a newer level may mean something else: nothing is certain, so nothing is fixed.
        .map(finding -> tooNew ? doubtful(finding) : finding)
        .map(finding -> new Placed(position(tree, finding), finding))
        .sorted(
            Comparator.comparingInt(Placed::position)
                .thenComparing(placed -> placed.finding().rule())
                .thenComparing(placed -> placed.finding().message()))
        .map(Placed::finding)
        .toList();
  }

  private static int position(SyntaxTree tree, Finding finding) {
    return tree.contains(finding.origin()) ? tree.start(finding.origin()) : 0;
  }

  private static Finding weigh(Finding finding, Map<String, Located<Severity>> severities) {
    Located<Severity> own = severities.get(finding.rule());
    return own == null || FindingRules.isFixed(finding.rule())
        ? finding
        : finding.withSeverity(own.value());
  }

  private static Finding doubtful(Finding finding) {
    if (finding.rule().equals("language-level")) {
      return finding;
    }
    Severity severity =
        finding.severity() == Severity.ERROR ? Severity.WARNING : finding.severity();
    return new Finding(
        finding.rule(),
        severity,
        finding.origin(),
        finding.message(),
        finding.related(),
        List.of());
  }

  /** Comments silence findings of their own section only, so the others are not looked at. */
  private List<Finding> silence(SyntaxTree tree, List<Finding> findings) {
    Map<Section, List<Finding>> silenced = new HashMap<>();
    for (Section section : tree.sections()) {
      if (!section.ignores().isEmpty()) {
        silenced.put(section, new ArrayList<>());
      }
    }
    if (silenced.isEmpty()) {
      return findings;
    }
    List<Finding> kept = new ArrayList<>();
    for (Finding finding : findings) {
      silenced.getOrDefault(finding.origin().section(), kept).add(finding);
    }
    // What could not be read keeps rules from running, and then no comment is known to be unused.
    boolean readWhole =
        findings.stream().noneMatch(finding -> FindingRules.stopsReading(finding.rule()));
    for (Section section : tree.sections()) {
      List<Finding> own = silenced.getOrDefault(section, List.of());
      for (Ignore ignore : section.ignores()) {
        boolean used = own.removeIf(finding -> silences(ignore, finding));
        aboutIgnore(ignore, used, readWhole).ifPresent(own::add);
      }
      kept.addAll(own);
    }
    return kept;
  }

  /** What is wrong with a comment that silences a rule. */
  private Optional<Finding> aboutIgnore(Ignore ignore, boolean used, boolean readWhole) {
    Origin origin = ignore.origin();
    if (!ids.contains(ignore.rule())) {
      // "# ignore this" is a remark; with a reason, or nearly the name of a rule, it is a slip.
      boolean meant = !ignore.reason().isEmpty() || Nearest.to(ignore.rule(), ids).isPresent();
      return meant
          ? Optional.of(unknownRule("unused-ignore", ignore.rule(), origin))
          : Optional.empty();
    }
    if (FindingRules.isFixed(ignore.rule())) {
      return Optional.of(
          new Finding(
                  "unused-ignore",
                  Severity.WARNING,
                  origin,
                  "`" + ignore.rule() + "` cannot be ignored")
              .withFix(Fix.replace("Remove the comment", withBlanks(origin), "")));
    }
    if (!used && readWhole) {
      return Optional.of(
          new Finding(
                  "unused-ignore",
                  Severity.WARNING,
                  origin,
                  "there is no `" + ignore.rule() + "` on this line to ignore")
              .withFix(Fix.replace("Remove the comment", withBlanks(origin), "")));
    }
    if (used && ignore.reason().isEmpty()) {
      return Optional.of(
          new Finding(
              "ignore-reason",
              Severity.WARNING,
              origin,
              "say why: `# ignore " + ignore.rule() + ": reason`"));
    }
    return Optional.empty();
  }

  /** The comment with the blanks before it on its line. */
  private static Origin withBlanks(Origin origin) {
    String text = origin.section().text();
    int start = origin.start();
    while (start > 0 && (text.charAt(start - 1) == ' ' || text.charAt(start - 1) == '\t')) {
      start--;
    }
    return new Origin(origin.section(), start, origin.end());
  }

  private static boolean silences(Ignore ignore, Finding finding) {
    return finding.rule().equals(ignore.rule())
        && !FindingRules.isFixed(finding.rule())
        && ignore.isAbout(finding.origin());
  }
}
