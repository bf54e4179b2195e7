package org.handwheel.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A title with labelled lines below it, and notes at the end. */
final class Facts {
  private static final int LABEL = 15;

  private final String title;
  private final List<Fact> facts = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  private record Fact(String label, String text) {}

  Facts(String title) {
    this.title = title;
  }

  Facts add(String label, String text) {
    facts.add(new Fact(label, text));
    return this;
  }

  Facts add(String label, Optional<String> text) {
    text.ifPresent(known -> add(label, known));
    return this;
  }

  /** A paragraph below the facts. */
  Facts note(String text) {
    notes.add(text);
    return this;
  }

  List<String> lines(int width) {
    List<String> lines = new ArrayList<>(Wrapping.wrap("", "    ", title, width));
    for (Fact fact : facts) {
      String start = "  " + fact.label() + " ".repeat(Math.max(2, LABEL - fact.label().length()));
      lines.addAll(Wrapping.wrap(start, " ".repeat(LABEL + 2), fact.text(), width));
    }
    for (String note : notes) {
      lines.add("");
      lines.addAll(Wrapping.wrap("", "", note, width));
    }
    return lines;
  }

  void print(Output output) {
    lines(output.width()).forEach(line -> output.line(output.glyphs().show(line)));
  }
}
