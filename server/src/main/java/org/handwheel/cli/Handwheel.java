package org.handwheel.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.handwheel.cli.CheckCommand.FailOn;
import org.handwheel.cli.CheckCommand.Format;
import org.handwheel.ide.RulePages;
import org.handwheel.lsp.PackedPages;
import org.handwheel.model.Owned.CutterKind;
import org.handwheel.model.Owned.ToolMaterial;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.sheet.Paper;
import org.handwheel.units.UnitChoice;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** The command line as a whole: its commands, and what every one of them does about trouble. */
@Command(
    name = "handwheel",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    description = "Checks plans for work on a manual milling machine.",
    synopsisSubcommandLabel = "COMMAND",
    commandListHeading = "%nCommands:%n",
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel check                        every plan below this folder",
      "  handwheel check plans/bearing.plan     one plan",
      "  handwheel explain overcut              what a finding means",
      "  handwheel diff --git HEAD              what the plans here say anew",
      "  handwheel format --check               which plans are not in their usual form",
      "  handwheel dial \"1-3/8 in\" 7.5mm        lengths in both units",
      "  handwheel speeds steel-mild --dia 10mm speeds and feeds to start with",
      "  handwheel steps door.plan              dial by dial round an outline",
      "  handwheel coordinates flange.plan      hole by hole with two handles",
      "  handwheel thread M5                    a thread and its drills",
      "  handwheel drill \"no 7\"                 a drill, and those near it",
      "  handwheel fit \"10 H7\"                  the limits of a bore",
      "  handwheel picture p.plan four          a setup drawn, as SVG",
      "  handwheel sheet p.plan -o p.html       what to take to the machine",
      "  handwheel draft block.plan             a plan from part, stock and shop",
      "  handwheel log p.plan four height 21.24 --with mic25",
      "                                         a reading, and the next cut",
      "  handwheel next p.plan                  what to do next at the machine",
      "  handwheel stackup \"48 +-0.1\" \"-12 H7\" what tolerances add up to",
      "",
      "Exit codes: 0 nothing found, 1 findings, 2 wrong usage, a file that cannot",
      "be read, or an internal error.",
      "Only `format`, `draft -o`, `sheet -o`, `picture -o`, `log`, `git-setup --write`",
      "and `check --write-baseline` write files. Only `diff --git`, `check --since`,",
      "`git-setup` and the merge driver start a program: git."
    })
final class Handwheel implements Callable<Integer> {
  static final int EXIT_CLEAN = 0;
  static final int EXIT_FINDINGS = 1;

  /** Wrong usage or an internal error. */
  static final int EXIT_TROUBLE = 2;

  /** What picocli needs to lay out a help text. */
  private static final int NARROWEST_HELP = 55;

  @Spec private @Nullable CommandSpec spec;

  private Handwheel() {}

  /** Runs one command; never throws, and never ends the process. */
  static int run(Surroundings surroundings, String... args) {
    return run(surroundings, new PackedPages(), args);
  }

  /** Runs one command with other pages for the rules. */
  static int run(Surroundings surroundings, RulePages pages, String... args) {
    Output output = Output.of(surroundings);
    int exitCode;
    try {
      exitCode = commandLine(surroundings, pages, output).execute(args);
    } catch (StackOverflowError e) {
      exitCode = internalError(surroundings, output, "something is nested too deep", e);
    } catch (OutOfMemoryError e) {
      exitCode = internalError(surroundings, output, "there is not enough memory", e);
    }
    return output.finish() ? exitCode : EXIT_TROUBLE;
  }

  private static CommandLine commandLine(
      Surroundings surroundings, RulePages pages, Output output) {
    CommandLine line =
        new CommandLine(new Handwheel())
            .addSubcommand(new CheckCommand(surroundings, output, pages))
            .addSubcommand(new ExplainCommand(surroundings, output, pages))
            .addSubcommand(new DiffCommand(surroundings, output))
            .addSubcommand(new FormatCommand(surroundings, output))
            .addSubcommand(new GitSetupCommand(surroundings, output))
            .addSubcommand(hidden(new GitTextconvCommand(surroundings, output)))
            .addSubcommand(hidden(new GitDiffDriverCommand(surroundings, output)))
            .addSubcommand(hidden(new MergeDriverCommand(surroundings, output)))
            .addSubcommand(new DialCommand(surroundings, output))
            .addSubcommand(new SpeedsCommand(surroundings, output))
            .addSubcommand(new StepsCommand(surroundings, output))
            .addSubcommand(new CoordinatesCommand(surroundings, output))
            .addSubcommand(new MaterialCommand(surroundings, output))
            .addSubcommand(new ThreadCommand(output))
            .addSubcommand(new DrillCommand(output))
            .addSubcommand(new FitCommand(output))
            .addSubcommand(new PictureCommand(surroundings, output))
            .addSubcommand(new SheetCommand(surroundings, output))
            .addSubcommand(new DraftCommand(surroundings, output))
            .addSubcommand(new LogCommand(surroundings, output))
            .addSubcommand(new NextCommand(surroundings, output))
            .addSubcommand(StackUpCommand.commandLine(surroundings, output))
            .addSubcommand(new LspCommand(surroundings));
    Ansi ansi = Palette.automatic(surroundings) == Palette.COLOUR ? Ansi.ON : Ansi.OFF;
    return line.setOut(output.outWriter())
        .setErr(output.errWriter())
        .setColorScheme(CommandLine.Help.defaultColorScheme(ansi))
        .setUsageHelpWidth(Math.max(NARROWEST_HELP, surroundings.width()))
        .registerConverter(Format.class, word -> choice(Format.class, word))
        .registerConverter(DiffCommand.Format.class, word -> choice(DiffCommand.Format.class, word))
        .registerConverter(FailOn.class, word -> choice(FailOn.class, word))
        .registerConverter(Palette.Choice.class, word -> choice(Palette.Choice.class, word))
        .registerConverter(UnitChoice.class, word -> choice(UnitChoice.class, word))
        .registerConverter(Paper.class, word -> choice(Paper.class, word))
        .registerConverter(
            SheetCommand.Format.class, word -> choice(SheetCommand.Format.class, word))
        .registerConverter(Projection.class, word -> choice(Projection.class, word))
        .registerConverter(PartDimension.class, word -> choice(PartDimension.class, word))
        .registerConverter(ToolMaterial.class, word -> choice(ToolMaterial.class, word))
        .registerConverter(CutterKind.class, word -> choice(CutterKind.class, word))
        .registerConverter(HoleVerb.class, word -> choice(HoleVerb.class, word))
        .registerConverter(PartDimension.class, word -> choice(PartDimension.class, word))
        .registerConverter(DialCommand.Units.class, word -> choice(DialCommand.Units.class, word))
        .setParameterExceptionHandler((e, args) -> wrongUsage(e, output))
        .setExecutionExceptionHandler(
            (e, commandLine, parsed) ->
                e instanceof UserException
                    ? trouble(output, e.getMessage())
                    : internalError(surroundings, output, words(e), e));
  }

  /** A command for git, not for people. */
  private static CommandLine hidden(Object command) {
    CommandLine line = new CommandLine(command);
    line.getCommandSpec().usageMessage().hidden(true);
    return line;
  }

  /** A value of an option that takes one of a few words. */
  private static <E extends Enum<E>> E choice(Class<E> type, String word) {
    List<String> words = new ArrayList<>();
    for (E value : type.getEnumConstants()) {
      String own = value.name().toLowerCase(Locale.ROOT).replace('_', '-');
      if (own.equalsIgnoreCase(word)) {
        return value;
      }
      words.add(own);
    }
    throw new TypeConversionException("'" + word + "' is none of " + String.join(", ", words));
  }

  private static int wrongUsage(ParameterException e, Output output) {
    String command = e.getCommandLine().getCommandSpec().qualifiedName();
    output.trouble(command + ": " + UsageWords.of(e));
    output.trouble("For its options: " + command + " --help");
    return EXIT_TROUBLE;
  }

  private static int trouble(Output output, @Nullable String message) {
    output.trouble("handwheel: " + message);
    return EXIT_TROUBLE;
  }

  private static String words(Throwable e) {
    @Nullable String message = e.getMessage();
    String name = e.getClass().getSimpleName();
    return message == null ? name : name + ": " + message;
  }

  /** Tells of a fault where no command line was read. */
  static int internalError(Surroundings surroundings, Throwable e) {
    Output output = Output.of(surroundings);
    int exitCode = internalError(surroundings, output, words(e), e);
    return output.finish() ? exitCode : EXIT_TROUBLE;
  }

  private static int internalError(
      Surroundings surroundings, Output output, String words, Throwable e) {
    output.trouble("handwheel: internal error: " + words.replaceAll("\\s+", " "));
    if (surroundings.isSet("HANDWHEEL_DEBUG")) {
      PrintWriter err = output.errWriter();
      for (Throwable at = e; at != null; at = at.getCause()) {
        err.println(at);
        for (StackTraceElement element : at.getStackTrace()) {
          err.println("    at " + element);
        }
      }
    }
    return EXIT_TROUBLE;
  }

  @Override
  public Integer call() {
    if (spec == null) {
      throw new IllegalStateException("not set up");
    }
    throw new ParameterException(spec.commandLine(), "say what to do, such as `check`");
  }

  /** The version, and the Java it runs on. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      @Nullable String version = StdioServer.version();
      return new String[] {
        "handwheel " + (version == null ? "(unpackaged)" : version),
        "Java "
            + System.getProperty("java.version")
            + " ("
            + System.getProperty("java.vendor")
            + ")"
      };
    }
  }
}
