package org.handwheel.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.handwheel.ide.RulePages;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Severity;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Checks plans and the shop files they use. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Checks plans, and the shop files they use, and prints what it finds.",
      "A plan's `use` lines are followed inside its workspace: the nearest folder"
          + " above it that holds `.handwheel` or `.git`, else this folder if the plan is in it,"
          + " else the plan's own folder."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel check",
      "  handwheel check plans/bearing.plan --fail-on warning",
      "  handwheel check --format sarif plans > findings.sarif",
      "  handwheel check --since main            what is new on this branch",
      "  handwheel check --write-baseline known.json",
      "  handwheel check --baseline known.json",
      "  handwheel check - --stdin-filename plans/bearing.plan < draft.txt",
      "",
      "Exit codes: 0 nothing as heavy as --fail-on says, 1 findings, 2 wrong usage,",
      "a file that cannot be read, or an internal error."
    })
final class CheckCommand implements Callable<Integer> {
  private final Surroundings surroundings;
  private final Output output;
  private final RulePages pages;

  @Parameters(
      paramLabel = "PATH",
      description =
          "Plans, shop files, folders (all *.plan files below), or - for standard input."
              + " Default: this folder.")
  private List<String> paths = List.of();

  @Option(
      names = "--format",
      paramLabel = "FORM",
      description =
          "How to print findings: text, json, sarif, github, gitlab, rdjson, checkstyle or junit."
              + " Default: text.")
  private Format format = Format.TEXT;

  @Option(
      names = "--fail-on",
      paramLabel = "error|warning|none",
      description =
          "The least finding that makes the exit code 1. Default: what the project's settings say,"
              + " or error.")
  private @Nullable FailOn failOn;

  @Option(
      names = "--workspace",
      paramLabel = "FOLDER",
      description = "The folder that used files must lie in.")
  private @Nullable String workspace;

  @Option(
      names = "--stdin-filename",
      paramLabel = "NAME",
      description = "The file that standard input stands for. Default: stdin.plan.")
  private String stdinName = "stdin.plan";

  @Option(
      names = "--color",
      paramLabel = "auto|always|never",
      description = "Whether to use colour. Default: auto, on a terminal without NO_COLOR.")
  private Palette.Choice color = Palette.Choice.AUTO;

  @Option(
      names = "--since",
      paramLabel = "REV",
      description = "Leave out what was found in a git revision already.")
  private @Nullable String since;

  @Option(
      names = "--baseline",
      paramLabel = "FILE",
      description =
          "Leave out the findings that a file of known findings lists. Default: the file that the"
              + " project's settings name.")
  private @Nullable String baseline;

  @Option(
      names = "--write-baseline",
      paramLabel = "FILE",
      description = "Write a file that lists what is found as known, and report nothing.")
  private @Nullable String writeBaseline;

  @Option(names = "--timing", description = "Print where the time went, on standard error.")
  private boolean timing;

  CheckCommand(Surroundings surroundings, Output output, RulePages pages) {
    this.surroundings = surroundings;
    this.output = output;
    this.pages = pages;
  }

  /** How findings are printed. */
  enum Format {
    TEXT,
    JSON,
    SARIF,
    GITHUB,
    GITLAB,
    RDJSON,
    CHECKSTYLE,
    JUNIT
  }

  /** What makes the exit code 1. */
  enum FailOn {
    ERROR,
    WARNING,
    NONE
  }

  @Override
  public Integer call() {
    long start = surroundings.nanoClock().getAsLong();
    PathNames names = new PathNames(surroundings.workingDirectory());
    ProjectFile project = ProjectFile.of(surroundings);
    Targets targets =
        Targets.find(
            paths.isEmpty() ? List.of(".") : paths, workspace, stdinName, project, surroundings);
    NewFindings news = since == null ? NewFindings.ALL : SinceRevision.of(since, surroundings);
    Report found;
    try (Progress progress = Progress.on(output, surroundings)) {
      Checker checker = new Checker(StandardTables.builtIn());
      found = CheckRun.check(targets, checker, surroundings.nanoClock(), news, progress);
    }
    Report report = known(found, names, project);
    printer(names).print(report);
    report.unreadable().entrySet().stream()
        .sorted(Map.Entry.<Path, String>comparingByKey())
        .forEach(
            entry ->
                output.trouble(
                    "handwheel: " + names.shown(entry.getKey()) + ": " + entry.getValue()));
    if (timing) {
      long total = surroundings.nanoClock().getAsLong() - start;
      printTimes(report, names, Duration.ofNanos(total));
    }
    if (!report.unreadable().isEmpty()) {
      return Handwheel.EXIT_TROUBLE;
    }
    return fails(report, project) ? Handwheel.EXIT_FINDINGS : Handwheel.EXIT_CLEAN;
  }

  /** Without the findings that are known, which are written down first if asked. */
  private Report known(Report report, PathNames names, ProjectFile project) {
    Report left = report;
    // Where all that is found is written down as known, the list of before does not matter.
    Path file =
        baseline != null
            ? path(baseline)
            : project
                .settings()
                .baseline()
                .filter(name -> writeBaseline == null)
                .map(project.folder()::resolve)
                .orElse(null);
    if (file != null) {
      left =
          left.withOnly(
              Baseline.read(file, names.shown(file))
                  .unknown(left.findings(), Baseline.folder(file)));
    }
    if (writeBaseline != null) {
      Path written = path(writeBaseline);
      Baseline.write(written, names.shown(written), report);
      left = left.withOnly(List.of());
    }
    return left;
  }

  private Path path(String name) {
    try {
      return surroundings.workingDirectory().toAbsolutePath().resolve(name).normalize();
    } catch (InvalidPathException e) {
      throw new UserException(name + ": no file can have this name here");
    }
  }

  private ReportFormat printer(PathNames names) {
    return switch (format) {
      case TEXT -> new TextReport(output, Palette.of(color, surroundings), names);
      case JSON -> new JsonReport(output, names);
      case SARIF -> new SarifReport(output, names, pages);
      case GITHUB -> new GithubReport(output, names);
      case GITLAB -> new GitlabReport(output, names);
      case RDJSON -> new RdjsonReport(output, names);
      case CHECKSTYLE -> new CheckstyleReport(output, names);
      case JUNIT -> new JunitReport(output, names);
    };
  }

  private boolean fails(Report report, ProjectFile project) {
    FailOn least =
        failOn == null
            ? FailOn.valueOf(project.settings().failOn().orElse("error").toUpperCase(Locale.ROOT))
            : failOn;
    return switch (least) {
      case ERROR -> report.count(Severity.ERROR) > 0;
      case WARNING -> report.count(Severity.ERROR) + report.count(Severity.WARNING) > 0;
      case NONE -> false;
    };
  }

  private void printTimes(Report report, PathNames names, Duration total) {
    output.trouble("time  read   " + milliseconds(report.times().reading()));
    output.trouble("      parse  " + milliseconds(report.times().parsing()));
    output.trouble("      check  " + milliseconds(report.times().checking()));
    output.trouble("      total  " + milliseconds(total));
    if (report.files().size() > 1) {
      report.files().stream()
          .sorted(Comparator.comparing(Report.CheckedFile::time).reversed())
          .forEach(
              file ->
                  output.trouble(
                      "check        "
                          + milliseconds(file.time())
                          + "  "
                          + names.shown(file.file())));
    }
  }

  private static String milliseconds(Duration duration) {
    String number =
        BigDecimal.valueOf(duration.toNanos(), 6)
            .setScale(1, RoundingMode.HALF_EVEN)
            .toPlainString();
    return " ".repeat(Math.max(0, 9 - number.length())) + number + " ms";
  }
}
