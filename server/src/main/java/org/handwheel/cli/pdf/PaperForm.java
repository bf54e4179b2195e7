package org.handwheel.cli.pdf;

import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;

/** A sheet's page as it goes on paper: boxes in place of what is typed and ticked on a screen. */
final class PaperForm {
  private PaperForm() {}

  /** Changes the page. */
  static void apply(Document page) {
    for (Element input : page.select("input")) {
      boolean isText = input.attr("type").equals("text");
      Element box = new Element("span").addClass(isText ? "field" : "box");
      if (isText) {
        // What was read already stands in it.
        box.text(input.attr("value"));
      }
      input.replaceWith(box);
    }
    page.select("nav, .skip, legend, script").remove();
    // Groups with a role of their own are for programs that read the screen.
    page.select("fieldset").forEach(set -> set.tagName("span"));
  }
}
