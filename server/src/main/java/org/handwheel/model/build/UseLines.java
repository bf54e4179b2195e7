package org.handwheel.model.build;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.UseLineContext;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;

/** The {@code use} lines of a file, for whoever has to fetch the files before anything is built. */
public final class UseLines {
  private UseLines() {}

  /** The workspace paths a file uses, in order; those that are not allowed are left out. */
  public static List<String> paths(SyntaxTree tree) {
    List<String> paths = new ArrayList<>();
    for (Section section : tree.sections()) {
      if (!section.has(UseLineContext.class)) {
        continue;
      }
      for (ContentContext line : section.lines()) {
        if (line.statement() instanceof UseLineContext use && !section.isBroken(line)) {
          String written = FileBuilder.unquote(use.path());
          String path = WorkspacePath.resolve(tree.path(), written).path();
          if (path != null) {
            paths.add(path);
          }
        }
      }
    }
    return paths;
  }
}
