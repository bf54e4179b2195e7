package org.handwheel.syntax;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeSet;
import org.antlr.v4.runtime.ANTLRErrorListener;
import org.antlr.v4.runtime.BaseErrorListener;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.CommonTokenStream;
import org.antlr.v4.runtime.DefaultErrorStrategy;
import org.antlr.v4.runtime.Parser;
import org.antlr.v4.runtime.RecognitionException;
import org.antlr.v4.runtime.Recognizer;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.TokenStream;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.FileContext;
import org.jspecify.annotations.Nullable;

/** Parses one section's text: a pure function, the same for the same text. */
final class SectionParser {
  private SectionParser() {}

  static Section parse(String path, SectionKind kind, String text) {
    BrokenLines broken = new BrokenLines();
    HandwheelParser parser = parserOf(text, broken);
    CommonTokenStream stream = (CommonTokenStream) parser.getTokenStream();
    FileContext tree = parser.file();
    stream.fill();
    Section section = new Section(path, kind, text, stream.getTokens(), tree);
    return section.with(problems(section, broken.tokens), ignores(section));
  }

  /** A parser that keeps its errors to their lines and tells them only to the listener. */
  static HandwheelParser parserOf(String text, ANTLRErrorListener listener) {
    HandwheelLexer lexer = new BoundedLexer(CharStreams.fromString(text));
    lexer.removeErrorListeners();
    HandwheelParser parser = new HandwheelParser(new CommonTokenStream(lexer));
    parser.removeErrorListeners();
    parser.setErrorHandler(new LineBoundRecovery());
    parser.addErrorListener(listener);
    return parser;
  }

  private static List<Finding> problems(Section section, Set<Integer> brokenAt) {
    List<Finding> problems = new ArrayList<>();
    Token openJoin = openJoin(section.tokens());
    Set<Integer> unknownStarts = unknownStarts(section);
    NavigableSet<Integer> broken = new TreeSet<>(brokenAt);
    for (List<Token> line : logicalLines(section.tokens())) {
      int first = line.get(0).getTokenIndex();
      int last = line.get(line.size() - 1).getTokenIndex();
      if (openJoin != null && line.get(line.size() - 1).getType() == Token.EOF) {
        problems.add(LineProblem.joinedToNothing(section, openJoin));
      } else if (!broken.subSet(first, true, last, true).isEmpty()) {
        problems.add(LineProblem.explain(section, line));
      } else if (unknownStarts.contains(first)) {
        problems.add(LineProblem.unknown(section, line.subList(0, line.size() - 1)));
      }
    }
    return problems;
  }

  private static Set<Integer> unknownStarts(Section section) {
    Set<Integer> starts = new HashSet<>();
    for (ContentContext line : section.lines()) {
      if (line.unknownLine() != null) {
        starts.add(line.getStart().getTokenIndex());
      }
    }
    return starts;
  }

  /** The visible tokens of each line, joined lines as one; a line break or the end closes each. */
  private static List<List<Token>> logicalLines(List<Token> tokens) {
    List<List<Token>> lines = new ArrayList<>();
    List<Token> line = new ArrayList<>();
    for (Token token : tokens) {
      if (token.getChannel() != Token.DEFAULT_CHANNEL) {
        continue;
      }
      line.add(token);
      if (token.getType() == HandwheelLexer.NL || token.getType() == Token.EOF) {
        lines.add(line);
        line = new ArrayList<>();
      }
    }
    return lines;
  }

  /** A {@code \\} that joins its line to nothing: behind it come only blanks and comments. */
  private static @Nullable Token openJoin(List<Token> tokens) {
    for (int i = tokens.size() - 2; i >= 0; i--) {
      int type = tokens.get(i).getType();
      if (type == HandwheelLexer.JOIN) {
        return tokens.get(i);
      }
      if (type != HandwheelLexer.WS && type != HandwheelLexer.COMMENT) {
        return null;
      }
    }
    return null;
  }

  private static List<Ignore> ignores(Section section) {
    List<Ignore> ignores = new ArrayList<>();
    int lastCodeLine = -1;
    for (Token token : section.tokens()) {
      Origin origin = section.origin(token);
      int line = section.source().lineAt(origin.start());
      if (token.getChannel() == Token.DEFAULT_CHANNEL) {
        if (token.getType() != HandwheelLexer.NL) {
          lastCodeLine = line;
        }
      } else if (token.getType() == HandwheelLexer.COMMENT) {
        // Behind a statement it is about that line; alone, about the next.
        int about = lastCodeLine == line ? line : line + 1;
        Ignore.in(token.getText(), origin, about).ifPresent(ignores::add);
      }
    }
    return ignores;
  }

  /**
   * Collects at which tokens the parser stumbled; the words come from {@link LineProblem}. Tokens
   * and not line numbers: the lexer does not count lines that end in a lone carriage return.
   */
  private static final class BrokenLines extends BaseErrorListener {
    private final Set<Integer> tokens = new HashSet<>();

    @Override
    public void syntaxError(
        Recognizer<?, ?> recognizer,
        Object offendingSymbol,
        int line,
        int column,
        String message,
        @Nullable RecognitionException e) {
      tokens.add(((Token) offendingSymbol).getTokenIndex());
    }
  }

  /**
   * Recovery that never crosses a line's end: it deletes no newline, and after an error it keeps
   * the rest of the line in the tree as error nodes and goes on with the next line.
   */
  private static final class LineBoundRecovery extends DefaultErrorStrategy {
    @Override
    protected @Nullable Token singleTokenDeletion(Parser parser) {
      return atLineEnd(parser) ? null : super.singleTokenDeletion(parser);
    }

    @Override
    public void sync(Parser parser) {
      if (parser.getContext().getRuleIndex() != HandwheelParser.RULE_file
          || atLineEnd(parser)
          || atLineStart(parser)) {
        return;
      }
      // A statement has ended and something is left on its line.
      if (!inErrorRecoveryMode(parser)) {
        reportUnwantedToken(parser);
      }
      skipToLineEnd(parser);
    }

    @Override
    public void recover(Parser parser, RecognitionException e) {
      skipToLineEnd(parser);
    }

    private static void skipToLineEnd(Parser parser) {
      while (!atLineEnd(parser)) {
        parser.consume();
      }
    }

    private static boolean atLineEnd(Parser parser) {
      int next = parser.getInputStream().LA(1);
      return next == HandwheelLexer.NL || next == Token.EOF;
    }

    private static boolean atLineStart(Parser parser) {
      TokenStream stream = parser.getInputStream();
      int at = parser.getCurrentToken().getTokenIndex() - 1;
      while (at >= 0 && stream.get(at).getChannel() != Token.DEFAULT_CHANNEL) {
        at--;
      }
      return at < 0 || stream.get(at).getType() == HandwheelLexer.NL;
    }
  }
}
