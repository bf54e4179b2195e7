package org.handwheel.syntax;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.tree.ParseTree;
import org.antlr.v4.runtime.tree.TerminalNode;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.FileContext;
import org.handwheel.grammar.HandwheelParser.StatementContext;

/**
 * One section of a file: its text from the header to the next header, its tokens, its tree and what
 * is wrong with its grammar. Compared by identity: two sections with the same text are two places.
 */
public final class Section {
  private final String path;
  private final SectionKind kind;
  private final SourceText source;
  private final List<Token> tokens;
  private final FileContext tree;
  private final List<ContentContext> lines;
  private final Set<Class<?>> statements;
  private final int[] utf16Offsets;
  private final int[] lineStarts;
  private final BitSet broken = new BitSet();
  private List<Finding> problems = List.of();
  private List<Ignore> ignores = List.of();

  Section(String path, SectionKind kind, String text, List<Token> tokens, FileContext tree) {
    this.path = path;
    this.kind = kind;
    this.source = new SourceText(text);
    this.tokens = List.copyOf(tokens);
    this.tree = tree;
    this.lines = List.copyOf(tree.content());
    this.statements =
        lines.stream()
            .map(ContentContext::statement)
            .filter(Objects::nonNull)
            .map(Object::getClass)
            .collect(Collectors.toUnmodifiableSet());
    this.utf16Offsets = utf16Offsets(text);
    this.lineStarts = lineStarts();
  }

  /** Set once by the parser, which needs the section to say where its findings are. */
  Section with(List<Finding> foundProblems, List<Ignore> foundIgnores) {
    problems = List.copyOf(foundProblems);
    problems.forEach(problem -> broken.set(lineOf(problem.origin().start())));
    ignores = List.copyOf(foundIgnores);
    return this;
  }

  /** The file it belongs to, as the workspace names it. */
  public String path() {
    return path;
  }

  public SectionKind kind() {
    return kind;
  }

  public String text() {
    return source.text();
  }

  public SourceText source() {
    return source;
  }

  /** All tokens, hidden ones too; together they are the text. The last is the end of input. */
  public List<Token> tokens() {
    return tokens;
  }

  public List<ContentContext> lines() {
    return lines;
  }

  /** Whether any of its lines is such a statement. */
  public boolean has(Class<? extends StatementContext> statement) {
    return statements.contains(statement);
  }

  public FileContext tree() {
    return tree;
  }

  /** Findings of grammar, at most one a line. */
  public List<Finding> problems() {
    return problems;
  }

  public List<Ignore> ignores() {
    return ignores;
  }

  /** Whether the grammar of this line is broken, so that its meaning is not to be relied on. */
  public boolean isBroken(ContentContext line) {
    return broken.get(lineOf(origin(line).start()));
  }

  /** The visible tokens of each broken line, without its end. */
  public List<List<Token>> brokenLines() {
    if (broken.isEmpty()) {
      return List.of();
    }
    Map<Integer, List<Token>> lines = new TreeMap<>();
    for (Token token : tokens) {
      int line = lineOf(utf16(token.getStartIndex()));
      if (broken.get(line)
          && token.getChannel() == Token.DEFAULT_CHANNEL
          && token.getType() != HandwheelLexer.NL
          && token.getType() != Token.EOF) {
        lines.computeIfAbsent(line, key -> new ArrayList<>()).add(token);
      }
    }
    return List.copyOf(lines.values());
  }

  /** The number of the line an offset stands on, lines joined by {@code \\} counting as one. */
  int lineOf(int offset) {
    int found = Arrays.binarySearch(lineStarts, offset);
    return found >= 0 ? found : -found - 2;
  }

  /** Where the line of a place starts, lines joined by {@code \\} counting as one. */
  int lineStart(Origin place) {
    return lineStarts[lineOf(place.start())];
  }

  private int[] lineStarts() {
    return IntStream.concat(
            IntStream.of(0),
            tokens.stream()
                .filter(token -> token.getType() == HandwheelLexer.NL)
                .mapToInt(token -> utf16(token.getStopIndex() + 1)))
        .toArray();
  }

  public Origin origin(ParseTree node) {
    if (node instanceof TerminalNode terminal) {
      return origin(terminal.getSymbol());
    }
    ParserRuleContext context = (ParserRuleContext) node;
    Token start = context.getStart();
    Token stop = context.getStop();
    if (stop == null || stop.getStopIndex() < start.getStartIndex()) {
      int at = utf16(start.getStartIndex());
      return new Origin(this, at, at);
    }
    return new Origin(this, utf16(start.getStartIndex()), utf16(stop.getStopIndex() + 1));
  }

  public Origin origin(Token token) {
    return new Origin(
        this,
        utf16(token.getStartIndex()),
        utf16(Math.max(token.getStartIndex(), token.getStopIndex() + 1)));
  }

  /** The header line, or the first line of a preamble. */
  public Origin header() {
    return new Origin(this, 0, source.lineEnd(0));
  }

  private int utf16(int codePointIndex) {
    return utf16Offsets.length == 0 ? codePointIndex : utf16Offsets[codePointIndex];
  }

  /** The generated lexer counts code points, everything else UTF-16; empty where they agree. */
  private static int[] utf16Offsets(String text) {
    int codePoints = text.codePointCount(0, text.length());
    if (codePoints == text.length()) {
      return new int[0];
    }
    int[] offsets = new int[codePoints + 1];
    int at = 0;
    for (int i = 0; i < codePoints; i++) {
      offsets[i] = at;
      at += Character.charCount(text.codePointAt(at));
    }
    offsets[codePoints] = at;
    return offsets;
  }
}
