package org.handwheel.ide.actions;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.handwheel.ide.View;
import org.handwheel.ide.complete.Situation;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.TextEdit;

/** Mendings of what was written twice, in the wrong unit, or with the wrong instrument. */
final class SlipFixes {
  private static final Pattern NUMBER =
      Pattern.compile("(?<![\\w.])(?:\\d+(?:\\.\\d+)?|\\.\\d+)(?:\\s*(mm|in|thou)\\b)?(?![\\w./])");
  private static final Pattern WITH = Pattern.compile("\\bwith\\s+(\\S+)\\s*$");

  private final View view;
  private final FileText text;
  private final Map<String, List<TextEdit>> fixes;

  SlipFixes(View view, FileText text, Map<String, List<TextEdit>> fixes) {
    this.view = view;
    this.text = text;
    this.fixes = fixes;
  }

  void of(Finding finding) {
    Origin origin = finding.origin();
    switch (finding.rule()) {
      case "repeated-line" -> {
        // What a section holds would be left to the one before it.
        if (!origin.equals(origin.section().header())) {
          put("Remove the second line", text.removeLines(origin));
        }
      }
      case "repeated-clause" -> put("Remove the second clause", text.removeClause(origin));
      case "unit-suspect" -> otherUnit(origin);
      case "tolerance-not-measurable" -> finer(origin);
      default -> {}
    }
  }

  private void put(String title, TextEdit edit) {
    fixes.put(title, List.of(edit));
  }

  /** The same number in the other unit, where one number stands there alone. */
  private void otherUnit(Origin origin) {
    String written = origin.text();
    Matcher number = NUMBER.matcher(written);
    if (!number.find()) {
      return;
    }
    int end = number.end();
    String digits = number.group().replaceFirst("\\s*[a-z]+$", "");
    String unit = number.group(1) == null ? "" : number.group(1);
    Origin place =
        new Origin(origin.section(), origin.start() + number.start(), origin.start() + end);
    if (number.find()) {
      return;
    }
    for (String other : List.of("mm", "in", "thou")) {
      if (!other.equals(unit)) {
        put("Write `" + digits + " " + other + "`", text.replace(place, digits + " " + other));
      }
    }
  }

  /** The finest instrument of the shop that reaches the size. */
  private void finer(Origin origin) {
    Matcher with = WITH.matcher(origin.text());
    if (!with.find()) {
      return;
    }
    Situation now = Situation.at(view, origin.section(), origin.start());
    String words = origin.text().toLowerCase(Locale.ROOT);
    for (Face face : List.of(Face.RIGHT, Face.FRONT, Face.TOP)) {
      Optional<Owned.Instrument> instrument = now.instrumentFor(face);
      boolean named = words.matches(".*\\b" + face.dimension().word() + "\\b.*");
      if (named && instrument.isPresent()) {
        int start = origin.start() + with.start(1);
        Origin name = new Origin(origin.section(), start, start + with.group(1).length());
        put(
            "Take " + instrument.get().name() + " instead",
            text.replace(name, instrument.get().name()));
      }
    }
  }
}
