package org.handwheel.model.build;

import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.tree.ParseTree;
import org.handwheel.model.Workspace;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.units.Quantity;

/**
 * What nodes of a file's tree are worth, with the names and the units of that file: for an editor
 * that shows the value under the cursor. Nothing is reported.
 */
public final class ValueReader {
  private final FileBuilder file;

  private ValueReader(FileBuilder file) {
    this.file = file;
  }

  /** For a plan file of the workspace. */
  public static ValueReader ofPlan(Workspace workspace, SyntaxTree tree) {
    return new ValueReader(PlanFiles.built(workspace, tree));
  }

  /** For a shop file. */
  public static ValueReader ofShop(SyntaxTree tree) {
    return new ValueReader(ShopFiles.built(tree));
  }

  /** The value as it is written, of whatever dimension; a bare number is a plain number. */
  public Optional<Quantity> quantity(Section section, ParseTree node) {
    return Optional.ofNullable(file.values().expression(section, node));
  }

  /** The value as a length, a bare number in the file's units. */
  public Optional<Length> length(Section section, ParseTree node) {
    return Optional.ofNullable(file.values().length(section, node));
  }

  /** The values of a list as lengths: a sole unit on the last holds for all. */
  public Optional<List<Length>> lengths(Section section, List<? extends ParseTree> nodes) {
    return Optional.ofNullable(file.values().lengths(section, nodes));
  }
}
