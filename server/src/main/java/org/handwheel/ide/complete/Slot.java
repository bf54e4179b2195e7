package org.handwheel.ide.complete;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.CommonToken;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.syntax.Expectations;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;

/**
 * The place a cursor is at: the words of its line before it, and the word it is in.
 *
 * @param section the section it is in
 * @param where inside what it is
 * @param before the line's visible tokens before the word
 * @param start where the word starts in the file
 * @param end where it ends
 * @param lineStart where the line's first token is, or where the word starts
 * @param joint where the word before it ends, or where the word starts
 */
record Slot(
    Section section,
    Where where,
    List<Token> before,
    Expectations expectations,
    int start,
    int end,
    int lineStart,
    int joint) {

  /** Inside what the cursor is. */
  enum Where {
    CODE,
    COMMENT,
    STRING,
    /** Inside a number or another token that has no word to go on with. */
    NOTHING
  }

  static Slot at(SyntaxTree tree, int offset) {
    Section section = section(tree, offset);
    int base = tree.base(section);
    String text = tree.source().text();
    Where where = Where.CODE;
    List<Token> before = new ArrayList<>();
    int start = wordStart(text, offset);
    int end = wordEnd(text, offset);
    for (Token token : section.tokens()) {
      int from = base + section.origin(token).start();
      int to = base + section.origin(token).end();
      if (from >= offset) {
        break;
      }
      if (token.getType() == HandwheelLexer.NL && to <= offset) {
        before.clear();
      } else if (token.getType() == HandwheelLexer.COMMENT) {
        where = to >= offset ? Where.COMMENT : where;
      } else if (token.getType() == HandwheelLexer.STRING) {
        where = to > offset ? Where.STRING : where;
      } else if (token.getType() == HandwheelLexer.OPEN_STRING) {
        where = to >= offset ? Where.STRING : where;
      } else if (to > offset && start == offset && !isLineEnd(token)) {
        where = Where.NOTHING; // between the two signs of +-
      }
      if (token.getChannel() == Token.DEFAULT_CHANNEL && to <= start && !isLineEnd(token)) {
        before.add(token);
      }
    }
    if (where == Where.CODE && isInNumber(text, start, offset)) {
      where = Where.NOTHING;
    }
    int lineStart = before.isEmpty() ? start : base + section.origin(before.get(0)).start();
    int joint =
        before.isEmpty() ? start : base + section.origin(before.get(before.size() - 1)).end();
    return new Slot(
        section,
        where,
        List.copyOf(before),
        Expectations.after(before),
        start,
        end,
        lineStart,
        joint);
  }

  /** Whether a list that needs commas may go on behind one. */
  boolean wantsComma() {
    int innermost = HandwheelParser.RULE_statement;
    return expectations.expected().stream()
        .anyMatch(
            expected ->
                expected.tokenType() == HandwheelLexer.COMMA
                    && expected.rules().get(expected.rules().size() - 1) == innermost);
  }

  /** The place with a comma put in behind the word before. */
  Slot behindComma() {
    List<Token> tokens = new ArrayList<>(before);
    tokens.add(new CommonToken(HandwheelLexer.COMMA, ","));
    return new Slot(
        section,
        where,
        List.copyOf(tokens),
        Expectations.after(tokens),
        start,
        end,
        lineStart,
        joint);
  }

  /** How many tokens of a kind stand before. */
  int count(int type) {
    return (int) before.stream().filter(token -> token.getType() == type).count();
  }

  private static boolean isLineEnd(Token token) {
    return token.getType() == HandwheelLexer.NL || token.getType() == Token.EOF;
  }

  private static Section section(SyntaxTree tree, int offset) {
    Section found = tree.sections().get(0);
    for (Section section : tree.sections()) {
      if (tree.base(section) <= offset && !section.text().isEmpty()) {
        found = section;
      }
    }
    return found;
  }

  /** A word may hold dashes; digits before it are a number that it stands behind. */
  private static int wordStart(String text, int offset) {
    int start = offset;
    while (start > 0 && isWordPart(text.charAt(start - 1))) {
      start--;
    }
    if (start < offset && Character.isDigit(text.charAt(start))) {
      while (start < offset && !Character.isLetter(text.charAt(start))) {
        start++;
      }
    }
    // A sign before a name is none of it.
    while (start < offset && text.charAt(start) == '-') {
      start++;
    }
    return start;
  }

  private static int wordEnd(String text, int offset) {
    int end = offset;
    while (end < text.length() && isWordPart(text.charAt(end))) {
      end++;
    }
    return end;
  }

  private static boolean isWordPart(char c) {
    return Character.isLetterOrDigit(c) || c == '_' || c == '-';
  }

  private static boolean isInNumber(String text, int start, int offset) {
    if (start < offset || offset == 0) {
      return false;
    }
    char last = text.charAt(offset - 1);
    return Character.isDigit(last) || last == '.';
  }

  /** Whether the grammar could read everything before the cursor. */
  boolean isReadable() {
    return expectations.position() == before.size();
  }

  /** The kind of the token that is {@code back} tokens before the word; 0 if there is none. */
  int type(int back) {
    int at = before.size() - back;
    return at >= 0 ? before.get(at).getType() : 0;
  }

  /** The first word of the line, as a kind of token; 0 if the cursor is in the first. */
  int firstType() {
    return before.isEmpty() ? 0 : before.get(0).getType();
  }

  /** The kind of the token right behind a token of a kind, the last such; 0 if there is none. */
  int typeAfter(int type) {
    for (int i = before.size() - 2; i >= 0; i--) {
      if (before.get(i).getType() == type) {
        return before.get(i + 1).getType();
      }
    }
    return 0;
  }

  boolean has(int type) {
    return before.stream().anyMatch(token -> token.getType() == type);
  }
}
