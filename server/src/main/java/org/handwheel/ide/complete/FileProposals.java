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
    String here = view.tree().path();
    shops.stream()
        .filter(path -> !path.equals(here))
        .map(path -> UsePaths.relative(here, path))
        .sorted()
        .forEach(
            path -> proposals.add(Proposal.plain(path, Proposal.Kind.FILE, "", proposals.size())));
    return new Proposals(start, end, proposals);
  }
}
