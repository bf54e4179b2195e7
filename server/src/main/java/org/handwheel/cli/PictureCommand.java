package org.handwheel.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import org.handwheel.plan.picture.Picture;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.picture.SetupPicture;
import org.handwheel.plan.picture.SvgPicture;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.work.PlanRun.SetupRun;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code handwheel picture}: a setup drawn as SVG. */
@Command(
    name = "picture",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Draws a setup of a plan as SVG: how the work lies, what holds it, what comes off.",
      "Prints it; without a setup, the first one."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel picture bearing-block.plan four > four.svg",
      "  handwheel picture bearing-block.plan --projection third > one.svg"
    })
final class PictureCommand implements Callable<Integer> {
  private final Surroundings surroundings;
  private final Output output;

  @Mixin private PlanArguments arguments = new PlanArguments();

  @Mixin private ResultFile result = new ResultFile();

  @Option(
      names = "--projection",
      paramLabel = "first|third",
      description = "How the views stand to one another (ISO 5456-2). Default: first.")
  private Projection projection = Projection.FIRST;

  PictureCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    OnePlan read = arguments.read(surroundings);
    SetupRun found = read.setup(arguments.setup() == null ? "1" : arguments.setup());
    SyntaxTree tree = read.checked().tree();
    Optional<Picture> picture = SetupPicture.of(tree, found, projection);
    if (picture.isEmpty()) {
      throw new UserException(
          found.setup().words() + ": it is not known how the work lies or how large it is");
    }
    result.deliver(SvgPicture.of(picture.get(), tree).stripTrailing() + "\n", output, surroundings);
    return Handwheel.EXIT_CLEAN;
  }
}
