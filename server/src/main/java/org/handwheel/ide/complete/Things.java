package org.handwheel.ide.complete;

import java.math.BigInteger;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.ide.Explanation;
import org.handwheel.ide.HoverText;
import org.handwheel.ide.Shown;
import org.handwheel.ide.StandardHover;
import org.handwheel.ide.View;
import org.handwheel.model.Owned;
import org.handwheel.units.Length;

/** A few sentences on an owned thing or a material. */
final class Things {
  private Things() {}

  static Explanation about(View view, String kind, String name) {
    if (view.plan() == null) {
      return Explanation.NONE;
    }
    return view.plan().shop().things().stream()
        .filter(thing -> thing.kind().word().equals(kind) && thing.name().equals(name))
        .findFirst()
        .map(Things::about)
        .orElse(Explanation.NONE);
  }

  /** The thing's own section of the shop file, which says all there is. */
  private static Explanation about(Owned thing) {
    List<String> lines = Shown.lines(thing.origin().section().text().strip());
    String path = thing.origin().section().path();
    // Indented by four, lines are code whatever is in them.
    return new Explanation(
        "From "
            + Shown.code(path)
            + ":\n\n"
            + lines.stream().map(line -> "    " + line).collect(Collectors.joining("\n")),
        "From " + Shown.line(path) + ":\n\n" + String.join("\n", lines));
  }

  static Explanation material(View view, String name) {
    return text(new StandardHover(view.tables()).material(name));
  }

  static Explanation thread(View view, String designation) {
    return text(new StandardHover(view.tables()).thread(designation));
  }

  static Explanation drill(View view, String designation) {
    return text(new StandardHover(view.tables()).drill(designation));
  }

  /** A class of ISO 286 on a diameter in picometres, or alone. */
  static Explanation fit(View view, String code, String picometres) {
    return picometres.matches("\\d{1,18}")
        ? text(
            new StandardHover(view.tables())
                .fit(code, Length.ofPicometres(BigFraction.of(new BigInteger(picometres)))))
        : Explanation.of(
            "ISO 286 class "
                + Shown.line(code)
                + ": its limits follow from the diameter before it.");
  }

  private static Explanation text(Optional<HoverText> hover) {
    return hover.map(HoverText::explanation).orElse(Explanation.NONE);
  }
}
