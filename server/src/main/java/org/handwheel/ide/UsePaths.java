package org.handwheel.ide;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.PathContext;
import org.handwheel.grammar.HandwheelParser.UseLineContext;
import org.handwheel.model.build.WorkspacePath;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;

/** The paths of {@code use} lines. */
public final class UsePaths {
  private UsePaths() {}

  /**
   * A path in a file.
   *
   * @param origin the path without its quotes
   * @param written the path as it stands there
   * @param path the workspace path it means, or nothing if it is not allowed
   */
  public record Used(Origin origin, String written, @Nullable String path) {}

  /** All of a file, in order. */
  public static List<Used> of(SyntaxTree tree) {
    List<Used> used = new ArrayList<>();
    for (Section section : tree.sections()) {
      for (ContentContext line : section.lines()) {
        if (line.statement() instanceof UseLineContext use && !section.isBroken(line)) {
          used.add(used(tree, section, use.path()));
        }
      }
    }
    return used;
  }

  private static Used used(SyntaxTree tree, Section section, PathContext path) {
    Origin quoted = section.origin(path);
    Origin inner = new Origin(section, quoted.start() + 1, quoted.end() - 1);
    return new Used(inner, inner.text(), WorkspacePath.resolve(tree.path(), inner.text()).path());
  }

  /**
   * What to write so that every path still means the same file after files have moved.
   *
   * @param moves old and new workspace paths, of files or of folders with all that is in them
   */
  public static Map<Origin, String> afterMove(Project project, Map<String, String> moves) {
    Map<Origin, String> changes = new LinkedHashMap<>();
    for (Project.NamedFile file : project.files()) {
      String from = moved(moves, file.tree().path());
      for (Used used : of(file.tree())) {
        if (used.path() == null) {
          continue;
        }
        String target = moved(moves, used.path());
        boolean moved = !target.equals(used.path()) || !from.equals(file.tree().path());
        String path = relative(from, target);
        if (moved && !path.equals(used.written())) {
          changes.put(used.origin(), path);
        }
      }
    }
    return changes;
  }

  /** Where a file is afterwards: by its own move, or by that of the nearest folder around it. */
  private static String moved(Map<String, String> moves, String path) {
    for (int end = path.length(); end > 0; end = path.lastIndexOf('/', end - 1)) {
      String to = moves.get(path.substring(0, end));
      if (to != null) {
        return to + path.substring(end);
      }
    }
    return path;
  }

  /** The path from one file to another, both workspace paths. */
  public static String relative(String from, String to) {
    List<String> start = List.of(from.split("/", -1));
    List<String> end = List.of(to.split("/", -1));
    int same = 0;
    while (same < start.size() - 1
        && same < end.size() - 1
        && start.get(same).equals(end.get(same))) {
      same++;
    }
    List<String> parts = new ArrayList<>();
    for (int i = same; i < start.size() - 1; i++) {
      parts.add("..");
    }
    parts.addAll(end.subList(same, end.size()));
    return String.join("/", parts);
  }
}
