package org.handwheel.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.handwheel.cli.Amounts.Range;
import org.handwheel.cli.Amounts.Size;
import org.handwheel.cli.CheckCommand.Format;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.fit.Fit;
import org.handwheel.shop.fit.FitKind;
import org.handwheel.shop.fit.Fits;
import org.handwheel.shop.fit.ToleranceClass;
import org.handwheel.shop.table.Provenance;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Limits of a bore or a shaft, and the fit of both. */
@Command(
    name = "fit",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Gives the limits of a bore or a shaft by ISO 286, and what the two do together.",
      "Capital letters are holes, small letters shafts. A bare size is in millimetres."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel fit \"10 H7\"",
      "  handwheel fit 12 H7/g6",
      "  handwheel fit 1/2 in H8 --format json"
    })
final class FitCommand implements Callable<Integer> {
  private static final Pattern ASKED =
      Pattern.compile(
          "(.*?[\\d\\s](?:mm|in|inch)?)\\s*([A-Za-z]{1,2}\\d{1,2})(?:\\s*/?\\s*([A-Za-z]{1,2}\\d{1,2}))?");

  private final Output output;

  @Parameters(
      arity = "1..*",
      paramLabel = "FIT",
      description = "A size and a tolerance, such as \"10 H7\" or \"12 H7/g6\".")
  private List<String> words = List.of();

  @Option(
      names = "--format",
      paramLabel = "text|json",
      description = "How to print. Default: text.")
  private Format format = Format.TEXT;

  FitCommand(Output output) {
    this.output = output;
  }

  /** One member of a fit. */
  private record Member(String code, LengthRange deviations, LengthRange limits) {
    boolean isHole() {
      return Character.isUpperCase(code.charAt(0));
    }
  }

  @Override
  public Integer call() {
    String text = String.join(" ", words).strip();
    Matcher asked = ASKED.matcher(text);
    if (!asked.matches()) {
      throw new UserException(text + ": write a size and a tolerance, such as 10 H7 or 12 H7/g6");
    }
    Length nominal = LengthArguments.read(asked.group(1).strip(), LengthUnit.MM);
    Fits fits = StandardTables.builtIn().fits();
    Member first = member(nominal, asked.group(2), fits);
    Member second = asked.group(3) == null ? null : member(nominal, asked.group(3), fits);
    Fit fit = second == null ? null : fit(nominal, first, second, fits);
    if (format == Format.JSON) {
      output.line(json(nominal, first, second, fit, fits));
    } else {
      facts(nominal, first, second, fit, fits).print(output);
    }
    return Handwheel.EXIT_CLEAN;
  }

  private static Member member(Length nominal, String code, Fits fits) {
    Optional<LengthRange> deviations = fits.deviations(nominal, code);
    if (deviations.isEmpty()) {
      throw new UserException(
          "the tables have no "
              + code
              + " for "
              + nominal
              + "; they hold D to P and d to s,"
              + " grades 5 to 11, over 0 to 315 mm");
    }
    return new Member(code, deviations.get(), deviations.get().plus(nominal));
  }

  private static Fit fit(Length nominal, Member first, Member second, Fits fits) {
    return fits.fit(nominal, first.code(), second.code())
        .orElseThrow(
            () ->
                new UserException(
                    "a fit is a hole and a shaft, such as H7/g6: capital letters are holes"));
  }

  private static Facts facts(
      Length nominal, Member first, @Nullable Member second, @Nullable Fit fit, Fits fits) {
    Facts facts =
        new Facts(
            nominal
                + " "
                + first.code()
                + (second == null ? "" : "/" + second.code())
                + ": "
                + (second == null ? (first.isHole() ? "a hole" : "a shaft") : "a fit"));
    add(facts, first);
    if (second != null && fit != null) {
      add(facts, second);
      facts.add("together", fit.kind().words() + " fit");
      LengthRange clearance = fit.clearance();
      if (fit.kind() != FitKind.INTERFERENCE) {
        Length least = Length.max(Length.ZERO, clearance.low());
        facts.add("clearance", LengthText.range(new LengthRange(least, clearance.high())));
      }
      if (fit.kind() != FitKind.CLEARANCE) {
        Length least = Length.max(Length.ZERO, clearance.high().negated());
        facts.add(
            "interference", LengthText.range(new LengthRange(least, clearance.low().negated())));
      }
    }
    sources(first, second, fits).forEach(facts::note);
    return facts;
  }

  private static void add(Facts facts, Member member) {
    facts.add(member.code() + " limits", LengthText.range(member.limits()));
    facts.add(
        "  deviations",
        signed(member.deviations().low()) + " to " + signed(member.deviations().high()));
    facts.add("  tolerance", member.limits().width().toString());
    facts.add("  middle", member.limits().middle().toString());
  }

  private static String signed(Length deviation) {
    return (deviation.isPositive() ? "+" : "") + deviation;
  }

  private static List<String> sources(Member first, @Nullable Member second, Fits fits) {
    List<String> sources = new ArrayList<>();
    for (Member member : second == null ? List.of(first) : List.of(first, second)) {
      String source =
          ToleranceClass.parse(member.code()).isPresent()
              ? fits.provenance(member.code()).map(Provenance::toString).orElse("ISO 286-1")
              : "ISO 286-1";
      if (!sources.contains(source)) {
        sources.add(source);
      }
    }
    return sources;
  }

  private static String json(
      Length nominal, Member first, @Nullable Member second, @Nullable Fit fit, Fits fits) {
    List<JsonMember> members = new ArrayList<>();
    members.add(json(first));
    if (second != null) {
      members.add(json(second));
    }
    return Json.of(
        new Root(
            1,
            Size.of(nominal),
            members,
            fit == null ? null : fit.kind().words(),
            fit == null ? null : Range.of(fit.clearance()),
            sources(first, second, fits)));
  }

  private static JsonMember json(Member member) {
    return new JsonMember(
        member.code(),
        member.isHole() ? "hole" : "shaft",
        Range.of(member.limits()),
        Range.of(member.deviations()),
        Size.of(member.limits().width()));
  }

  private record Root(
      int version,
      Size nominal,
      List<JsonMember> members,
      @Nullable String fit,
      @Nullable Range clearance,
      List<String> sources) {}

  private record JsonMember(
      String code, String of, Range limits, Range deviations, Size tolerance) {}
}
