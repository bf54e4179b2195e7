package org.handwheel.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
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
import org.handwheel.model.build.ShopFiles;
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

/**
 * Checks a file: the one function that the command line and the language server call.
 *
 * <p>It reads nothing but the workspace and keeps nothing; the same workspace gives the same
 * result.
 */
public final class Checker {
  private final StandardTables tables;
  private final List<Rule> rules;

  public Checker(StandardTables tables) {
    this.tables = tables;
    this.rules = Rules.all();
  }

  /**
   * Checks the plan or shop file at a path of the workspace.
   *
   * @throws IllegalArgumentException if the workspace has no such file
   */
  public Checked check(Workspace workspace, String path) {
    SyntaxTree tree =
        workspace.file(path).orElseThrow(() -> new IllegalArgumentException("no file " + path));
    return isShop(tree) ? checkShop(tree) : checkPlan(workspace, tree);
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

  private Checked checkShop(SyntaxTree tree) {
    Shop.ShopFile file = ShopFiles.build(tree);
    List<Finding> findings = new ArrayList<>(file.findings());
    findings.addAll(unknownSeverities(file.shop()));
    List<String> used =
        file.uses().stream().flatMap(use -> Optional.ofNullable(use.path()).stream()).toList();
    return new Checked(tree, null, null, used, settle(tree, file.shop(), findings));
  }

  private static List<Finding> unknownSeverities(Shop shop) {
    List<Finding> findings = new ArrayList<>();
    shop.severities()
        .forEach(
            (rule, setting) -> {
              if (!Rules.severities().containsKey(rule)) {
                findings.add(unknownRule("unknown-property", rule, setting.origin()));
              }
            });
    return findings;
  }

  private static Finding unknownRule(String id, String rule, Origin origin) {
    String message = "there is no rule `" + rule + "`";
    Optional<String> near = Nearest.to(rule, Rules.severities().keySet());
    return new Finding(
        id,
        Severity.WARNING,
        origin,
        near.map(word -> message + "; did you mean `" + word + "`?").orElse(message));
  }

  private Checked checkPlan(Workspace workspace, SyntaxTree tree) {
    Plan plan = PlanFiles.build(workspace, tree.path());
    List<Finding> findings = new ArrayList<>(plan.findings());
    PlanRun run = null;
    try {
      run = Engine.run(plan, tables);
      findings.addAll(runRules(plan, run));
      for (LogSection log : plan.logs()) {
        addNew(findings, runRules(plan, Engine.run(plan, log, tables)), log);
      }
    } catch (LengthOverflowException e) {
      findings.add(
          new Finding(
              "overflow",
              Severity.ERROR,
              plan.header(),
              "the sizes of this plan are too large to be worked out"));
    }
    return new Checked(tree, plan, run, plan.usedFiles(), settle(tree, plan.shop(), findings));
  }

  private List<Finding> runRules(Plan plan, PlanRun run) {
    Checkup checkup = new Checkup(plan, run, tables);
    List<Finding> findings = new ArrayList<>();
    for (Rule rule : rules) {
      rule.check(checkup, findings::add);
    }
    return findings;
  }

  /** Adds what only the readings of a log bring out, saying whose readings they are. */
  private static void addNew(List<Finding> findings, List<Finding> more, LogSection log) {
    Set<String> before = new HashSet<>();
    findings.forEach(finding -> before.add(place(finding)));
    for (Finding finding : more) {
      if (!before.add(place(finding))) {
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

  private static List<Finding> settle(SyntaxTree tree, Shop shop, List<Finding> findings) {
    boolean tooNew = findings.stream().anyMatch(finding -> finding.rule().equals("language-level"));
    List<Finding> settled = new ArrayList<>();
    for (Finding finding : findings) {
      Finding weighed = weigh(finding, shop.severities());
      if (tooNew && !finding.rule().equals("language-level")) {
        // A file of a newer level may mean something else: nothing is certain, so nothing is fixed.
        weighed = doubtful(weighed);
      }
      if (weighed.severity() != Severity.OFF) {
        settled.add(weighed);
      }
    }
    List<Finding> kept = silence(tree, settled);
    kept.sort(
        Comparator.<Finding>comparingInt(finding -> position(tree, finding))
            .thenComparing(Finding::rule)
            .thenComparing(Finding::message));
    return kept;
  }

  private static int position(SyntaxTree tree, Finding finding) {
    return tree.contains(finding.origin()) ? tree.start(finding.origin()) : 0;
  }

  private static Finding weigh(Finding finding, Map<String, Located<Severity>> severities) {
    Located<Severity> own = severities.get(finding.rule());
    return own == null ? finding : finding.withSeverity(own.value());
  }

  private static Finding doubtful(Finding finding) {
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

  private static List<Finding> silence(SyntaxTree tree, List<Finding> findings) {
    List<Finding> kept = new ArrayList<>(findings);
    for (Section section : tree.sections()) {
      for (Ignore ignore : section.ignores()) {
        boolean used = kept.removeIf(finding -> silences(ignore, finding));
        if (!Rules.severities().containsKey(ignore.rule())) {
          kept.add(unknownRule("unused-ignore", ignore.rule(), ignore.origin()));
        } else if (!used) {
          kept.add(
              new Finding(
                      "unused-ignore",
                      Severity.WARNING,
                      ignore.origin(),
                      "there is no `" + ignore.rule() + "` on this line to ignore")
                  .withFix(Fix.replace("Remove the comment", ignore.origin(), "")));
        } else if (ignore.reason().isEmpty()) {
          kept.add(
              new Finding(
                  "ignore-reason",
                  Severity.WARNING,
                  ignore.origin(),
                  "say why: `# ignore " + ignore.rule() + ": reason`"));
        }
      }
    }
    return kept;
  }

  private static boolean silences(Ignore ignore, Finding finding) {
    return finding.rule().equals(ignore.rule())
        && !finding.rule().equals("syntax")
        && ignore.isAbout(finding.origin());
  }
}
