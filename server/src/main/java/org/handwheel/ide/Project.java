package org.handwheel.ide;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.handwheel.model.Names;
import org.handwheel.model.Names.Declaration;
import org.handwheel.model.Workspace;
import org.handwheel.model.build.PlanFiles;
import org.handwheel.model.build.ShopFiles;
import org.handwheel.rules.Checker;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.SyntaxTree;

/**
 * All plan and shop files of a workspace with their names: what a question about the whole
 * workspace looks at.
 */
public final class Project {
  private final List<NamedFile> files;

  private Project(List<NamedFile> files) {
    this.files = List.copyOf(files);
  }

  /** A file and the names in it. */
  public record NamedFile(SyntaxTree tree, Names names) {}

  /**
   * Reads the names of all files.
   *
   * @param cancelled asked before each file; it throws to give up
   */
  public static Project of(Workspace workspace, Runnable cancelled) {
    List<NamedFile> files = new ArrayList<>();
    for (SyntaxTree tree : new TreeMap<>(workspace.files()).values()) {
      cancelled.run();
      Names names =
          Checker.isShop(tree)
              ? ShopFiles.build(tree).names()
              : PlanFiles.build(workspace, tree.path()).names();
      files.add(new NamedFile(tree, names));
    }
    return new Project(files);
  }

  /** In the order of their paths. */
  public Collection<NamedFile> files() {
    return files;
  }

  /** The file in which a place is, if it is of this project. */
  public Optional<SyntaxTree> treeOf(Origin origin) {
    return files.stream().map(NamedFile::tree).filter(tree -> tree.contains(origin)).findFirst();
  }

  /** The file at a workspace path. */
  public Optional<SyntaxTree> tree(String path) {
    return files.stream().map(NamedFile::tree).filter(tree -> tree.path().equals(path)).findFirst();
  }

  /** Every place that uses a declaration, file by file, each once. */
  List<Origin> uses(Declaration declaration) {
    List<Origin> uses = new ArrayList<>();
    for (NamedFile file : files) {
      uses.addAll(new NameIndex(file.names()).uses(declaration));
    }
    return uses;
  }

  /** The files whose names include a declaration, their own or by use. */
  List<NamedFile> knowing(Declaration declaration) {
    return files.stream()
        .filter(
            file ->
                file.names().declarations().contains(declaration)
                    || file.names().uses().stream()
                        .anyMatch(use -> use.declaration().equals(declaration)))
        .toList();
  }
}
