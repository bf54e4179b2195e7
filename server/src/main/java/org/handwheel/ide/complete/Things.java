package org.handwheel.ide.complete;

import java.util.Locale;
import org.handwheel.ide.View;
import org.handwheel.model.Owned;

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
    return view.tables()
        .materials()
        .find(name)
        .map(
            material ->
                material.words()
                    + ", "
                    + material.kind().words()
                    + "\n\nCutting fluid: "
                    + material.cuttingFluid()
                    + (material.caution().isBlank() ? "" : "\n\n" + capital(material.caution())))
        .orElse("");
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
