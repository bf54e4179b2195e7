package org.handwheel.cli;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.handwheel.model.LogSection;
import org.handwheel.model.LogSection.Reading;
import org.handwheel.model.Plan;
import org.handwheel.model.Setup;
import org.handwheel.plan.log.LogLine;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
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
      "Writes a reading into the plan's log, and says what to do next, as `handwheel next` does.",
      "It adds one line to the file and leaves all else as it is. Several readings along the"
          + " work show taper."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel log block.plan four height 21.24 --with mic25",
      "  handwheel log block.plan four height 21.24 21.26 21.25 --with mic25",
      "  handwheel log block.plan four height 0.836in --with mic-inch --piece \"second block\"",
      "",
      "Spindle stopped, work wiped, burrs off: then measure.",
      "",
      "Exit codes: 0 written; 1 written, and the size is out of the drawing's limits;",
      "2 nothing was written."
    })
final class LogCommand implements Callable<Integer> {
  private static final Pattern UNIT =
      Pattern.compile("mm|in|thou|tenths?|um", Pattern.CASE_INSENSITIVE);
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
    if (!instrument.matches("[\\p{L}\\p{N}_.-]+")) {
      throw new UserException("--with: '" + instrument.strip() + "' is no name of an instrument");
    }
    if (piece != null && piece.chars().anyMatch(c -> c == '"' || c < ' ')) {
      throw new UserException("--piece: a title has no quotation marks and no line ends");
    }
    OnePlan before = OnePlan.read(file, surroundings);
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
    OnePlan after = before.saying(changed, surroundings);
    Reading reading = written(after, edit);
    NewText.change(OnePlan.path(file, surroundings), text, changed)
        .ifPresent(
            why -> {
              throw new UserException(file + ": " + why);
            });
    return report(line, reading, after);
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

  /**
   * The readings, each with its unit, also where a blank stands between and the shell parts them.
   */
  private List<String> joined() {
    List<String> whole = new ArrayList<>();
    for (String reading : readings) {
      if (!whole.isEmpty() && UNIT.matcher(reading.strip()).matches()) {
        whole.set(whole.size() - 1, whole.get(whole.size() - 1) + " " + reading.strip());
      } else {
        whole.add(reading);
      }
    }
    return whole;
  }

  /** The readings as the language writes them: a unit stands once, after the last. */
  private String written() {
    List<String> numbers = new ArrayList<>();
    List<String> units = new ArrayList<>();
    for (String reading : joined()) {
      Matcher matcher = READING.matcher(reading.strip());
      if (!matcher.matches()) {
        // What it lacks is said by the one that knows lengths.
        LengthArguments.read(reading, LengthUnit.MM);
        throw new UserException(reading + ": a reading is a number, with or without a unit");
      }
      numbers.add(matcher.group(1));
      units.add(Optional.ofNullable(matcher.group(2)).orElse("").toLowerCase(Locale.ROOT));
    }
    String unit = units.get(units.size() - 1);
    Set<String> before = new HashSet<>(units.subList(0, units.size() - 1));
    // As in a plan, a unit behind the last alone holds for all.
    if (!Set.of(unit).containsAll(before) && !Set.of("").equals(before)) {
      throw new UserException("give all readings in the same unit");
    }
    return String.join(" ", numbers) + (unit.isEmpty() ? "" : " " + unit);
  }

  /**
   * The reading as the plan has it with the new line: what the plan cannot take is not written, a
   * size that is out of the drawing's limits is.
   */
  private Reading written(OnePlan after, TextEdit edit) {
    for (LogSection log : after.run().plan().logs()) {
      for (Reading reading : log.readings()) {
        if (isNew(after.checked().tree(), reading.origin(), edit)) {
          return reading;
        }
      }
    }
    String why =
        after.checked().findings().stream()
            .filter(finding -> isNew(after.checked().tree(), finding.origin(), edit))
            .findFirst()
            .map(Finding::message)
            .orElse("this is no reading");
    throw new UserException(file + ": " + why + "; nothing was written");
  }

  private static boolean isNew(SyntaxTree tree, Origin origin, TextEdit edit) {
    return tree.contains(origin)
        && tree.start(origin) >= edit.start()
        && tree.start(origin) < edit.start() + edit.text().length();
  }

  /** What was written, what a check says of it, and what comes next. */
  private int report(String line, Reading reading, OnePlan after) {
    List<String> lines = new ArrayList<>();
    lines.add(file + ": " + line);
    List<Finding> about =
        after.checked().findings().stream()
            .filter(finding -> finding.origin().equals(reading.origin()))
            .toList();
    about.forEach(
        finding -> lines.addAll(Wrapping.wrap("", "  ", finding.message(), output.width())));
    lines.add("");
    lines.addAll(new NextReport(after, piece, output.width()).lines());
    lines.forEach(row -> output.line(output.glyphs().show(row)));
    boolean isOut = about.stream().anyMatch(finding -> finding.severity() == Severity.ERROR);
    return isOut ? Handwheel.EXIT_FINDINGS : Handwheel.EXIT_CLEAN;
  }
}
