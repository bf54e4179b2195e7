package org.handwheel.cli;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.handwheel.cli.Amounts.Range;
import org.handwheel.cli.Amounts.Size;
import org.handwheel.cli.CheckCommand.Format;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.drill.Drill;
import org.handwheel.shop.thread.ScrewHoles;
import org.handwheel.shop.thread.ScrewHoles.Clearance;
import org.handwheel.shop.thread.ScrewThread;
import org.handwheel.shop.thread.Tapping;
import org.handwheel.syntax.Nearest;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A screw thread: sizes, tapping drills, clearance holes and heads. */
@Command(
    name = "thread",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Gives the sizes of a screw thread, its tapping drill, clearance holes and heads.",
      "It knows ISO metric, UNC, UNF, BSW, BSF, BA, ME and BSP parallel threads."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel thread M5",
      "  handwheel thread M8x1 --depth 12mm",
      "  handwheel thread \"BSW 1/4\" --percent 65",
      "  handwheel thread BA 2 --format json"
    })
final class ThreadCommand implements Callable<Integer> {
  private static final int[] PERCENTS = {60, 65, 70, 75, 80};

  private final Output output;

  @Parameters(
      arity = "1..*",
      paramLabel = "THREAD",
      description = "Such as M5, M8x1, \"UNC 1/4-20\", \"BSF 1/4\", \"BA 2\".")
  private List<String> words = List.of();

  @Option(
      names = "--percent",
      paramLabel = "NUMBER",
      description = "The per cent of thread wanted, to find its drill.")
  private @Nullable Double percent;

  @Option(
      names = "--depth",
      paramLabel = "LENGTH",
      description = "Depth of full thread in a blind hole.")
  private @Nullable String depth;

  @Option(
      names = "--format",
      paramLabel = "text|json",
      description = "How to print. Default: text.")
  private Format format = Format.TEXT;

  ThreadCommand(Output output) {
    this.output = output;
  }

  @Override
  public Integer call() {
    String name = String.join(" ", words);
    StandardTables tables = StandardTables.builtIn();
    ScrewThread thread = tables.threads().find(name).orElseThrow(() -> unknown(name, tables));
    if (percent != null && !(percent >= 30 && percent <= 100)) {
      throw new UserException("--percent: give between 30 and 100");
    }
    if (format == Format.JSON) {
      output.line(json(thread, tables));
    } else {
      facts(thread, tables).print(output);
    }
    return Handwheel.EXIT_CLEAN;
  }

  private static UserException unknown(String name, StandardTables tables) {
    List<String> names = tables.threads().all().stream().map(ScrewThread::designation).toList();
    return new UserException(
        "no thread '"
            + name
            + "' is known"
            + Nearest.to(name, names)
                .map(near -> "; did you mean '" + near + "'?")
                .orElse("; write it as M5, M8x1, UNC 1/4-20, BSW 1/4 or BA 2"));
  }

  private @Nullable Length threadDepth() {
    if (depth == null) {
      return null;
    }
    Length length = LengthArguments.ofOption("--depth", depth);
    if (!length.isPositive() || length.isMoreThan(Length.mm("1000"))) {
      throw new UserException("--depth: a thread is over zero and up to 1 m deep");
    }
    return length;
  }

  /** The drill nearest to the hole that leaves so much thread. */
  private static Drill drill(ScrewThread thread, double wanted, StandardTables tables) {
    return tables.drills().nearest(thread.holeFor(wanted));
  }

  private static String percent(ScrewThread thread, Drill drill) {
    return Math.round(thread.percentOfThread(drill.diameter())) + " % of thread";
  }

  private static String words(Drill drill) {
    return drill.words() + ", " + drill.diameter();
  }

  private Facts facts(ScrewThread thread, StandardTables tables) {
    Facts facts =
        new Facts(
            thread.designation()
                + ": "
                + thread.series().words()
                + ", "
                + thread.series().form().words());
    facts.add("major dia", thread.major().toString());
    facts.add(
        "pitch",
        thread.pitch()
            + ", "
            + Amounts.figures(thread.threadsPerInch().doubleValue(), 4)
            + " threads an inch");
    facts.add(
        "minor dia",
        thread.minorDiameter()
            + " of the nut, basic"
            + thread
                .minorLimits()
                .map(limits -> "; " + LengthText.range(limits) + " allowed")
                .orElse(""));
    facts.add(
        "tapping drill", words(thread.tapDrill()) + ": " + percent(thread, thread.tapDrill()));
    if (percent != null) {
      Drill drill = drill(thread, percent, tables);
      facts.add(
          "for " + Amounts.figures(percent) + " %",
          "hole "
              + thread.holeFor(percent)
              + "; drill "
              + words(drill)
              + ": "
              + percent(thread, drill));
    } else {
      facts.add("other drills", others(thread, tables));
    }
    Length deep = threadDepth();
    if (deep != null) {
      blind(facts, thread, deep);
    }
    facts.add("clearance", clearances(thread, tables.screwHoles()));
    tables
        .screwHoles()
        .counterbore(thread)
        .ifPresent(
            bore ->
                facts.add(
                    "counterbore",
                    "dia " + bore.diameter() + ", " + bore.depth() + " deep, for a cap screw"));
    tables
        .screwHoles()
        .countersink(thread)
        .ifPresent(
            sink ->
                facts.add(
                    "countersink",
                    "dia "
                        + sink.diameter()
                        + " at "
                        + Amounts.figures(sink.includedDegrees())
                        + " deg"));
    sources(thread, tables).forEach(facts::note);
    return facts.note(
        "Fewer per cent tap more easily: 65 to 75 is usual, less in tough metal (common"
            + " practice, no source).");
  }

  private static String others(ScrewThread thread, StandardTables tables) {
    Map<String, String> drills = new LinkedHashMap<>();
    for (int wanted : PERCENTS) {
      Drill drill = drill(thread, wanted, tables);
      if (!drill.equals(thread.tapDrill())) {
        drills.put(drill.words(), percent(thread, drill).replace(" of thread", ""));
      }
    }
    List<String> texts = new ArrayList<>();
    drills.forEach((drill, left) -> texts.add(drill + " (" + left + ")"));
    return texts.isEmpty() ? "none nearer" : String.join(", ", texts);
  }

  private static void blind(Facts facts, ScrewThread thread, Length deep) {
    facts.add("thread", deep + " deep");
    for (Tapping.Lead lead : Tapping.Lead.values()) {
      facts.add(
          lead.name().toLowerCase(Locale.ROOT) + " tap",
          "drill "
              + Tapping.fullDepth(thread, deep, lead)
              + " deep at full diameter, the point deeper");
    }
  }

  private static Optional<String> clearances(ScrewThread thread, ScrewHoles holes) {
    List<String> texts = new ArrayList<>();
    for (Clearance wanted : Clearance.values()) {
      holes
          .clearance(thread, wanted)
          .ifPresent(
              hole -> texts.add(wanted.name().toLowerCase(Locale.ROOT) + " " + hole.diameter()));
    }
    return texts.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", texts));
  }

  private static List<String> sources(ScrewThread thread, StandardTables tables) {
    List<String> sources = new ArrayList<>();
    sources.add("Thread: " + thread.provenance() + ".");
    tables
        .screwHoles()
        .clearance(thread, Clearance.NORMAL)
        .ifPresent(hole -> sources.add("Clearance: " + hole.provenance() + "."));
    tables
        .screwHoles()
        .counterbore(thread)
        .ifPresent(bore -> sources.add("Heads: " + bore.provenance() + "."));
    return sources;
  }

  // ---- JSON

  private String json(ScrewThread thread, StandardTables tables) {
    ScrewHoles holes = tables.screwHoles();
    Map<String, Size> clearances = new LinkedHashMap<>();
    for (Clearance wanted : Clearance.values()) {
      holes
          .clearance(thread, wanted)
          .ifPresent(
              hole ->
                  clearances.put(wanted.name().toLowerCase(Locale.ROOT), Size.of(hole.diameter())));
    }
    List<JsonDrill> drills = new ArrayList<>();
    if (percent != null) {
      drills.add(json(thread, drill(thread, percent, tables)));
    } else {
      for (int wanted : PERCENTS) {
        JsonDrill drill = json(thread, drill(thread, wanted, tables));
        if (!drills.contains(drill)) {
          drills.add(drill);
        }
      }
    }
    Length deep = threadDepth();
    Map<String, Size> blind = new LinkedHashMap<>();
    if (deep != null) {
      for (Tapping.Lead lead : Tapping.Lead.values()) {
        blind.put(
            lead.name().toLowerCase(Locale.ROOT), Size.of(Tapping.fullDepth(thread, deep, lead)));
      }
    }
    return Json.of(
        new Root(
            1,
            thread.designation(),
            thread.series().words(),
            thread.series().form().words(),
            Size.of(thread.major()),
            Size.of(thread.pitch()),
            Amounts.round(thread.threadsPerInch().doubleValue()),
            Size.of(thread.minorDiameter()),
            thread.minorLimits().map(Range::of).orElse(null),
            json(thread, thread.tapDrill()),
            drills,
            clearances,
            holes.counterbore(thread).map(ThreadCommand::json).orElse(null),
            holes.countersink(thread).map(ThreadCommand::json).orElse(null),
            blind.isEmpty() ? null : blind,
            sources(thread, tables)));
  }

  private static JsonDrill json(ScrewThread thread, Drill drill) {
    return new JsonDrill(
        drill.words(),
        Size.of(drill.diameter()),
        Amounts.round(thread.percentOfThread(drill.diameter())));
  }

  private static JsonBore json(ScrewHoles.Counterbore bore) {
    return new JsonBore(Size.of(bore.diameter()), Size.of(bore.depth()));
  }

  private static JsonSink json(ScrewHoles.Countersink sink) {
    return new JsonSink(Size.of(sink.diameter()), Amounts.round(sink.includedDegrees()));
  }

  private record Root(
      int version,
      String thread,
      String series,
      String form,
      Size major,
      Size pitch,
      BigDecimal threadsPerInch,
      Size minor,
      @Nullable Range minorLimits,
      JsonDrill tappingDrill,
      List<JsonDrill> drills,
      Map<String, Size> clearance,
      @Nullable JsonBore counterbore,
      @Nullable JsonSink countersink,
      @Nullable Map<String, Size> blindHole,
      List<String> sources) {}

  private record JsonDrill(String drill, Size dia, BigDecimal percentOfThread) {}

  private record JsonBore(Size dia, Size depth) {}

  private record JsonSink(Size dia, BigDecimal includedDegrees) {}
}
