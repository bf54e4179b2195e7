package org.handwheel.ide.complete;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.ide.View;
import org.handwheel.ide.complete.Completion.Proposals;
import org.handwheel.rules.Checker;
import org.handwheel.syntax.SourceText;

/** Shop files of the workspace in a {@code use} line, as paths from the file that uses them. */
final class FileProposals {
  private FileProposals() {}

  static Proposals at(View view, int offset) {
    SourceText source = view.tree().source();
    String text = source.text();
    int line = source.lineAt(offset);
    int start = text.lastIndexOf('"', offset - 1) + 1;
    int end = offset;
    while (end < source.lineEnd(line) && text.charAt(end) != '"') {
      end++;
    }
    List<Proposal> proposals = new ArrayList<>();
    view.workspace().files().values().stream()
        .filter(tree -> Checker.isShop(tree) && !tree.path().equals(view.tree().path()))
        .map(tree -> relative(view.tree().path(), tree.path()))
        .sorted()
        .forEach(
            path -> proposals.add(Proposal.plain(path, Proposal.Kind.FILE, "", proposals.size())));
    return new Proposals(start, end, proposals);
  }

  /** The path from one workspace file to another, with forward slashes. */
  static String relative(String from, String to) {
    String[] source = from.split("/", -1);
    String[] target = to.split("/", -1);
    int same = 0;
    while (same < source.length - 1
        && same < target.length - 1
        && source[same].equals(target[same])) {
      same++;
    }
    StringBuilder out = new StringBuilder();
    for (int i = same; i < source.length - 1; i++) {
      out.append("../");
    }
    for (int i = same; i < target.length; i++) {
      out.append(target[i]).append(i + 1 < target.length ? "/" : "");
    }
    return out.toString();
  }
}
