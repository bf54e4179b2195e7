package org.handwheel.plan.diff;

import java.util.HashMap;
import java.util.Map;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.jspecify.annotations.Nullable;

/** Which lines and sections of the text before are which of the text after. */
final class SamePlaces {
  private final Map<Line, Line> lines = new HashMap<>();
  private final Map<Section, Section> sections = new HashMap<>();

  /** A line of a section, from 0; sections are compared by identity. */
  record Line(Section section, int line) {
    static Line of(Origin origin) {
      return new Line(origin.section(), origin.section().source().lineAt(origin.start()));
    }
  }

  void add(@Nullable Origin before, @Nullable Origin after) {
    if (before != null && after != null) {
      lines.putIfAbsent(Line.of(before), Line.of(after));
      sections.putIfAbsent(before.section(), after.section());
    }
  }

  void addSections(Section before, Section after) {
    sections.putIfAbsent(before, after);
  }

  /** The line after that a line before has become, if it is known. */
  @Nullable Line after(Origin before) {
    return lines.get(Line.of(before));
  }

  @Nullable Section section(Section before) {
    return sections.get(before);
  }
}
