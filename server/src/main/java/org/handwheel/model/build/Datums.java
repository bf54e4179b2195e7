package org.handwheel.model.build;

import java.util.Locale;
import java.util.Map;
import org.handwheel.grammar.HandwheelParser.FaceOrDatumContext;
import org.handwheel.model.Face;
import org.handwheel.syntax.Section;
import org.jspecify.annotations.Nullable;

/** Faces named directly or by a datum letter. */
final class Datums {
  private Datums() {}

  static @Nullable Face face(
      FileBuilder file, Section section, Map<String, Face> datums, FaceOrDatumContext context) {
    if (context.face() != null) {
      return Resolver.face(context.face());
    }
    Face face = datums.get(context.getText().toUpperCase(Locale.ROOT));
    if (face == null && !file.names().areDatumsDoubtful()) {
      file.problems()
          .error(
              "undefined-name",
              section.origin(context),
              "`" + context.getText() + "` is neither a face nor a datum letter given before");
    }
    return face;
  }
}
