package org.handwheel.cli;

import java.util.Optional;
import org.handwheel.ide.ProjectSettings;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.sheet.Paper;
import org.handwheel.units.UnitChoice;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How pictures are drawn: by the options, else by the project's settings. */
final class Drawn {
  @Option(
      names = "--projection",
      paramLabel = "first|third",
      description =
          "How the views stand to one another (ISO 5456-2)."
              + " Default: the project's setting, or first.")
  private @Nullable Projection projection;

  @Option(
      names = "--units",
      paramLabel = "both|mm|inch",
      description = "The units of sizes. Default: both.")
  private UnitChoice units = UnitChoice.BOTH;

  UnitChoice units() {
    return units;
  }

  private ProjectSettings settings(OnePlan plan, Surroundings surroundings) {
    return ProjectFile.of(plan.target().root(), surroundings).settings();
  }

  Projection projection(OnePlan plan, Surroundings surroundings) {
    return projection != null
        ? projection
        : settings(plan, surroundings).projection().orElse(Projection.FIRST);
  }

  /** What the project prints on, if it says so. */
  Optional<Paper> paper(OnePlan plan, Surroundings surroundings) {
    return settings(plan, surroundings).paper();
  }
}
