package org.handwheel.cli;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.handwheel.cli.CheckCommand.Format;
import org.handwheel.cli.SpeedsReport.Case;
import org.handwheel.model.Limits;
import org.handwheel.model.Owned;
import org.handwheel.model.Owned.CutterKind;
import org.handwheel.model.Owned.ToolMaterial;
import org.handwheel.model.Shop;
import org.handwheel.model.Step.HoleVerb;
import org.handwheel.rules.Checked;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.material.Material;
import org.handwheel.syntax.Nearest;
import org.handwheel.units.Length;
import org.handwheel.work.CuttingCalculator;
import org.handwheel.work.CuttingConditions.Asked;
import org.handwheel.work.CuttingConditions.Bite;
import org.handwheel.work.CuttingConditions.Tool;
import org.handwheel.work.KnownMaterial;
import org.handwheel.work.PlanRun;
import org.handwheel.work.hole.HoleCalculator;
import org.handwheel.work.hole.HoleConditions;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Speeds, feeds, power and bending of a cut, or of every cut of a plan. */
@Command(
    name = "speeds",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Gives spindle speed, feeds, hand feed, power and force to start a cut with: for a"
          + " material and a cutter or a tool for holes, or for every cut and hole of a plan.",
      "With a machine the speed is one that the machine has, and the feed one that a hand"
          + " can wind. With --depth and --width it says what the cut asks of the machine."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel speeds gunmetal-LG2 --dia 10mm --teeth 4",
      "  handwheel speeds steel-mild --cutter EM16 --machine inch-mill --depth 20mm",
      "                   --width 0.5mm",
      "  handwheel speeds steel-mild --hole drill --dia \"no 7\" --depth 1in",
      "  handwheel speeds --plan bearing-block.plan --format json"
    })
final class SpeedsCommand implements Callable<Integer> {
  private static final Length SMALLEST = Length.mm("0.1");
  private static final Length LARGEST = Length.mm("500");
  private static final int MOST_TEETH = 100;
  private static final double FASTEST = 200_000;

  private final Surroundings surroundings;
  private final Output output;

  @Parameters(
      arity = "0..1",
      paramLabel = "MATERIAL",
      description = "Such as steel-mild; `handwheel material` lists them.")
  private @Nullable String material;

  @Option(
      names = "--plan",
      paramLabel = "FILE",
      description = "Every cut and hole of a plan instead.")
  private @Nullable String plan;

  @Option(names = "--cutter", paramLabel = "NAME", description = "A cutter of the shop.")
  private @Nullable String cutter;

  @Option(names = "--dia", paramLabel = "LENGTH", description = "The cutter's diameter: 10mm.")
  private @Nullable String dia;

  @Option(names = "--teeth", paramLabel = "NUMBER", description = "Its teeth. Default: 4.")
  private @Nullable Integer teeth;

  @Option(
      names = "--hole",
      paramLabel = "OPERATION",
      description =
          "A tool for holes instead: spot, drill, ream, tap, bore, counterbore, countersink; --dia"
              + " may then be a drill or a thread, and --feed is for one turn.")
  private @Nullable HoleVerb hole;

  @Option(
      names = "--made-of",
      paramLabel = "hss|carbide",
      description = "What its edges are. Default: hss.")
  private @Nullable ToolMaterial madeOf;

  @Option(
      names = "--kind",
      paramLabel = "KIND",
      description = "end-mill (the default), slot-drill, face-mill, fly-cutter, shell-mill.")
  private @Nullable CutterKind kind;

  @Option(
      names = "--stick-out",
      paramLabel = "LENGTH",
      description = "How far it stands out of its holder.")
  private @Nullable String stickOut;

  @Option(names = "--depth", paramLabel = "LENGTH", description = "Depth along the cutter.")
  private @Nullable String depth;

  @Option(names = "--width", paramLabel = "LENGTH", description = "Width across its travel.")
  private @Nullable String width;

  @Option(names = "--machine", paramLabel = "NAME", description = "A machine of the shop.")
  private @Nullable String machine;

  @Option(
      names = "--axis",
      paramLabel = "x|y|z",
      description = "The axis that travels. Default: x.")
  private String axis = "x";

  @Option(
      names = "--shop",
      paramLabel = "FILE",
      description = "The shop file. Default: those below this folder.")
  private @Nullable String shop;

  @Option(names = "--speed", paramLabel = "RPM", description = "A spindle speed to try.")
  private @Nullable Double speed;

  @Option(names = "--feed", paramLabel = "LENGTH", description = "A feed per tooth to try.")
  private @Nullable String feed;

  @Option(
      names = "--format",
      paramLabel = "text|json",
      description = "How to print. Default: text.")
  private Format format = Format.TEXT;

  SpeedsCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    SpeedsReport report = plan == null ? ofCutter() : ofPlan(plan);
    if (format == Format.JSON) {
      output.line(report.json());
    } else {
      report.lines(output.width()).forEach(line -> output.line(output.glyphs().show(line)));
    }
    return Handwheel.EXIT_CLEAN;
  }

  // ---- A plan

  private SpeedsReport ofPlan(String file) {
    boolean more =
        material != null
            || cutter != null
            || dia != null
            || teeth != null
            || madeOf != null
            || kind != null
            || stickOut != null
            || depth != null
            || width != null
            || machine != null
            || shop != null
            || speed != null
            || feed != null
            || hole != null;
    if (more) {
      throw new UserException("give --plan alone: a plan says the rest itself");
    }
    OnePlan worked = OnePlan.read(file, surroundings);
    Checked checked = worked.checked();
    PlanRun run = worked.run();
    List<Case> cases =
        run.knownSteps()
            .flatMap(
                step ->
                    CuttingCalculator.of(run, step).stream()
                        .map(found -> Case.of(checked.tree(), step, found)))
            .toList();
    List<HoleSpeeds> holes =
        run.knownSteps()
            .flatMap(
                step ->
                    HoleCalculator.of(run, step, StandardTables.builtIn()).stream()
                        .map(group -> HoleSpeeds.of(checked.tree(), step, group)))
            .toList();
    return new SpeedsReport(file, cases, holes, checked.findings().size());
  }

  // ---- A material and a cutter

  private SpeedsReport ofCutter() {
    String asked = material;
    if (asked == null) {
      throw new UserException("name a material, or a plan with --plan");
    }
    if (hole != null) {
      return ofHole(asked, hole);
    }
    if (cutter == null && dia == null) {
      throw new UserException("give the cutter's diameter with --dia, or a cutter with --cutter");
    }
    boolean described = dia != null || teeth != null || madeOf != null || kind != null;
    if (cutter != null && described) {
      throw new UserException("give --cutter, or --dia and the rest, not both");
    }
    boolean wanted = shop != null || machine != null || cutter != null;
    ShopThings things = wanted ? ShopThings.load(shop, surroundings) : null;
    if (things != null && shop != null) {
      things.orRefuse();
    }
    Owned.Machine found =
        machine == null || things == null
            ? null
            : things.find(Owned.Machine.class, "machine", machine, Owned.Machine::screws);
    Owned.Cutter owned =
        cutter == null || things == null
            ? null
            : things.find(Owned.Cutter.class, "cutter", cutter, Owned.Cutter::dia);
    Limits limits =
        things == null
            ? Limits.DEFAULTS
            : found != null
                ? things.limitsOf(found)
                : owned != null ? things.limitsOf(owned) : Limits.DEFAULTS;
    KnownMaterial known =
        material(asked, things == null ? List.of() : things.shops())
            .orElseThrow(() -> unknown(asked));
    Tool tool = owned == null ? tool(dia) : withStickOut(CuttingCalculator.tool(owned, limits));
    Asked wish =
        new Asked(
            known,
            found,
            tool,
            bite(tool),
            Screws.axis(axis),
            speed(),
            feed == null ? null : length("--feed", feed, Length.mm("0.0001"), Length.mm("10")));
    Case only = new Case(null, null, cutter, null, new CuttingCalculator(limits).work(wish));
    return new SpeedsReport(null, List.of(only), List.of(), 0);
  }

  // ---- A material and a tool for holes

  private SpeedsReport ofHole(String asked, HoleVerb verb) {
    boolean milling =
        cutter != null || teeth != null || kind != null || stickOut != null || width != null;
    if (milling) {
      throw new UserException(
          "with --hole give --dia, and if you like --depth, --machine, --speed and --feed");
    }
    if (dia == null) {
      throw new UserException("give the tool's size with --dia: 8mm, \"no 7\", for a tap M6");
    }
    ShopThings things =
        shop == null && machine == null ? null : ShopThings.load(shop, surroundings);
    if (things != null && shop != null) {
      things.orRefuse();
    }
    Owned.Machine found =
        machine == null || things == null
            ? null
            : things.find(Owned.Machine.class, "machine", machine, Owned.Machine::screws);
    KnownMaterial known =
        material(asked, things == null ? List.of() : things.shops())
            .orElseThrow(() -> unknown(asked));
    HoleTool tool = HoleTool.of(verb, dia);
    Length deep = depth == null ? null : length("--depth", depth, Length.mm("0.001"), LARGEST);
    Length perTurn =
        feed == null ? null : length("--feed", feed, Length.mm("0.0001"), Length.mm("10"));
    HoleConditions.Asked wish =
        new HoleConditions.Asked(
            verb,
            known,
            found,
            tool.bit(),
            tool.dia(),
            Length.ZERO,
            deep,
            deep == null ? null : deep.plus(tool.bit().pointLength()),
            tool.pitch(),
            madeOf == null ? ToolMaterial.HSS : madeOf,
            false,
            null,
            speed(),
            perTurn == null ? null : HoleTool.perTurn(perTurn));
    Limits limits = things == null || found == null ? Limits.DEFAULTS : things.limitsOf(found);
    HoleConditions worked = new HoleCalculator(StandardTables.builtIn(), limits).work(wish);
    return new SpeedsReport(
        null, List.of(), List.of(new HoleSpeeds(null, null, List.of(), worked)), 0);
  }

  static Optional<KnownMaterial> material(String name, List<Shop> shops) {
    StandardTables tables = StandardTables.builtIn();
    return shops.stream()
        .filter(shop -> shop.find(Owned.Material.class, name).isPresent())
        .findFirst()
        .or(() -> Optional.of(Shop.EMPTY))
        .flatMap(shop -> KnownMaterial.find(name, shop, tables));
  }

  static UserException unknown(String name) {
    List<String> names =
        StandardTables.builtIn().materials().all().stream().map(Material::name).toList();
    return new UserException(
        "no material '"
            + name
            + "' is known"
            + Nearest.to(name, names)
                .map(near -> "; did you mean '" + near + "'?")
                .orElse("; `handwheel material` lists them, --shop adds the shop's own"));
  }

  private Tool tool(@Nullable String diameter) {
    if (diameter == null) {
      throw new IllegalStateException("the diameter was asked for");
    }
    int count = teeth == null ? 4 : teeth;
    if (count < 1 || count > MOST_TEETH) {
      throw new UserException("--teeth: a cutter has between 1 and " + MOST_TEETH + " teeth");
    }
    return withStickOut(
        new Tool(
            kind == null ? CutterKind.END_MILL : kind,
            length("--dia", diameter, SMALLEST, LARGEST),
            count,
            madeOf == null ? ToolMaterial.HSS : madeOf,
            null));
  }

  private Tool withStickOut(Tool tool) {
    return stickOut == null
        ? tool
        : new Tool(
            tool.kind(),
            tool.dia(),
            tool.teeth(),
            tool.madeOf(),
            length("--stick-out", stickOut, SMALLEST, LARGEST));
  }

  private @Nullable Bite bite(Tool tool) {
    if (depth == null && width == null) {
      return null;
    }
    if (depth == null || width == null) {
      throw new UserException("a cut has both a --depth and a --width");
    }
    Length deep = length("--depth", depth, Length.mm("0.001"), LARGEST);
    Length wide = length("--width", width, Length.mm("0.001"), LARGEST);
    if (wide.isMoreThan(tool.dia())) {
      throw new UserException("--width: a cut is at most as wide as the cutter, " + tool.dia());
    }
    return switch (tool.kind()) {
      case FACE_MILL, FLY_CUTTER, SHELL_MILL -> Bite.ofStrip(deep, wide, tool.dia());
      case END_MILL, SLOT_DRILL, CHAMFER_MILL -> Bite.ofSide(deep, wide, tool.dia());
    };
  }

  private @Nullable Double speed() {
    if (speed != null && !(speed > 0 && speed <= FASTEST)) {
      throw new UserException("--speed: a spindle turns at over 0 and up to 200000 rpm");
    }
    return speed;
  }

  private static Length length(String option, String text, Length least, Length most) {
    Length length = LengthArguments.ofOption(option, text);
    if (length.isLessThan(least) || length.isMoreThan(most)) {
      throw new UserException(option + ": give between " + least + " and " + most);
    }
    return length;
  }
}
