package org.handwheel.lsp;

import org.handwheel.files.WorkspaceRoot;
import org.handwheel.syntax.SyntaxTree;

/**
 * A file open in the editor.
 *
 * @param uri as the editor names it
 * @param root the workspace folder it belongs to
 * @param version the editor's count of its changes
 */
record OpenFile(String uri, WorkspaceRoot root, int version, SyntaxTree tree) {
  String path() {
    return tree.path();
  }

  OpenFile changed(int newVersion, SyntaxTree changed) {
    return new OpenFile(uri, root, newVersion, changed);
  }
}
