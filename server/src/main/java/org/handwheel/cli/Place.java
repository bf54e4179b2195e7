package org.handwheel.cli;

import org.handwheel.model.Workspace;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.SourceText;
import org.handwheel.syntax.SyntaxTree;

/**
 * A place in a file, found once for every form of output.
 *
 * @param path the file's workspace path
 * @param source the file's text
 * @param start the first UTF-16 unit of the place in the file, from 0
 * @param end one past its last
 */
record Place(String path, SourceText source, int start, int end) {
  static Place of(Workspace workspace, Origin origin) {
    SyntaxTree tree =
        workspace
            .file(origin.section().path())
            .filter(candidate -> candidate.contains(origin))
            .orElseThrow(
                () -> new IllegalStateException("a place in no file: " + origin.section().path()));
    return new Place(tree.path(), tree.source(), tree.start(origin), tree.end(origin));
  }

  /** The line it starts on, from 1. */
  int line() {
    return source.lineAt(start) + 1;
  }

  /** The column it starts at, from 1, counted in UTF-16 units. */
  int column() {
    return source.columnAt(start) + 1;
  }

  int endLine() {
    return source.lineAt(end) + 1;
  }

  int endColumn() {
    return source.columnAt(end) + 1;
  }
}
