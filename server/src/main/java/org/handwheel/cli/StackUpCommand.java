package org.handwheel.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.handwheel.cli.Amounts.Range;
import org.handwheel.cli.Amounts.Size;
import org.handwheel.cli.CheckCommand.Format;
import org.handwheel.model.PartDimension;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.fit.SizeChain;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What the tolerances of a chain of sizes come to. */
@Command(
    name = "stackup",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Adds up a chain of sizes from face to face and says what is left between its ends: at"
          + " worst, and by the root of the sum of the squares.",
      "A size that goes back has a minus before it. A bare size is in millimetres, and a bare"
          + " tolerance in the unit of its size.",
      "With --plan the chain is that of the drawing between two of its points: a face, a hole's"
          + " middle by its name, a wall such as \"left of shaft\", \"floor of oilway\"."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel stackup \"48 +-0.1\" \"-12 H7\" \"-20 +0/-0.05\"",
      "  handwheel stackup \"2 in +-0.005\" \"-1/2 in +-0.002\"",
      "  handwheel stackup 48 -12 --general m --format json",
      "  handwheel stackup --plan bearing-block.plan --from right --to \"right of journal\""
    })
final class StackUpCommand implements Callable<Integer> {
  private static final String HOW =
      "write a size and its tolerance, such as \"48 +-0.1\", \"48 +0/-0.05\" or \"12 H7\"";
  private static final Pattern SIGN = Pattern.compile("([+-]?)\\s*(.+)");
  private static final Pattern EVEN = Pattern.compile("(.+?)\\s*(?:\\+-|\\+/-|\u00B1)\\s*(.+)");
  private static final Pattern TWO =
      Pattern.compile("(.+?)\\s*\\+\\s*([^+-]+?)\\s*/\\s*-?\\s*([^+-]+)");
  private static final Pattern CODE =
      Pattern.compile("(.*?[\\d\\s.]|.*?in|.*?mm)\\s*([A-Za-z]{1,2}\\d{1,2})");
  private static final Pattern INCHES = Pattern.compile(".*(?:in|inch|\")");

  private final Surroundings surroundings;
  private final Output output;

  @Parameters(
      arity = "0..*",
      paramLabel = "SIZE",
      description = "A size with its tolerance: +-, +/-, or a class of ISO 286.")
  private List<String> words = List.of();

  @Option(
      names = "--general",
      paramLabel = "f|m|c|v",
      description = "The class of ISO 2768-1 for sizes without a tolerance.")
  private @Nullable String general;

  @Option(names = "--plan", paramLabel = "FILE", description = "The drawing of a plan instead.")
  private @Nullable String plan;

  @Option(names = "--from", paramLabel = "POINT", description = "With --plan: where it begins.")
  private @Nullable String from;

  @Option(names = "--to", paramLabel = "POINT", description = "With --plan: where it ends.")
  private @Nullable String to;

  @Option(
      names = "--along",
      paramLabel = "length|width|height",
      description = "With --plan: the direction, where there is a choice.")
  private @Nullable PartDimension along;

  @Option(
      names = "--format",
      paramLabel = "text|json",
      description = "How to print. Default: text.")
  private Format format = Format.TEXT;

  private StackUpCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  /** The command; a size that goes back opens with a minus, as an option does. */
  static CommandLine commandLine(Surroundings surroundings, Output output) {
    return new CommandLine(new StackUpCommand(surroundings, output))
        .setUnmatchedOptionsArePositionalParams(true);
  }

  /** One size of the chain with its sign: what it adds, and its limits. */
  private record Link(String text, Length nominal, LengthRange limits) {}

  @Override
  public Integer call() {
    if (plan != null) {
      ofPlan(plan);
      return Handwheel.EXIT_CLEAN;
    }
    if (from != null || to != null || along != null) {
      throw new UserException("--from, --to and --along speak of a plan: name it with --plan");
    }
    if (words.isEmpty()) {
      throw new UserException("name the sizes, or a plan with --plan");
    }
    if (general != null && !general.matches("[fmcv]")) {
      throw new UserException("--general: '" + general + "' is none of f, m, c, v");
    }
    List<Link> links = words.stream().map(this::link).toList();
    Length nominal = links.stream().map(Link::nominal).reduce(Length.ZERO, Length::plus);
    SizeChain chain = new SizeChain(links.stream().map(Link::limits).toList());
    if (format == Format.JSON) {
      output.line(json(links, nominal, chain));
    } else {
      facts(links, nominal, chain).print(output);
    }
    return Handwheel.EXIT_CLEAN;
  }

  private void ofPlan(String file) {
    if (!words.isEmpty() || general != null) {
      throw new UserException("give --plan, --from and --to alone: the drawing says the rest");
    }
    if (from == null || to == null) {
      throw new UserException("say between which points: --from left --to \"left of shaft\"");
    }
    CheckedPlan checked = CheckedPlan.load(file, surroundings);
    DrawnChainReport report = DrawnChainReport.of(file, checked, from, to, along);
    if (format == Format.JSON) {
      output.line(report.json());
    } else {
      report.print(output);
    }
  }

  private Link link(String word) {
    String text = word.strip();
    Matcher sign = SIGN.matcher(text);
    if (!sign.matches()) {
      throw new UserException("an empty size: " + HOW);
    }
    Toleranced size = toleranced(text, sign.group(2));
    LengthRange limits = size.deviations().plus(size.nominal());
    return sign.group(1).equals("-")
        ? new Link(
            text,
            size.nominal().negated(),
            new LengthRange(limits.high().negated(), limits.low().negated()))
        : new Link(text, size.nominal(), limits);
  }

  private record Toleranced(Length nominal, LengthRange deviations) {}

  private Toleranced toleranced(String whole, String text) {
    Matcher even = EVEN.matcher(text);
    if (even.matches()) {
      LengthUnit unit = unit(even.group(1));
      Length spread = LengthArguments.read(even.group(2), unit);
      if (spread.isNegative()) {
        throw new UserException(whole + ": a tolerance is not below nothing");
      }
      return new Toleranced(
          LengthArguments.read(even.group(1), unit), LengthRange.around(Length.ZERO, spread));
    }
    Matcher two = TWO.matcher(text);
    if (two.matches()) {
      LengthUnit unit = unit(two.group(1));
      return new Toleranced(
          LengthArguments.read(two.group(1), unit),
          new LengthRange(
              LengthArguments.read(two.group(3), unit).negated(),
              LengthArguments.read(two.group(2), unit)));
    }
    Matcher code = CODE.matcher(text);
    if (code.matches()) {
      Length nominal = LengthArguments.read(code.group(1).strip(), LengthUnit.MM);
      return new Toleranced(
          nominal,
          StandardTables.builtIn()
              .fits()
              .deviations(nominal, code.group(2))
              .orElseThrow(
                  () ->
                      new UserException(
                          whole + ": the tables have no " + code.group(2) + " for " + nominal)));
    }
    return untoleranced(whole, LengthArguments.read(text, LengthUnit.MM));
  }

  private Toleranced untoleranced(String whole, Length nominal) {
    if (general == null) {
      throw new UserException(whole + ": no tolerance; " + HOW + ", or give --general m");
    }
    Optional<Length> spread =
        StandardTables.builtIn().generalTolerances().linear(nominal, general.charAt(0));
    return new Toleranced(
        nominal,
        LengthRange.around(
            Length.ZERO,
            spread.orElseThrow(
                () ->
                    new UserException(
                        whole + ": ISO 2768-1 has no class " + general + " for " + nominal))));
  }

  private static LengthUnit unit(String size) {
    return INCHES.matcher(size.strip()).matches() ? LengthUnit.IN : LengthUnit.MM;
  }

  private Facts facts(List<Link> links, Length nominal, SizeChain chain) {
    Facts facts =
        new Facts("a chain of " + links.size() + (links.size() == 1 ? " size" : " sizes"));
    for (Link link : links) {
      facts.add(link.text(), LengthText.range(link.limits()));
    }
    facts.add("nominal", nominal.toString());
    facts.add("at worst", spread(chain.worstCase()));
    facts.add("likely", spread(chain.likely()));
    facts.note(DrawnChainReport.LIKELY);
    if (general != null) {
      facts.note("Sizes without a tolerance: ISO 2768-1, class " + general + ".");
    }
    return facts;
  }

  private static String spread(LengthRange range) {
    return LengthText.range(range) + ": " + range.middle() + ", give or take " + range.spread();
  }

  private static String json(List<Link> links, Length nominal, SizeChain chain) {
    return Json.of(
        new Root(
            1,
            links.stream()
                .map(
                    link ->
                        new JsonLink(link.text(), Size.of(link.nominal()), Range.of(link.limits())))
                .toList(),
            Size.of(nominal),
            Range.of(chain.worstCase()),
            Range.of(chain.likely())));
  }

  private record Root(
      int version, List<JsonLink> links, Size nominal, Range worstCase, Range likely) {}

  private record JsonLink(String text, Size nominal, Range limits) {}
}
