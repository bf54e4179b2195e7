package org.handwheel.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;
import org.handwheel.cli.Report.CheckedFile;
import org.handwheel.cli.Report.Found;
import org.handwheel.cli.Report.Kind;
import org.handwheel.files.WorkspaceLoader;
import org.handwheel.files.WorkspaceLoader.Loaded;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.model.Workspace;
import org.handwheel.plan.diff.Fingerprints;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.SyntaxTree;

/** Checks files, each with the shop files it uses; every file is checked once. */
final class CheckRun {
  private static final Comparator<Found> ORDER =
      Comparator.<Found, String>comparing(found -> WorkspaceRoot.slashed(found.file()))
          .thenComparing(found -> found.place().start())
          .thenComparing(Found::rule)
          .thenComparing(Found::message);

  private final Checker checker;
  private final LongSupplier nanoClock;
  private final NewFindings news;
  private final Progress progress;
  private int known;
  private int all;
  private final List<CheckedFile> files = new ArrayList<>();
  private final List<Found> findings = new ArrayList<>();
  private final Map<Path, String> unreadable = new LinkedHashMap<>();
  private final Set<String> seen = new HashSet<>();
  private long reading;
  private long parsing;
  private long checking;

  private CheckRun(Checker checker, LongSupplier nanoClock, NewFindings news, Progress progress) {
    this.checker = checker;
    this.nanoClock = nanoClock;
    this.news = news;
    this.progress = progress;
  }

  /** Checks the targets; a workspace is loaded once for all that lie in it. */
  static Report check(
      Targets targets,
      Checker checker,
      LongSupplier nanoClock,
      NewFindings news,
      Progress progress) {
    CheckRun run = new CheckRun(checker, nanoClock, news, progress);
    run.all = targets.targets().size();
    run.unreadable.putAll(targets.unreadable());
    Map<WorkspaceRoot, List<Targets.Target>> byRoot =
        targets.targets().stream()
            .collect(
                Collectors.groupingBy(
                    Targets.Target::root, LinkedHashMap::new, Collectors.toList()));
    byRoot.forEach(run::checkIn);
    run.files.sort(Comparator.comparing(file -> WorkspaceRoot.slashed(file.file())));
    run.findings.sort(ORDER);
    return new Report(
        run.files,
        run.findings,
        run.known,
        run.unreadable,
        new Report.Times(
            Duration.ofNanos(run.reading),
            Duration.ofNanos(run.parsing),
            Duration.ofNanos(run.checking)));
  }

  private void checkIn(WorkspaceRoot root, List<Targets.Target> targets) {
    Map<String, SyntaxTree> open = new HashMap<>();
    for (Targets.Target target : targets) {
      String text = target.text();
      if (text != null) {
        long start = nanoClock.getAsLong();
        open.put(target.path(), SyntaxTree.parse(target.path(), text));
        parsing += nanoClock.getAsLong() - start;
      }
    }
    List<String> paths = targets.stream().map(Targets.Target::path).toList();
    Loaded loaded = new WorkspaceLoader(root, nanoClock).load(paths, open);
    reading += loaded.reading().toNanos();
    parsing += loaded.parsing().toNanos();
    Workspace workspace = loaded.workspace();
    Set<String> waiting = new LinkedHashSet<>();
    for (String path : paths) {
      String reason = workspace.unreadable().get(path);
      if (reason != null) {
        unreadable.put(root.file(path), reason);
      } else {
        waiting.add(path);
      }
    }
    Set<String> shops = new LinkedHashSet<>();
    waiting.forEach(path -> shops.addAll(check(root, workspace, path)));
    shops.removeAll(waiting);
    shops.removeIf(path -> workspace.file(path).isEmpty());
    shops.forEach(path -> check(root, workspace, path));
  }

  /** Checks one file and says which files it uses. */
  private List<String> check(WorkspaceRoot root, Workspace workspace, String path) {
    progress.at(files.size(), Math.max(all, files.size() + 1), path);
    long start = nanoClock.getAsLong();
    Checked checked = checker.check(workspace, path);
    long took = nanoClock.getAsLong() - start;
    checking += took;
    files.add(
        new CheckedFile(
            root.file(path),
            Checker.isShop(checked.tree()) ? Kind.SHOP : Kind.PLAN,
            checked.usedFiles().stream()
                .filter(used -> workspace.file(used).isPresent())
                .map(root::file)
                .toList(),
            Duration.ofNanos(took)));
    Placing placing = new Placing(root, workspace);
    Set<Finding> reported = Collections.newSetFromMap(new IdentityHashMap<>());
    reported.addAll(news.of(root.file(path), checked));
    known += checked.findings().size() - reported.size();
    List<String> fingerprints = Fingerprints.of(checked.findings());
    for (int i = 0; i < checked.findings().size(); i++) {
      Finding finding = checked.findings().get(i);
      if (!reported.contains(finding)) {
        continue;
      }
      Found found = placing.of(finding, fingerprints.get(i));
      // Several plans may bring out the same thing in a shop file.
      String key =
          found.file()
              + "\n"
              + found.place().start()
              + "\n"
              + found.rule()
              + "\n"
              + found.message();
      if (found.place().path().equals(path) || seen.add(key)) {
        findings.add(found);
      }
    }
    return checked.usedFiles();
  }

  /** Turns origins into places of one workspace. */
  private record Placing(WorkspaceRoot root, Workspace workspace) {
    Found of(Finding finding, String fingerprint) {
      Place place = place(finding.origin());
      return new Found(
          finding.rule(),
          fingerprint,
          finding.severity(),
          file(place),
          place,
          finding.message(),
          finding.related().stream().map(this::of).toList(),
          finding.fixes().stream().map(this::of).toList());
    }

    private Report.Related of(Finding.Related related) {
      Place place = place(related.origin());
      return new Report.Related(file(place), place, related.message());
    }

    private Report.Fix of(Finding.Fix fix) {
      return new Report.Fix(fix.title(), fix.edits().stream().map(this::of).toList());
    }

    private Report.Edit of(Finding.Edit edit) {
      Place place = place(edit.origin());
      return new Report.Edit(file(place), place, edit.text());
    }

    private Place place(Origin origin) {
      return Place.of(workspace, origin);
    }

    private Path file(Place place) {
      return root.file(place.path());
    }
  }
}
