package org.handwheel.ide;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.tree.ParseTree;
import org.antlr.v4.runtime.tree.TerminalNode;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.model.Names;
import org.handwheel.model.Names.Kind;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;

/** What each word of a text is, for colouring it by meaning. */
public final class WordColours {
  /** What a word is. */
  public enum Type {
    KEYWORD,
    VARIABLE,
    PROPERTY,
    NUMBER,
    STRING,
    COMMENT,
    /** Faces, places and axes. */
    ENUM_MEMBER,
    /** Verbs of cutting. */
    FUNCTION,
    /** Kinds of owned things. */
    CLASS
  }

  /** More about a word. */
  public enum Modifier {
    NONE,
    DECLARATION,
    READONLY,
    DECLARATION_READONLY
  }

  /** A word of the file; never over the end of a line. */
  public record Word(int start, int end, Type type, Modifier modifier) {}

  private final Map<Origin, Modifier> names = new HashMap<>();
  private final SyntaxTree tree;

  private WordColours(View view) {
    this.tree = view.tree();
    Names known = NameIndex.namesOf(view);
    for (Names.Declaration declaration : known.declarations()) {
      names.put(
          declaration.origin(),
          declaration.kind() == Kind.VALUE ? Modifier.DECLARATION_READONLY : Modifier.DECLARATION);
    }
    for (Names.Use use : known.uses()) {
      boolean value = use.declaration().kind() == Kind.VALUE;
      names.putIfAbsent(use.origin(), value ? Modifier.READONLY : Modifier.NONE);
    }
  }

  /**
   * The words that touch a range, in order.
   *
   * @param start UTF-16 units from the start of the file
   * @param end one past the last
   */
  public static List<Word> of(View view, int start, int end) {
    WordColours colours = new WordColours(view);
    List<Word> words = new ArrayList<>();
    for (Section section : view.tree().sections()) {
      int base = view.tree().base(section);
      if (base <= end && base + section.text().length() >= start) {
        colours.section(section, start, end, words);
      }
    }
    return words;
  }

  private void section(Section section, int start, int end, List<Word> out) {
    Map<Token, ParserRuleContext> parents = new HashMap<>();
    for (ContentContext line : section.lines()) {
      collect(line, parents);
    }
    for (Token token : section.tokens()) {
      Origin origin = section.origin(token);
      int from = tree.start(origin);
      int to = tree.end(origin);
      if (to < start || from > end || from == to) {
        continue;
      }
      if (token.getType() == HandwheelLexer.JOIN) {
        join(origin, from, out);
        continue;
      }
      Type type = type(section, token, parents.get(token));
      if (type != null) {
        Modifier modifier = names.get(origin);
        out.add(
            modifier == null
                ? new Word(from, to, type, Modifier.NONE)
                : new Word(from, to, Type.VARIABLE, modifier));
      }
    }
  }

  /** A comment behind the mark that joins lines. */
  private static void join(Origin origin, int from, List<Word> out) {
    int hash = origin.text().indexOf('#');
    if (hash >= 0) {
      out.add(
          new Word(
              from + hash,
              from + origin.text().stripTrailing().length(),
              Type.COMMENT,
              Modifier.NONE));
    }
  }

  private static void collect(ParserRuleContext node, Map<Token, ParserRuleContext> parents) {
    for (int i = 0; i < node.getChildCount(); i++) {
      ParseTree child = node.getChild(i);
      if (child instanceof TerminalNode terminal) {
        parents.put(terminal.getSymbol(), node);
      } else if (child instanceof ParserRuleContext rule) {
        collect(rule, parents);
      }
    }
  }

  private @Nullable Type type(Section section, Token token, @Nullable ParserRuleContext parent) {
    Type byToken =
        switch (token.getType()) {
          case HandwheelLexer.COMMENT -> Type.COMMENT;
          case HandwheelLexer.STRING, HandwheelLexer.OPEN_STRING -> Type.STRING;
          case HandwheelLexer.INT,
              HandwheelLexer.DEC,
              HandwheelLexer.FRACTION,
              HandwheelLexer.MIXED,
              HandwheelLexer.NUMBER_DRILL,
              HandwheelLexer.LETTER_DRILL,
              HandwheelLexer.THREAD_M,
              HandwheelLexer.THREAD_NAMED ->
              Type.NUMBER;
          case HandwheelLexer.WS,
              HandwheelLexer.NL,
              HandwheelLexer.ERROR,
              HandwheelLexer.TIGHT_DIV,
              HandwheelLexer.HASH_SIZE,
              Token.EOF ->
              null;
          default -> Type.KEYWORD;
        };
    boolean word =
        byToken == Type.KEYWORD
            && !token.getText().isEmpty()
            && Character.isLetter(token.getText().codePointAt(0));
    return byToken == Type.KEYWORD ? (word ? word(section, token, parent) : null) : byToken;
  }

  private static Type word(Section section, Token token, @Nullable ParserRuleContext parent) {
    if (parent == null) {
      return token.getType() == HandwheelLexer.ID ? Type.VARIABLE : Type.KEYWORD;
    }
    if (parent instanceof HandwheelParser.FaceContext
        || parent instanceof HandwheelParser.OperatorPlaceContext
        || parent instanceof HandwheelParser.AxisContext) {
      return Type.ENUM_MEMBER;
    }
    if (parent instanceof HandwheelParser.OwnKindContext) {
      return Type.CLASS;
    }
    if (parent instanceof HandwheelParser.DimensionContext || isProperty(parent)) {
      return Type.PROPERTY;
    }
    if (isCutVerb(section, token, parent)) {
      return Type.FUNCTION;
    }
    if (parent instanceof HandwheelParser.FitContext) {
      return Type.NUMBER;
    }
    boolean name =
        token.getType() == HandwheelLexer.ID
            || within(parent, HandwheelParser.NameContext.class)
            || parent instanceof HandwheelParser.CheckRefContext;
    return name ? Type.VARIABLE : Type.KEYWORD;
  }

  private static boolean within(ParserRuleContext node, Class<?> type) {
    for (ParserRuleContext at = node; at != null; at = at.getParent()) {
      if (type.isInstance(at)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isProperty(ParserRuleContext parent) {
    return within(parent, HandwheelParser.PropertyContext.class);
  }

  /** The first word of a line that takes metal off. */
  private static boolean isCutVerb(Section section, Token token, ParserRuleContext parent) {
    boolean first = parent.getStart() == token;
    boolean cut =
        parent instanceof HandwheelParser.CleanLineContext
            || parent instanceof HandwheelParser.RoughLineContext
            || parent instanceof HandwheelParser.FinishLineContext
            || parent instanceof HandwheelParser.HoleCutLineContext
            || (parent instanceof HandwheelParser.FeatureLineContext
                && section.kind() == SectionKind.SETUP);
    return first && cut;
  }
}
