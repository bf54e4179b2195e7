package org.handwheel.plan.format;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.syntax.LanguageLevel;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.SourceText;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.syntax.TextEdit;
import org.jspecify.annotations.Nullable;

/**
 * Puts a file's text into its usual form, by the smallest edits.
 *
 * <p>Headers stand at the margin and statements two blanks in, tokens have one blank between them,
 * sections one empty line; nothing is aligned in columns, so that a change touches one line only. A
 * line whose grammar is broken is left as it is, and so is a whole file of a newer language level.
 */
public final class Formatter {
  private static final Pattern OPEN_JOIN = Pattern.compile("\\\\[ \\t]*(#.*)?$");

  private final SyntaxTree tree;
  private final SourceText source;
  private final String lineEnd;
  private final FileLine[] lines;

  private Formatter(SyntaxTree tree) {
    this.tree = tree;
    this.source = tree.source();
    this.lineEnd = usualLineEnd(source);
    this.lines = new FileLine[source.lineCount()];
    for (int i = 0; i < lines.length; i++) {
      lines[i] = FileLine.blank(i);
    }
    for (Section section : tree.sections()) {
      readLines(section);
    }
    new CommentBlocks(source, lines).place();
  }

  /** The edits that put the whole file into its usual form, in the order of the text. */
  public static List<TextEdit> edits(SyntaxTree tree) {
    return LanguageLevel.isTooNew(tree) ? List.of() : new Formatter(tree).allEdits();
  }

  /** The file's text in its usual form. */
  public static String format(SyntaxTree tree) {
    return TextEdit.apply(tree.source().text(), edits(tree));
  }

  /**
   * Those of the file's edits that touch the lines of a range.
   *
   * @param start an offset in the first line
   * @param end an offset in the last line
   */
  public static List<TextEdit> edits(SyntaxTree tree, int start, int end) {
    SourceText source = tree.source();
    int first = source.lineAt(start);
    int last = source.lineAt(Math.max(start, end));
    // A range that ends at the very start of a line does not mean that line.
    int to = last > first && end == source.lineStart(last) ? last - 1 : last;
    return edits(tree).stream()
        .filter(edit -> source.lineAt(edit.start()) >= first && source.lineAt(edit.start()) <= to)
        .toList();
  }

  /**
   * The edits after a line was ended: the line's own, and how far the new line stands in. Empty
   * lines are left for the writer to fill.
   *
   * @param offset where the cursor is, on the new line
   */
  public static List<TextEdit> editsOnNewLine(SyntaxTree tree, int offset) {
    SourceText source = tree.source();
    int line = source.lineAt(offset);
    if (line == 0 || LanguageLevel.isTooNew(tree)) {
      return List.of();
    }
    Formatter formatter = new Formatter(tree);
    List<TextEdit> edits = new ArrayList<>();
    formatter.addContentEdits(formatter.lines[line - 1], edits);
    if (source.line(line).isBlank()) {
      formatter.addEdit(
          source.lineStart(line), source.lineEnd(line), formatter.newLineIndent(line), edits);
    }
    return edits;
  }

  private String newLineIndent(int line) {
    FileLine before = lines[line - 1];
    if (before.kind() == FileLine.Kind.BLANK) {
      return "";
    }
    if (source.line(line - 1).stripTrailing().endsWith("\\")) {
      return "    ";
    }
    Section section = sectionAt(source.lineStart(line - 1));
    return LineLayout.indent(section);
  }

  private Section sectionAt(int offset) {
    Section found = tree.sections().get(0);
    for (Section section : tree.sections()) {
      if (tree.base(section) <= offset && !section.text().isEmpty()) {
        found = section;
      }
    }
    return found;
  }

  private static String usualLineEnd(SourceText source) {
    int carriage = 0;
    int plain = 0;
    for (int i = 0; i + 1 < source.lineCount(); i++) {
      if (source.lineStart(i + 1) - source.lineEnd(i) == 2) {
        carriage++;
      } else {
        plain++;
      }
    }
    return carriage > plain ? "\r\n" : "\n";
  }

  // ---- Reading the lines
  // ------------------------------------------------------------------------

  private void readLines(Section section) {
    List<Token> line = new ArrayList<>();
    for (Token token : section.tokens()) {
      if (token.getType() == Token.EOF) {
        break;
      }
      line.add(token);
      if (token.getType() == HandwheelLexer.NL) {
        readLine(section, line);
        line = new ArrayList<>();
      }
    }
    if (!line.isEmpty()) {
      readLine(section, line);
    }
  }

  private void readLine(Section section, List<Token> tokens) {
    int base = tree.base(section);
    int first = source.lineAt(base + section.origin(tokens.get(0)).start());
    int last = source.lineAt(base + section.origin(tokens.get(tokens.size() - 1)).end() - 1);
    boolean code =
        tokens.stream()
            .anyMatch(
                token ->
                    token.getType() == HandwheelLexer.JOIN
                        || (token.getChannel() == Token.DEFAULT_CHANNEL
                            && token.getType() != HandwheelLexer.NL));
    if (!code) {
      readComment(section, tokens, first);
      return;
    }
    Optional<ContentContext> content = content(section, tokens);
    if (content.isEmpty() || isBroken(section, first, last)) {
      for (int i = first; i <= last; i++) {
        lines[i] = FileLine.kept(i, section);
      }
    } else {
      List<List<Piece>> pieces = new LineLayout(section, base, content.get()).lines(tokens);
      for (int i = first; i <= last; i++) {
        List<Piece> own = i - first < pieces.size() ? pieces.get(i - first) : List.of();
        lines[i] = FileLine.code(i, section, own);
      }
    }
    if (section.kind() != SectionKind.PREAMBLE && source.lineStart(first) == base) {
      lines[first] = lines[first].asHeader();
    }
  }

  private void readComment(Section section, List<Token> tokens, int line) {
    for (Token token : tokens) {
      if (token.getType() == HandwheelLexer.COMMENT) {
        int base = tree.base(section);
        int start = base + section.origin(token).start();
        int end = base + section.origin(token).end();
        String text = source.text().substring(start, end).stripTrailing();
        Piece piece = new Piece(start, end, LineLayout.indent(section), text);
        lines[line] = FileLine.comment(line, section, piece);
      }
    }
  }

  private static Optional<ContentContext> content(Section section, List<Token> tokens) {
    return section.lines().stream()
        .filter(line -> line.unknownLine() == null && tokens.contains(line.getStart()))
        .findFirst();
  }

  private boolean isBroken(Section section, int first, int last) {
    return section.problems().stream()
        .mapToInt(problem -> source.lineAt(tree.start(problem.origin())))
        .anyMatch(line -> line >= first && line <= last);
  }

  // ---- Edits
  // ------------------------------------------------------------------------------------

  private List<TextEdit> allEdits() {
    List<TextEdit> edits = new ArrayList<>();
    int blanks = 0;
    FileLine before = null;
    for (FileLine line : lines) {
      if (line.kind() == FileLine.Kind.BLANK) {
        blanks++;
        continue;
      }
      addBlanks(before, line, blanks, edits);
      addContentEdits(line, edits);
      addLineEnd(line, edits);
      blanks = 0;
      before = line;
    }
    int end = source.length();
    if (before == null) {
      addEdit(0, end, "", edits);
    } else {
      addEdit(nextLine(before.number()), end, "", edits);
    }
    return edits;
  }

  private int nextLine(int line) {
    return line + 1 < source.lineCount() ? source.lineStart(line + 1) : source.length();
  }

  /** Brings the empty lines before a line to the number wanted. */
  private void addBlanks(
      @Nullable FileLine before, FileLine line, int blanks, List<TextEdit> edits) {
    int wanted = before == null ? 0 : line.startsSection() ? 1 : Math.min(blanks, 1);
    if (before != null && (source.line(before.number()).isBlank() || isOpenJoin(before))) {
      wanted = 0; // the empty line that a join took in counts, or would be taken in
    }
    int start = source.lineStart(line.number());
    if (blanks < wanted) {
      edits.add(new TextEdit(start, start, lineEnd));
      return;
    }
    int firstBlank = line.number() - blanks;
    if (wanted == 1) {
      addEdit(source.lineStart(firstBlank), source.lineEnd(firstBlank), "", edits);
      addEdit(source.lineEnd(firstBlank), nextLine(firstBlank), lineEnd, edits);
    }
    addEdit(source.lineStart(firstBlank + wanted), start, "", edits);
  }

  /** Whether a line is left to go on in a line that does not come. */
  private boolean isOpenJoin(FileLine line) {
    return line.kind() == FileLine.Kind.KEPT
        && OPEN_JOIN.matcher(source.line(line.number())).find();
  }

  private void addContentEdits(FileLine line, List<TextEdit> edits) {
    if (line.kind() == FileLine.Kind.KEPT || line.kind() == FileLine.Kind.BLANK) {
      return;
    }
    int at = source.lineStart(line.number());
    for (Piece piece : line.pieces()) {
      addEdit(at, piece.start(), piece.gap(), edits);
      addEdit(piece.start(), piece.end(), piece.text(), edits);
      at = piece.end();
    }
    addEdit(at, source.lineEnd(line.number()), "", edits);
  }

  private void addLineEnd(FileLine line, List<TextEdit> edits) {
    int end = source.lineEnd(line.number());
    int next = nextLine(line.number());
    // A lone carriage return would become one line end with the newline of an empty line behind it.
    if (line.kind() != FileLine.Kind.KEPT || source.text().substring(end, next).equals("\r")) {
      addEdit(end, next, lineEnd, edits);
    }
  }

  /** Adds an edit that replaces no more than what differs, or none. */
  private void addEdit(int start, int end, String text, List<TextEdit> edits) {
    String now = source.text().substring(start, end);
    if (now.equals(text)) {
      return;
    }
    int most = Math.min(now.length(), text.length());
    int same = 0;
    while (same < most && now.charAt(same) == text.charAt(same)) {
      same++;
    }
    int tail = 0;
    while (tail < most - same
        && now.charAt(now.length() - 1 - tail) == text.charAt(text.length() - 1 - tail)) {
      tail++;
    }
    edits.add(new TextEdit(start + same, end - tail, text.substring(same, text.length() - tail)));
  }
}
