package org.handwheel.cli;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.handwheel.model.Workspace;
import org.handwheel.plan.draft.Drafted;
import org.handwheel.plan.draft.Drafted.Draft;
import org.handwheel.plan.draft.Drafter;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code handwheel draft}: a whole plan from part, stock and shop. */
@Command(
    name = "draft",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Works out a plan from its part, its stock and the shop: which face first, how each is"
          + " held and cut, what is measured, the holes and slots, the inspection.",
      "The plan it prints passes `handwheel check`. Where it finds none it says what is"
          + " missing."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel draft block.plan",
      "  handwheel draft block.plan -o block-drafted.plan",
      "  handwheel draft block.plan --alternatives 3",
      "  handwheel draft block.plan --alternatives 3 --take 2 -o second.plan",
      "",
      "A draft is a proposal: read it before you cut. The machine maker's manual and the",
      "rules of your shop come first.",
      "",
      "Exit codes: 0 a plan was drafted; 1 something is missing for one; 2 wrong usage,",
      "or a file that cannot be read or written."
    })
final class DraftCommand implements Callable<Integer> {
  private static final int MOST_ALTERNATIVES = 20;

  private final Surroundings surroundings;
  private final Output output;

  @Parameters(
      index = "0",
      paramLabel = "PLAN",
      description = "A plan that has a part and a stock, or - for standard input.")
  private String plan = "";

  @Mixin private ResultFile result = new ResultFile();

  @Option(
      names = "--anew",
      description = "Leave out the setups, logs and inspection that the plan has already.")
  private boolean anew;

  @Option(
      names = "--alternatives",
      paramLabel = "N",
      description = "List up to N different ways to go about it, the cheapest first.")
  private @Nullable Integer alternatives;

  @Option(
      names = "--take",
      paramLabel = "K",
      description = "With --alternatives: draft the plan of way K.")
  private @Nullable Integer take;

  DraftCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    int most = count();
    Targets.Target target = OnePlan.target(plan, surroundings);
    Drafted drafted;
    try (Progress progress = Progress.on(output, surroundings)) {
      drafted =
          new Drafter(StandardTables.builtIn())
              .draft(
                  workspace(target),
                  target.path(),
                  most,
                  tried -> progress.say("tried " + tried + " ways to hold and cut it"));
    }
    if (drafted instanceof Drafted.Missing missing) {
      output.trouble("handwheel: " + plan + ": no plan can be drafted; what is missing:");
      missing.missing().forEach(sentence -> output.trouble("  - " + sentence));
      return Handwheel.EXIT_FINDINGS;
    }
    List<Draft> drafts = ((Drafted.Plans) drafted).drafts();
    if (alternatives != null && take == null) {
      list(drafts);
      return Handwheel.EXIT_CLEAN;
    }
    int index = take == null ? 0 : take - 1;
    if (index >= drafts.size()) {
      throw new UserException("there are only " + drafts.size() + " ways for " + plan);
    }
    deliver(drafts.get(index));
    return Handwheel.EXIT_CLEAN;
  }

  private int count() {
    if (alternatives != null && (alternatives < 1 || alternatives > MOST_ALTERNATIVES)) {
      throw new UserException("--alternatives takes a number from 1 to " + MOST_ALTERNATIVES);
    }
    if (take != null && (alternatives == null || take < 1 || take > alternatives)) {
      throw new UserException("--take takes a number from 1 to that of --alternatives");
    }
    return alternatives == null ? 1 : alternatives;
  }

  private void list(List<Draft> drafts) {
    for (int i = 0; i < drafts.size(); i++) {
      Draft draft = drafts.get(i);
      output.line((i == 0 ? "" : "\n") + (i + 1) + "  cost " + draft.cost());
      draft
          .setups()
          .forEach(setup -> output.lines(Wrapping.wrap("   - ", "     ", setup, output.width())));
    }
    output.line("");
    output.line("The cost counts 100 for a setup, and more for bars, changes of cutter, passes");
    output.line("and shallow grips; it only compares ways to make the same part.");
  }

  private void deliver(Draft draft) {
    result.deliver(draft.text(), output, surroundings);
    draft.leftOut().forEach(sentence -> output.trouble("handwheel: " + sentence));
  }

  private Workspace workspace(Targets.Target target) {
    Workspace read = OnePlan.workspace(plan, target, target.text(), surroundings);
    SyntaxTree tree =
        read.file(target.path()).orElseThrow(() -> new UserException(plan + ": it cannot be read"));
    if (!anew) {
      return read;
    }
    Map<String, SyntaxTree> files = new HashMap<>(read.files());
    files.put(target.path(), SyntaxTree.parse(target.path(), Drafter.bareText(tree)));
    return new Workspace(files, read.unreadable());
  }
}
