package org.handwheel.cli;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.handwheel.cli.Amounts.Range;
import org.handwheel.cli.Amounts.Size;
import org.handwheel.cli.CheckCommand.Format;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.drill.Drill;
import org.handwheel.shop.drill.DrillPoint;
import org.handwheel.shop.drill.DrillSeries;
import org.handwheel.shop.drill.Drilling.FeedPerTurn;
import org.handwheel.shop.thread.ScrewThread;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A twist drill: its size, its neighbours, its point, its feed and the threads it is for. */
@Command(
    name = "drill",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Gives the size of a drill, the drills nearest to it, the length of its point, its"
          + " feed, and the threads it is the tapping drill of.",
      "A size that is no drill gives the nearest drills."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel drill \"no 7\"",
      "  handwheel drill letter F",
      "  handwheel drill \"13/64 in\"",
      "  handwheel drill 5.13mm --format json"
    })
final class DrillCommand implements Callable<Integer> {
  private static final Length LARGEST = Length.mm("500");

  private final Output output;

  @Parameters(
      arity = "1..*",
      paramLabel = "DRILL",
      description = "Such as \"no 7\", \"letter F\", \"5/16 in\", 6.8mm.")
  private List<String> words = List.of();

  @Option(
      names = "--format",
      paramLabel = "text|json",
      description = "How to print. Default: text.")
  private Format format = Format.TEXT;

  DrillCommand(Output output) {
    this.output = output;
  }

  /** What is asked for: a drill, or a size that is none. */
  private record Asked(String text, @Nullable Drill drill, Length diameter) {}

  @Override
  public Integer call() {
    StandardTables tables = StandardTables.builtIn();
    Asked asked = asked(String.join(" ", words), tables);
    if (format == Format.JSON) {
      output.line(json(asked, tables));
    } else {
      facts(asked, tables).print(output);
    }
    return Handwheel.EXIT_CLEAN;
  }

  private static Asked asked(String text, StandardTables tables) {
    Optional<Drill> drill = tables.drills().find(text);
    if (drill.isPresent()) {
      return new Asked(drill.get().words(), drill.get(), drill.get().diameter());
    }
    if (!text.strip().matches("[.\\d].*")) {
      throw new UserException(
          "there is no drill '" + text + "'; write it as no 7, letter F, 5/16 in or 6.8mm");
    }
    Length diameter = LengthArguments.read(text, LengthUnit.MM);
    if (!diameter.isPositive() || diameter.isMoreThan(LARGEST)) {
      throw new UserException(text + ": a drill is over zero and up to 500 mm");
    }
    return new Asked(text, null, diameter);
  }

  private static List<Drill> nearest(Asked asked, StandardTables tables) {
    List<Drill> nearest = new ArrayList<>();
    for (DrillSeries series : DrillSeries.values()) {
      tables
          .drills()
          .nearest(
              asked.diameter(), drill -> drill.series() == series && !drill.equals(asked.drill()))
          .ifPresent(nearest::add);
    }
    return nearest;
  }

  private static String difference(Drill drill, Length diameter) {
    Length more = drill.diameter().minus(diameter);
    return more.isZero() ? "the same" : more.abs() + (more.isNegative() ? " smaller" : " larger");
  }

  private static List<ScrewThread> threads(Asked asked, StandardTables tables) {
    return tables.threads().all().stream()
        .filter(thread -> thread.tapDrill().diameter().equals(asked.diameter()))
        .toList();
  }

  private static Facts facts(Asked asked, StandardTables tables) {
    Drill drill = asked.drill();
    Facts facts =
        new Facts(
            asked.text()
                + ": "
                + (drill == null ? "no drill of this size" : drill.series().words() + " drill"));
    facts.add("diameter", asked.diameter().toString());
    for (Drill near : nearest(asked, tables)) {
      facts.add(
          near.series().words(),
          near.words() + ", " + near.diameter() + ": " + difference(near, asked.diameter()));
    }
    if (drill == null) {
      nearest(asked, tables).stream()
          .map(near -> "Sizes: " + near.provenance() + ".")
          .distinct()
          .forEach(facts::note);
      return facts;
    }
    facts.add(
        "point",
        DrillPoint.GENERAL.length(drill.diameter())
            + " long at 118 deg, "
            + DrillPoint.TOUGH.length(drill.diameter())
            + " at 135 deg");
    Optional<FeedPerTurn> feed = tables.drilling().feedPerTurn(drill.diameter());
    feed.ifPresent(usual -> facts.add("feed", LengthText.range(usual.perTurn()) + " a turn"));
    List<ScrewThread> threads = threads(asked, tables);
    if (!threads.isEmpty()) {
      facts.add(
          "tapping for",
          threads.stream().map(ScrewThread::designation).collect(Collectors.joining(", ")));
    }
    facts.note("Size: " + drill.provenance() + ".");
    feed.ifPresent(usual -> facts.note("Feed: " + usual.provenance() + "."));
    return facts.note(
        "A drill cuts larger than itself, the more the worse it is ground. Clamp the work: sharp"
            + " drills grab in brass and gunmetal. The machine maker's manual and local rules"
            + " come first.");
  }

  private static String json(Asked asked, StandardTables tables) {
    Drill drill = asked.drill();
    List<String> sources = new ArrayList<>();
    if (drill != null) {
      sources.add(drill.provenance().toString());
    }
    Optional<FeedPerTurn> feed = tables.drilling().feedPerTurn(asked.diameter());
    feed.ifPresent(usual -> sources.add(usual.provenance().toString()));
    return Json.of(
        new Root(
            1,
            asked.text(),
            drill == null ? null : drill.series().words(),
            Size.of(asked.diameter()),
            nearest(asked, tables).stream()
                .map(
                    near ->
                        new JsonNear(
                            near.words(),
                            near.series().words(),
                            Size.of(near.diameter()),
                            Size.of(near.diameter().minus(asked.diameter()))))
                .toList(),
            List.of(
                point(DrillPoint.GENERAL, asked.diameter()),
                point(DrillPoint.TOUGH, asked.diameter())),
            feed.map(usual -> Range.of(usual.perTurn())).orElse(null),
            threads(asked, tables).stream().map(ScrewThread::designation).toList(),
            sources));
  }

  private static JsonPoint point(DrillPoint point, Length diameter) {
    return new JsonPoint(Amounts.round(point.includedDegrees()), Size.of(point.length(diameter)));
  }

  private record Root(
      int version,
      String drill,
      @Nullable String series,
      Size dia,
      List<JsonNear> nearest,
      List<JsonPoint> points,
      @Nullable Range feedPerTurn,
      List<String> tappingFor,
      List<String> sources) {}

  private record JsonNear(String drill, String series, Size dia, Size difference) {}

  private record JsonPoint(BigDecimal includedDegrees, Size length) {}
}
