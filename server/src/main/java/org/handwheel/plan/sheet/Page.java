package org.handwheel.plan.sheet;

import org.handwheel.plan.sheet.Sheet.Fact;
import org.jsoup.nodes.Element;

/**
 * Small pieces of a page. Texts of a plan are set as text of elements, never as markup, and are
 * kept from reaching into their surroundings: marks that turn the direction of writing and control
 * characters are left out.
 */
final class Page {
  private Page() {}

  /** A text without control characters and without marks that turn the direction of writing. */
  static String clean(String text) {
    StringBuilder clean = new StringBuilder();
    text.codePoints()
        .map(c -> Character.isWhitespace(c) ? ' ' : c)
        .filter(c -> !Character.isISOControl(c))
        .filter(c -> Character.getType(c) != Character.FORMAT)
        .filter(c -> Character.getType(c) != Character.SURROGATE)
        .filter(c -> (c & 0xFFFE) != 0xFFFE)
        .forEach(clean::appendCodePoint);
    return clean.toString();
  }

  static Element add(Element to, String tag, String text) {
    return to.appendElement(tag).text(clean(text));
  }

  static Element add(Element to, String tag, String cssClass, String text) {
    return add(to, tag, text).addClass(cssClass);
  }

  /** A text of the plan that may run from right to left, kept apart from what is about it. */
  static Element apart(Element to, String text) {
    return add(to, "bdi", text);
  }

  /**
   * Facts with their labels.
   *
   * @param kind {@code rows} for one below the other, {@code run} for one behind the other on paper
   */
  static void facts(Element to, Iterable<Fact> facts, String kind) {
    if (!facts.iterator().hasNext()) {
      return;
    }
    Element list = to.appendElement("dl").addClass("facts").addClass(kind);
    for (Fact fact : facts) {
      Element row = list.appendElement("div");
      add(row, "dt", fact.label());
      row.appendText(" ");
      apart(row.appendElement("dd"), fact.value());
      list.appendText(" ");
    }
  }

  /**
   * A table with its heads; columns whose head starts with {@code #} hold numbers.
   *
   * @param caption over the table
   * @return its body
   */
  static Element table(Element to, String caption, String... heads) {
    Element wide = to.appendElement("div").addClass("wide");
    wide.attr("tabindex", "0").attr("role", "group");
    wide.attr("aria-label", clean(caption));
    Element table = wide.appendElement("table");
    add(table, "caption", caption);
    Element row = table.appendElement("thead").appendElement("tr");
    for (String head : heads) {
      boolean number = head.startsWith("#");
      Element cell = add(row, "th", number ? head.substring(1) : head).attr("scope", "col");
      if (number) {
        cell.addClass("n");
      }
      if (head.matches("#([XY] )?(mm|in)")) {
        cell.addClass(head.substring(head.length() - 2));
      }
    }
    return table.appendElement("tbody");
  }

  /** A table as wide as what is in it; gives its body back. */
  static Element narrow(Element body) {
    Element table = body.parent();
    if (table != null) {
      table.addClass("narrow");
    }
    return body;
  }

  static Element number(Element row, String text) {
    return add(row, "td", "n", text);
  }

  /** A box to tick off. */
  static void tick(Element to, String label) {
    Element box = to.appendElement("input").attr("type", "checkbox");
    box.addClass("box").attr("aria-label", clean(label)).attr("autocomplete", "off");
  }

  /** A box to write in. */
  static Element write(Element to, String label) {
    return to.appendElement("input")
        .attr("type", "text")
        .attr("inputmode", "decimal")
        .attr("autocomplete", "off")
        .attr("aria-label", clean(label));
  }
}
