package org.handwheel.plan.sheet;

import org.handwheel.units.UnitChoice;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.TextNode;

/** Sizes of a page in one unit where both stand. */
final class PageUnits {
  private PageUnits() {}

  /** Changes the page; titles of the plan stay as they are written. */
  static void apply(Document page, UnitChoice units) {
    if (units == UnitChoice.BOTH) {
      return;
    }
    // Of coordinates of an outline only millimetres are shown, so they stay.
    page.select(units == UnitChoice.MM ? ".in" : ".mm:not(.stations .mm)").remove();
    for (Element element : page.body().getAllElements()) {
      if (!element.is("h1, h2, nav, svg, h1 *, h2 *, nav *, svg *")) {
        for (TextNode text : element.textNodes()) {
          text.text(units.of(text.getWholeText()));
        }
      }
    }
  }
}
