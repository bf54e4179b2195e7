package org.handwheel.cli;

import java.util.ArrayList;
import java.util.List;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.BlockQuote;
import org.commonmark.node.BulletList;
import org.commonmark.node.Code;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.HardLineBreak;
import org.commonmark.node.Heading;
import org.commonmark.node.IndentedCodeBlock;
import org.commonmark.node.Link;
import org.commonmark.node.ListItem;
import org.commonmark.node.Node;
import org.commonmark.node.OrderedList;
import org.commonmark.node.Paragraph;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;
import org.jspecify.annotations.Nullable;

/** Markdown as text for a terminal: wrapped prose, indented examples, marks left out. */
final class MarkdownText extends AbstractVisitor {
  private final List<String> lines = new ArrayList<>();
  private final Glyphs glyphs;
  private final Palette palette;
  private final int width;
  private String first = "";
  private String next = "";

  private MarkdownText(Glyphs glyphs, Palette palette, int width) {
    this.glyphs = glyphs;
    this.palette = palette;
    this.width = width;
  }

  /** The page laid out, without its first heading. */
  static List<String> lines(String markdown, Glyphs glyphs, Palette palette, int width) {
    MarkdownText text = new MarkdownText(glyphs, palette, width);
    Node page = Parser.builder().build().parse(markdown);
    if (page.getFirstChild() instanceof Heading heading && heading.getLevel() == 1) {
      heading.unlink();
    }
    page.accept(text);
    return text.lines;
  }

  /** The first sentence below the heading, in one line. */
  static String firstSentence(String markdown) {
    Node at = Parser.builder().build().parse(markdown).getFirstChild();
    while (at != null && !(at instanceof Paragraph)) {
      at = at.getNext();
    }
    String text = at == null ? "" : inline(at);
    int end = text.indexOf(". ");
    return end < 0 ? text : text.substring(0, end + 1);
  }

  @Override
  public void visit(Heading heading) {
    separate();
    for (String line : Wrapping.wrap(first, next, glyphs.show(inline(heading)), width)) {
      lines.add(palette.strong(line));
    }
    first = next;
  }

  @Override
  public void visit(Paragraph paragraph) {
    boolean tight =
        paragraph.getParent() instanceof ListItem
            && paragraph.getPrevious() == null
            && first.length() > 0;
    if (!tight) {
      separate();
    }
    for (String part : inline(paragraph).split("\n", -1)) {
      lines.addAll(Wrapping.wrap(first, next, glyphs.show(part), width));
      first = next;
    }
  }

  @Override
  public void visit(FencedCodeBlock block) {
    code(block.getLiteral());
  }

  @Override
  public void visit(IndentedCodeBlock block) {
    code(block.getLiteral());
  }

  private void code(String literal) {
    separate();
    literal
        .stripTrailing()
        .lines()
        .forEach(line -> lines.add((next + "    " + glyphs.show(line)).stripTrailing()));
    first = next;
  }

  @Override
  public void visit(BulletList list) {
    separate();
    for (Node item = list.getFirstChild(); item != null; item = item.getNext()) {
      item(item, "- ");
    }
  }

  @Override
  public void visit(OrderedList list) {
    separate();
    @Nullable Integer start = list.getMarkerStartNumber();
    int number = start == null ? 1 : start;
    for (Node item = list.getFirstChild(); item != null; item = item.getNext()) {
      item(item, number++ + ". ");
    }
  }

  private void item(Node item, String mark) {
    String outer = next;
    first = outer + mark;
    next = outer + " ".repeat(mark.length());
    visitChildren(item);
    next = outer;
    first = outer;
  }

  @Override
  public void visit(BlockQuote quote) {
    String outer = next;
    separate();
    first = outer + "  ";
    next = first;
    visitChildren(quote);
    next = outer;
    first = outer;
  }

  private void separate() {
    if (!lines.isEmpty() && !lines.get(lines.size() - 1).isEmpty()) {
      lines.add("");
    }
  }

  /** The words of a block; only a hard break is a line break. */
  private static String inline(Node block) {
    StringBuilder text = new StringBuilder();
    for (Node child = block.getFirstChild(); child != null; child = child.getNext()) {
      if (child instanceof Text words) {
        text.append(words.getLiteral());
      } else if (child instanceof Code code) {
        text.append('`').append(code.getLiteral()).append('`');
      } else if (child instanceof SoftLineBreak) {
        text.append(' ');
      } else if (child instanceof HardLineBreak) {
        text.append('\n');
      } else if (child instanceof Link link && link.getDestination().contains("://")) {
        text.append(inline(link)).append(" (").append(link.getDestination()).append(')');
      } else {
        text.append(inline(child));
      }
    }
    return text.toString();
  }
}
