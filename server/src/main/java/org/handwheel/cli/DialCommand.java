package org.handwheel.cli;

import java.math.BigInteger;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.cli.CheckCommand.Format;
import org.handwheel.cli.LengthArguments.Given;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Converts lengths between units and into turns and divisions of a dial. */
@Command(
    name = "dial",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Gives lengths in both units, as the nearest 64th of an inch, and as turns and"
          + " divisions of a dial.",
      "The dial is that of a machine in a shop file, or is given by its screw's lead and"
          + " its divisions. Without either, only the units are converted."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel dial 7.5mm \"1-3/8 in\" \"10 thou\"",
      "  handwheel dial 19.05 --units mm --machine inch-mill --axis y",
      "  handwheel dial 3mm --lead \"1/8 in\" --divisions 125",
      "  handwheel dial 3mm --lead 2.5mm --divisions 62.5 --format json"
    })
final class DialCommand implements Callable<Integer> {
  private static final BigFraction MOST_DIVISIONS = BigFraction.of(100_000);
  private static final Length FARTHEST = Length.mm("100000");

  private final Surroundings surroundings;
  private final Output output;

  @Parameters(
      arity = "1..*",
      paramLabel = "LENGTH",
      description = "Such as 25.4mm, 1in, \"1/8 in\", \"1-3/8 in\", \"10 thou\".")
  private List<String> lengths = List.of();

  @Option(
      names = "--machine",
      paramLabel = "NAME",
      description = "A machine of the shop files below this folder, or of --shop.")
  private @Nullable String machine;

  @Option(names = "--shop", paramLabel = "FILE", description = "The shop file with the machine.")
  private @Nullable String shop;

  @Option(
      names = "--axis",
      paramLabel = "x|y|z",
      description = "One axis of the machine. Default: all that have a screw.")
  private @Nullable String axis;

  @Option(
      names = {"--lead", "--pitch"},
      paramLabel = "LENGTH",
      description = "How far one turn of the handle goes.")
  private @Nullable String lead;

  @Option(
      names = "--divisions",
      paramLabel = "NUMBER",
      description = "Divisions of the dial, not always a whole number (62.5).")
  private @Nullable String divisions;

  @Option(
      names = "--units",
      paramLabel = "mm|in",
      description = "The unit of bare numbers. Without it they are refused.")
  private @Nullable Units units;

  @Option(
      names = "--format",
      paramLabel = "text|json",
      description = "How to print. Default: text.")
  private Format format = Format.TEXT;

  DialCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  /** The unit of bare numbers. */
  enum Units {
    MM,
    IN
  }

  @Override
  public Integer call() {
    @Nullable LengthUnit bare =
        units == null ? null : units == Units.MM ? LengthUnit.MM : LengthUnit.IN;
    List<Given> given = LengthArguments.read(lengths, bare);
    for (Given one : given) {
      if (one.length().isNegative()) {
        throw new UserException(one.text() + ": give the length without a sign");
      }
      if (one.length().isMoreThan(FARTHEST)) {
        throw new UserException(one.text() + ": no dial counts further than 100 m");
      }
    }
    DialReport report = new DialReport(given, screws(bare));
    if (format == Format.JSON) {
      output.line(report.json());
    } else {
      report.lines(output.width()).forEach(line -> output.line(output.glyphs().show(line)));
    }
    return Handwheel.EXIT_CLEAN;
  }

  private Screws screws(@Nullable LengthUnit bare) {
    if (machine != null) {
      if (lead != null || divisions != null) {
        throw new UserException("give --machine, or --lead and --divisions, not both");
      }
      return Screws.ofMachine(machine, shop, axis == null ? null : Screws.axis(axis), surroundings);
    }
    if (shop != null || axis != null) {
      throw new UserException("name the machine with --machine");
    }
    if (lead == null && divisions == null) {
      return Screws.NONE;
    }
    if (lead == null || divisions == null) {
      throw new UserException("a dial needs both --lead and --divisions");
    }
    Length perTurn = LengthArguments.read(lead, bare);
    if (perTurn.isLessThan(Length.mm("0.001")) || perTurn.isMoreThan(Length.mm("1000"))) {
      throw new UserException("--lead: a turn is between 0.001 mm and 1 m");
    }
    return Screws.of(perTurn, divisions(divisions));
  }

  private static BigFraction divisions(String text) {
    String number = text.strip().toLowerCase(Locale.ROOT);
    if (!number.matches("\\d{1,6}(?:\\.\\d{1,4})?")) {
      throw new UserException("--divisions: " + text + " is not a number such as 100 or 62.5");
    }
    int point = number.indexOf('.');
    int places = point < 0 ? 0 : number.length() - point - 1;
    BigFraction value =
        BigFraction.of(
            Long.parseLong(number.replace(".", "")), BigInteger.TEN.pow(places).longValueExact());
    if (value.signum() <= 0 || value.compareTo(MOST_DIVISIONS) > 0) {
      throw new UserException("--divisions: a dial has between 1 and 100000 divisions");
    }
    return value;
  }
}
