package org.handwheel.cli;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.handwheel.plan.picture.Drawing;
import org.handwheel.plan.picture.Drawing.Arrangement;
import org.handwheel.plan.picture.Picture;
import org.handwheel.plan.picture.PictureLayout;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.picture.SetupPicture;
import org.handwheel.plan.picture.SvgPicture;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.work.PlanRun.SetupRun;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code handwheel picture}: a setup drawn as SVG. */
@Command(
    name = "picture",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Draws a setup of a plan as SVG: how the work lies, what holds it, what comes off.",
      "Prints it; without a setup, the first one. Into a folder: all setups, a file each."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel picture bearing-block.plan four > four.svg",
      "  handwheel picture bearing-block.plan --projection third > one.svg",
      "  handwheel picture bearing-block.plan crosshead.plan -o pictures"
    })
final class PictureCommand implements Callable<Integer> {
  private final Surroundings surroundings;
  private final Output output;

  @Mixin private ManyPlans plans = new ManyPlans();

  @Mixin private Drawn drawn = new Drawn();

  PictureCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    return plans.run(this::make, output, surroundings);
  }

  private Map<String, byte[]> make(OnePlan plan, @Nullable String asked) {
    List<SetupRun> setups =
        asked != null
            ? List.of(plan.setup(asked))
            : plans.isInto(surroundings)
                ? plan.run().knownSetups().toList()
                : List.of(plan.setup("1"));
    Map<String, byte[]> made = new LinkedHashMap<>();
    for (SetupRun setup : setups) {
      made.put(ending(plan, setup), picture(plan, setup));
    }
    return made;
  }

  /** By the setup's name, or its number where it has none. */
  private static String ending(OnePlan plan, SetupRun setup) {
    var name = setup.setup().name();
    int number = plan.run().knownSetups().toList().indexOf(setup) + 1;
    return "-" + (name == null ? Integer.toString(number) : name.value()) + ".svg";
  }

  private byte[] picture(OnePlan plan, SetupRun setup) {
    SyntaxTree tree = plan.checked().tree();
    Projection projection = drawn.projection(plan, surroundings);
    Picture picture =
        SetupPicture.of(tree, plan.run().plan().part(), setup, projection)
            .orElseThrow(
                () ->
                    new UserException(
                        setup.setup().words()
                            + ": it is not known how the work lies or how large it is"));
    Drawing drawing = PictureLayout.of(picture, tree, Arrangement.ALONE).in(drawn.units());
    String svg = SvgPicture.of(drawing).stripTrailing() + "\n";
    return svg.getBytes(StandardCharsets.UTF_8);
  }
}
