package org.handwheel.lsp;

import java.util.List;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextEdit;
import org.handwheel.plan.format.Formatter;
import org.handwheel.syntax.SourceText;
import org.handwheel.syntax.SyntaxTree;

/** Formatting in the words of the protocol: many small edits, so that cursors and marks stay. */
final class FormatAnswers {
  private final Positions positions;
  private final SyntaxTree tree;

  FormatAnswers(Positions positions, SyntaxTree tree) {
    this.positions = positions;
    this.tree = tree;
  }

  List<TextEdit> whole() {
    return edits(Formatter.edits(tree));
  }

  List<TextEdit> range(Range range) {
    SourceText source = tree.source();
    return edits(
        Formatter.edits(
            tree,
            positions.offset(source, range.getStart()),
            positions.offset(source, range.getEnd())));
  }

  /** Several ranges at once; where they share a line it is changed once. */
  List<TextEdit> ranges(List<Range> ranges) {
    return ranges.stream().flatMap(range -> range(range).stream()).distinct().toList();
  }

  List<TextEdit> onNewLine(Position position) {
    return edits(Formatter.editsOnNewLine(tree, positions.offset(tree.source(), position)));
  }

  private List<TextEdit> edits(List<org.handwheel.syntax.TextEdit> edits) {
    return edits.stream().map(this::edit).toList();
  }

  private TextEdit edit(org.handwheel.syntax.TextEdit edit) {
    Range range = new Range(position(edit.start()), position(edit.end()));
    return new TextEdit(range, edit.text());
  }

  /** An offset between the two halves of a line end is taken as the next line's start. */
  private Position position(int offset) {
    SourceText source = tree.source();
    int line = source.lineAt(offset);
    boolean insideEnd = offset > source.lineEnd(line);
    return insideEnd ? new Position(line + 1, 0) : positions.position(source, offset);
  }
}
