package org.handwheel.ide.complete;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.handwheel.ide.UsePaths;
import org.handwheel.ide.View;
import org.handwheel.ide.complete.Completion.Proposals;
import org.handwheel.syntax.SourceText;

/** Shop files of the workspace in a {@code use} line, as paths from the file that uses them. */
final class FileProposals {
  private FileProposals() {}

  /**
   * The proposals in the string at an offset.
   *
   * @param shops the workspace paths of the shop files there are
   */
  static Proposals at(View view, int offset, Collection<String> shops) {
    SourceText source = view.tree().source();
    String text = source.text();
    int line = source.lineAt(offset);
    int start = text.lastIndexOf('"', offset - 1) + 1;
    int end = offset;
    while (end < source.lineEnd(line) && text.charAt(end) != '"') {
      end++;
    }
    List<Proposal> proposals = new ArrayList<>();
    for (String path : paths(view, shops)) {
      proposals.add(Proposal.plain(path, Proposal.Kind.FILE, "", proposals.size()));
    }
    return new Proposals(start, end, proposals);
  }

  /** The same where the quotes are still to be written. */
  static List<Proposal> quoted(View view, Collection<String> shops) {
    List<Proposal> proposals = new ArrayList<>();
    for (String path : paths(view, shops)) {
      String text = '"' + path + '"';
      proposals.add(
          new Proposal(
              path, Proposal.Kind.FILE, text, Snippets.escape(text), "", "", proposals.size()));
    }
    return proposals;
  }

  private static List<String> paths(View view, Collection<String> shops) {
    String here = view.tree().path();
    return shops.stream()
        .filter(path -> !path.equals(here))
        .map(path -> UsePaths.relative(here, path))
        .sorted()
        .toList();
  }
}
