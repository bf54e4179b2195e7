package org.handwheel.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.handwheel.files.WorkspaceLoader;
import org.handwheel.model.LogSection;
import org.handwheel.model.Plan;
import org.handwheel.model.Setup;
import org.handwheel.plan.log.LogLine;
import org.handwheel.plan.log.NextCut;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.syntax.TextEdit;
import org.handwheel.units.LengthUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code handwheel log}: writes down what was measured. */
@Command(
    name = "log",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Writes a reading into the plan's log, and says what the next cut on that size comes to.",
      "It adds one line to the file and leaves all else as it is. Several readings along the"
          + " work show taper."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel log block.plan four height 21.24 --with mic25",
      "  handwheel log block.plan four height 21.24 21.26 21.25 --with mic25",
      "  handwheel log block.plan four height 0.836in --with mic-inch --piece \"second block\"",
      "",
      "Spindle stopped, work wiped, burrs off: then measure."
    })
final class LogCommand implements Callable<Integer> {
  private static final Pattern READING =
      Pattern.compile("([0-9./-]+)\\s*(mm|in|thou|tenths?|um)?", Pattern.CASE_INSENSITIVE);

  private final Surroundings surroundings;
  private final Output output;

  @Parameters(index = "0", paramLabel = "PLAN", description = "The plan's file.")
  private String file = "";

  @Parameters(index = "1", paramLabel = "SETUP", description = "The setup it was measured in.")
  private String setup = "";

  @Parameters(
      index = "2",
      paramLabel = "SIZE",
      description = "What was measured: length, width or height.")
  private String size = "";

  @Parameters(
      index = "3..*",
      arity = "1..*",
      paramLabel = "READING",
      description = "What the instrument showed; without a unit in the plan's.")
  private List<String> readings = List.of();

  @Option(
      names = "--with",
      required = true,
      paramLabel = "INSTRUMENT",
      description = "What it was measured with, by its name in the shop.")
  private String instrument = "";

  @Option(
      names = "--piece",
      paramLabel = "TITLE",
      description = "The piece, by the title of its log. Default: the last log of the plan.")
  private @Nullable String piece;

  LogCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    if (file.equals("-")) {
      throw new UserException("-: name a file; a reading is written into it");
    }
    if (piece != null && piece.chars().anyMatch(c -> c == '"' || c < ' ')) {
      throw new UserException("--piece: a title has no quotation marks and no line ends");
    }
    CheckedPlan before = CheckedPlan.load(file, surroundings);
    Plan plan = before.run().plan();
    String line =
        "in "
            + setup(plan)
            + ": read "
            + size.toLowerCase(Locale.ROOT)
            + " "
            + written()
            + " with "
            + instrument;
    String text = before.checked().tree().source().text();
    TextEdit edit = new LogLine(line, piece).in(before.checked().tree(), plan);
    String changed = TextEdit.apply(text, List.of(edit));
    Checked after = check(changed);
    refuse(before.checked(), after, edit);
    NewText.change(path(), text, changed)
        .ifPresent(
            why -> {
              throw new UserException(file + ": " + why);
            });
    report(line, after);
    return Handwheel.EXIT_CLEAN;
  }

  private Path path() {
    return surroundings.workingDirectory().toAbsolutePath().resolve(file).normalize();
  }

  /** The setup's name as the plan writes it. */
  private String setup(Plan plan) {
    List<String> names =
        plan.setups().stream()
            .map(Setup::name)
            .filter(Objects::nonNull)
            .map(name -> name.value())
            .toList();
    return names.stream()
        .filter(name -> name.equalsIgnoreCase(setup))
        .findFirst()
        .orElseThrow(
            () ->
                new UserException(
                    file
                        + ": it has no setup '"
                        + setup
                        + "'"
                        + (names.isEmpty() ? "" : "; it has " + String.join(", ", names))));
  }

  /** The readings as the language writes them: a unit stands once, after the last. */
  private String written() {
    List<String> numbers = new ArrayList<>();
    Set<String> units = new HashSet<>();
    for (String reading : readings) {
      Matcher matcher = READING.matcher(reading.strip());
      if (!matcher.matches()) {
        // What it lacks is said by the one that knows lengths.
        LengthArguments.read(reading, LengthUnit.MM);
        throw new UserException(reading + ": a reading is a number, with or without a unit");
      }
      numbers.add(matcher.group(1));
      units.add(Optional.ofNullable(matcher.group(2)).orElse("").toLowerCase(Locale.ROOT));
    }
    if (units.size() > 1) {
      throw new UserException("give all readings in the same unit");
    }
    String unit = units.iterator().next();
    return String.join(" ", numbers) + (unit.isEmpty() ? "" : " " + unit);
  }

  private Checked check(String text) {
    Targets.Target target = Targets.find(List.of(file), null, file, surroundings).targets().get(0);
    SyntaxTree tree = SyntaxTree.parse(target.path(), text);
    return new Checker(StandardTables.builtIn())
        .check(
            new WorkspaceLoader(target.root(), surroundings.nanoClock())
                .load(List.of(target.path()), Map.of(target.path(), tree))
                .workspace(),
            target.path());
  }

  /** A line that would be wrong is not written. */
  private static void refuse(Checked before, Checked after, TextEdit edit) {
    Set<String> known =
        before.findings().stream().map(Finding::message).collect(Collectors.toSet());
    SyntaxTree tree = after.tree();
    for (Finding finding : after.findings()) {
      boolean isHere =
          tree.contains(finding.origin())
              && tree.start(finding.origin()) >= edit.start()
              && tree.start(finding.origin()) <= edit.start() + edit.text().length();
      if (isHere && finding.severity() == Severity.ERROR && !known.contains(finding.message())) {
        throw new UserException(finding.message() + "; nothing was written");
      }
    }
  }

  private void report(String line, Checked after) {
    output.line(output.glyphs().show(file + ": " + line));
    Plan plan = Objects.requireNonNull(after.plan());
    List<LogSection> logs =
        plan.logs().stream().filter(log -> piece == null || log.title().equals(piece)).toList();
    if (logs.isEmpty()) {
      return;
    }
    NextCut.after(plan, logs.get(logs.size() - 1), StandardTables.builtIn())
        .ifPresent(
            next ->
                next.sentences()
                    .forEach(
                        sentence ->
                            Wrapping.wrap("", "  ", sentence, output.width())
                                .forEach(row -> output.line(output.glyphs().show(row)))));
  }
}
