package org.handwheel.ide.complete;

import java.math.BigInteger;
import java.util.Optional;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.ide.HoverText;
import org.handwheel.ide.StandardHover;
import org.handwheel.ide.View;
import org.handwheel.model.Owned;
import org.handwheel.units.Length;

/** A few sentences on an owned thing or a material. */
final class Things {
  private Things() {}

  static String about(View view, String kind, String name) {
    if (view.plan() == null) {
      return "";
    }
    return view.plan().shop().things().stream()
        .filter(thing -> thing.kind().word().equals(kind) && thing.name().equals(name))
        .findFirst()
        .map(Things::about)
        .orElse("");
  }

  /** The thing's own section of the shop file, which says all there is. */
  private static String about(Owned thing) {
    String section = thing.origin().section().text().strip();
    return "From `"
        + thing.origin().section().path()
        + "`:\n\n"
        + section.indent(4).stripTrailing();
  }

  static String material(View view, String name) {
    return text(new StandardHover(view.tables()).material(name));
  }

  static String thread(View view, String designation) {
    return text(new StandardHover(view.tables()).thread(designation));
  }

  static String drill(View view, String designation) {
    return text(new StandardHover(view.tables()).drill(designation));
  }

  /** A class of ISO 286 on a diameter in picometres, or alone. */
  static String fit(View view, String code, String picometres) {
    return picometres.matches("\\d{1,18}")
        ? text(
            new StandardHover(view.tables())
                .fit(code, Length.ofPicometres(BigFraction.of(new BigInteger(picometres)))))
        : "ISO 286 class " + code + ": its limits follow from the diameter before it.";
  }

  private static String text(Optional<HoverText> hover) {
    return hover.map(HoverText::markdown).orElse("");
  }
}
