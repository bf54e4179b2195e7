package org.handwheel.cli;

import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.handwheel.cli.CheckCommand.Format;
import org.handwheel.files.WorkspaceLoader;
import org.handwheel.model.Located;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.work.outline.OutlineCut;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The steps round the outlines of a plan. */
@Command(
    name = "steps",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Gives the stations of the cutter round every outline of a plan: ellipse, obround or"
          + " circle, with both dials set from zero at the outline's middle.",
      "Each setting is rounded to the side that leaves metal on; the table says what stands"
          + " out between the steps, for the file."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel steps hand-hole-door.plan",
      "  handwheel steps hand-hole-door.plan rim-cut --format json"
    })
final class StepsCommand implements Callable<Integer> {
  private final Surroundings surroundings;
  private final Output output;

  @Parameters(index = "0", paramLabel = "PLAN", description = "The plan.")
  private String plan = "";

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "SETUP",
      description = "Only this setup, by its name.")
  private @Nullable String setup;

  @Option(
      names = "--format",
      paramLabel = "text|json",
      description = "How to print. Default: text.")
  private Format format = Format.TEXT;

  StepsCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    Checked checked = checked();
    if (checked.run() == null) {
      throw new UserException(plan + ": it is no plan that can be worked through");
    }
    if (checked.findings().stream().anyMatch(found -> found.rule().equals("language-level"))) {
      throw new UserException(plan + ": it is written in a newer level of the language");
    }
    if (setup != null
        && checked.run().setups().stream().noneMatch(run -> isAsked(run.setup().name()))) {
      throw new UserException(plan + ": it has no setup '" + setup + "'");
    }
    List<OutlineCut> cuts =
        OutlineCut.all(checked.run()).stream()
            .filter(cut -> setup == null || isAsked(cut.setup().setup().name()))
            .toList();
    StepsReport report = new StepsReport(plan, cuts);
    if (format == Format.JSON) {
      output.line(report.json());
    } else {
      report.lines(output.width()).forEach(line -> output.line(output.glyphs().show(line)));
    }
    return Handwheel.EXIT_CLEAN;
  }

  private boolean isAsked(@Nullable Located<String> name) {
    return name != null && name.value().equalsIgnoreCase(setup);
  }

  private Checked checked() {
    Targets targets = Targets.find(List.of(plan), null, "stdin.plan", surroundings);
    if (targets.targets().size() != 1) {
      throw new UserException(
          targets.unreadable().values().stream()
              .findFirst()
              .map(reason -> plan + ": " + reason)
              .orElse(plan + ": name one plan"));
    }
    Targets.Target target = targets.targets().get(0);
    Workspace workspace =
        new WorkspaceLoader(target.root(), surroundings.nanoClock())
            .load(List.of(target.path()), Map.of())
            .workspace();
    String reason = workspace.unreadable().get(target.path());
    if (reason != null) {
      throw new UserException(plan + ": " + reason);
    }
    return new Checker(StandardTables.builtIn()).check(workspace, target.path());
  }
}
