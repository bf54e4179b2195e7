package org.handwheel.cli;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import org.handwheel.files.TextFile;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.UnitsLineContext;
import org.handwheel.ide.View;
import org.handwheel.ide.actions.Action;
import org.handwheel.ide.actions.Rewritings;
import org.handwheel.model.Workspace;
import org.handwheel.model.build.FileUnits;
import org.handwheel.plan.format.Formatter;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.syntax.TextEdit;
import org.handwheel.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/**
 * {@code handwheel git-textconv}: a file in the form that git compares. Its usual form, and a plan
 * in inches in millimetres, which every decimal inch has exactly.
 */
@Command(
    name = "git-textconv",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    description = {
      "Prints a plan or shop file in the form that `git diff` compares: formatted, and a plan in"
          + " inches in millimetres. For git; `handwheel git-setup` tells it."
    })
final class GitTextconvCommand implements Callable<Integer> {
  private final Surroundings surroundings;
  private final Output output;

  @Parameters(paramLabel = "FILE", description = "The file git hands over.")
  private String file = "";

  GitTextconvCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    Path path = surroundings.workingDirectory().toAbsolutePath().resolve(file);
    TextFile.Result result = TextFile.read(path);
    if (result instanceof TextFile.Refused refused) {
      throw new UserException(file + ": " + refused.reason());
    }
    Path name = path.getFileName();
    SyntaxTree tree =
        SyntaxTree.parse(
            name == null ? "file.plan" : name.toString(), ((TextFile.Text) result).text());
    output.text(Formatter.format(inMillimetres(tree)));
    return Handwheel.EXIT_CLEAN;
  }

  private static SyntaxTree inMillimetres(SyntaxTree tree) {
    if (FileUnits.of(tree) == LengthUnit.MM || Checker.isShop(tree)) {
      return tree;
    }
    Workspace workspace = Workspace.of(tree);
    StandardTables tables = StandardTables.builtIn();
    View view = new View(workspace, new Checker(tables).check(workspace, tree.path()), tables);
    for (Section section : tree.sections()) {
      for (ContentContext line : section.lines()) {
        if (line.statement() instanceof UnitsLineContext units) {
          int at = tree.start(section.origin(units.lengthUnit()));
          for (Action action : Rewritings.at(view, at, at)) {
            if (action.title().startsWith("Write the whole plan in") && !action.edits().isEmpty()) {
              return tree.update(edited(tree.source().text(), action.edits()));
            }
          }
        }
      }
    }
    return tree;
  }

  private static String edited(String text, List<TextEdit> edits) {
    StringBuilder changed = new StringBuilder(text);
    edits.stream()
        .sorted(Comparator.comparingInt(TextEdit::start).reversed())
        .forEach(edit -> changed.replace(edit.start(), edit.end(), edit.text()));
    return changed.toString();
  }
}
