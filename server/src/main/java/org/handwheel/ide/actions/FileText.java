package org.handwheel.ide.actions;

import java.util.List;
import java.util.Optional;
import org.handwheel.ide.View;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.SourceText;
import org.handwheel.syntax.TextEdit;

/** Edits of a view's file by its lines and clauses. */
final class FileText {
  private final View view;
  private final SourceText source;
  private final String lineEnd;

  FileText(View view) {
    this.view = view;
    this.source = view.tree().source();
    this.lineEnd = source.text().contains("\r\n") ? "\r\n" : "\n";
  }

  /** A new line before the one a place starts on. */
  TextEdit lineBefore(Origin origin, String statement) {
    int start = source.lineStart(view.tree().line(origin));
    return new TextEdit(start, start, indent(origin.section()) + statement + lineEnd);
  }

  /** A new line behind the one a place ends on. */
  TextEdit lineAfter(Origin origin, String statement) {
    int end = source.lineEnd(source.lineAt(view.tree().end(origin)));
    return new TextEdit(end, end, lineEnd + indent(origin.section()) + statement);
  }

  private static String indent(Section section) {
    return section.kind() == SectionKind.PREAMBLE ? "" : "  ";
  }

  TextEdit replace(Origin origin, String text) {
    return new TextEdit(view.tree().start(origin), view.tree().end(origin), text);
  }

  /** More words at a place's end. */
  TextEdit append(Origin origin, String text) {
    int end = view.tree().end(origin);
    return new TextEdit(end, end, text);
  }

  /** Takes away the lines a place is on. */
  TextEdit removeLines(Origin origin) {
    int first = source.lineAt(view.tree().start(origin));
    int last = source.lineAt(view.tree().end(origin));
    int end = last + 1 < source.lineCount() ? source.lineStart(last + 1) : source.length();
    return new TextEdit(source.lineStart(first), end, "");
  }

  /** Takes away a clause with the comma before it. */
  TextEdit removeClause(Origin origin) {
    int start = view.tree().start(origin);
    while (start > 0 && (source.text().charAt(start - 1) == ' ')) {
      start--;
    }
    if (start > 0 && source.text().charAt(start - 1) == ',') {
      start--;
    }
    return new TextEdit(start, view.tree().end(origin), "");
  }

  /** A fix's edits, if they are all of this file. */
  Optional<List<TextEdit>> of(Fix fix) {
    if (!fix.edits().stream().allMatch(edit -> view.tree().contains(edit.origin()))) {
      return Optional.empty();
    }
    return Optional.of(
        fix.edits().stream()
            .map(edit -> replace(edit.origin(), edit.text().replace("\n", lineEnd)))
            .toList());
  }

  SourceText source() {
    return source;
  }

  String lineEnd() {
    return lineEnd;
  }
}
