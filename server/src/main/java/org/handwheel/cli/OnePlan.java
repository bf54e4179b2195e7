package org.handwheel.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.handwheel.files.WorkspaceLoader;
import org.handwheel.model.LogSection;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.jspecify.annotations.Nullable;

/**
 * The one plan a command is about, checked and worked through.
 *
 * @param plan as the command line names it
 * @param target the file
 * @param checked what a check says of it
 * @param run the plan worked through
 */
record OnePlan(String plan, Targets.Target target, Checked checked, PlanRun run) {

  /**
   * Reads it.
   *
   * @throws UserException if it cannot be read, is no plan, or is written in a newer level
   */
  static OnePlan read(String plan, Surroundings surroundings) {
    Targets.Target target = target(plan, surroundings);
    return of(plan, target, workspace(plan, target, target.text(), surroundings));
  }

  /**
   * The same file as if it said another text.
   *
   * @throws UserException as {@link #read}
   */
  OnePlan saying(String text, Surroundings surroundings) {
    return of(plan, target, workspace(plan, target, text, surroundings));
  }

  private static OnePlan of(String plan, Targets.Target target, Workspace workspace) {
    Checked checked = new Checker(StandardTables.builtIn()).check(workspace, target.path());
    PlanRun run = checked.run();
    if (run == null) {
      throw new UserException(plan + ": it is no plan that can be worked through");
    }
    if (checked.findings().stream().anyMatch(found -> found.rule().equals("language-level"))) {
      throw new UserException(plan + ": it is written in a newer level of the language");
    }
    return new OnePlan(plan, target, checked, run);
  }

  /**
   * The one file that an argument names.
   *
   * @throws UserException if it names none, or several
   */
  static Targets.Target target(String plan, Surroundings surroundings) {
    Targets targets = Targets.find(List.of(plan), null, "stdin.plan", surroundings);
    if (targets.targets().size() != 1) {
      throw new UserException(
          targets.unreadable().values().stream()
              .findFirst()
              .map(reason -> plan + ": " + reason)
              .orElse(plan + ": name one plan"));
    }
    return targets.targets().get(0);
  }

  /**
   * A file and what it uses.
   *
   * @param text what counts as its text; nothing for what is on disk
   * @throws UserException if it cannot be read
   */
  static Workspace workspace(
      String plan, Targets.Target target, @Nullable String text, Surroundings surroundings) {
    Map<String, SyntaxTree> known =
        text == null ? Map.of() : Map.of(target.path(), SyntaxTree.parse(target.path(), text));
    Workspace workspace =
        new WorkspaceLoader(target.root(), surroundings.nanoClock())
            .load(List.of(target.path()), known)
            .workspace();
    String reason = workspace.unreadable().get(target.path());
    if (reason != null) {
      throw new UserException(plan + ": " + reason);
    }
    return workspace;
  }

  /** The path of a file the command line names. */
  static Path path(String name, Surroundings surroundings) {
    try {
      return surroundings.workingDirectory().toAbsolutePath().resolve(name).normalize();
    } catch (InvalidPathException e) {
      throw new UserException(name + ": no file can have this name here");
    }
  }

  /** The place, from 1, of a setup by its name or by its number counted from 1. */
  int number(String asked) {
    List<SetupRun> setups = run.knownSetups().toList();
    for (int i = 0; i < setups.size(); i++) {
      var name = setups.get(i).setup().name();
      if (name != null && name.value().equalsIgnoreCase(asked)) {
        return i + 1;
      }
    }
    for (int i = 0; i < setups.size(); i++) {
      if (asked.equals(Integer.toString(i + 1))) {
        return i + 1;
      }
    }
    throw new UserException(
        plan + ": it has no setup '" + asked + "' that can be read, with all before it");
  }

  /** The setup that {@link #number} finds. */
  SetupRun setup(String asked) {
    return run.knownSetups().toList().get(number(asked) - 1);
  }

  /** The log with a title. */
  LogSection log(String title) {
    return run.plan().logs().stream()
        .filter(log -> log.title().equals(title))
        .findFirst()
        .orElseThrow(() -> new UserException(plan + ": it has no log \"" + title + "\""));
  }
}
