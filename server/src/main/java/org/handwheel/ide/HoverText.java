package org.handwheel.ide;

import java.util.ArrayList;
import java.util.List;

/**
 * A short text for a person: a title, facts, and formulas at the end. Written once, shown as
 * Markdown or as plain text.
 */
public final class HoverText {
  private final String title;
  private final List<Part> parts;

  private HoverText(String title, List<Part> parts) {
    this.title = title;
    this.parts = List.copyOf(parts);
  }

  private enum Form {
    FACT,
    /** A labelled value that is code. */
    CODE,
    NOTE,
    /** A sentence of the program's own, in which back quotes mark code. */
    MARKUP,
    FORMULA
  }

  private record Part(Form form, String label, String text) {}

  static Builder titled(String title) {
    return new Builder(title);
  }

  /** Collects the parts of a text. */
  static final class Builder {
    private final String title;
    private final List<Part> parts = new ArrayList<>();

    private Builder(String title) {
      this.title = title;
    }

    /** A labelled value, on a line of its own. */
    Builder fact(String label, String value) {
      parts.add(new Part(Form.FACT, label, value));
      return this;
    }

    /** Words of the language, on a line of their own. */
    Builder code(String label, String words) {
      parts.add(new Part(Form.CODE, label, words));
      return this;
    }

    /** A sentence of the program's own, never of a file; back quotes in it mark code. */
    Builder markup(String sentence) {
      parts.add(new Part(Form.MARKUP, "", sentence));
      return this;
    }

    /** A sentence. */
    Builder note(String sentence) {
      parts.add(new Part(Form.NOTE, "", sentence));
      return this;
    }

    /** How a number was worked out; formulas stand together at the end. */
    Builder formula(String formula) {
      parts.add(new Part(Form.FORMULA, "", formula));
      return this;
    }

    /** All parts of another text, its title as a sentence. */
    Builder add(HoverText other) {
      note(other.title);
      parts.addAll(other.parts);
      return this;
    }

    /** All parts of another text without its title. */
    Builder addParts(HoverText other) {
      parts.addAll(other.parts);
      return this;
    }

    HoverText build() {
      return new HoverText(title, parts);
    }
  }

  public String title() {
    return title;
  }

  /** As Markdown; what is written in the plan cannot act as markup. */
  public String markdown() {
    StringBuilder out =
        new StringBuilder("**").append(Shown.markdown(Shown.name(title))).append("**\n");
    Form before = Form.NOTE;
    for (Part part : ordered()) {
      boolean listed = before == Form.FACT || before == Form.CODE;
      switch (part.form()) {
        case FACT, CODE -> {
          String value =
              part.form() == Form.CODE ? Shown.code(part.text()) : Shown.markdown(part.text());
          out.append(listed ? "" : "\n").append("- ");
          out.append(Shown.markdown(part.label())).append(": ").append(value);
        }
        case NOTE -> out.append("\n").append(Shown.markdown(part.text()));
        case MARKUP -> out.append("\n").append(part.text());
        case FORMULA -> {
          out.append(before == Form.FORMULA ? "" : "\n---\n*How it is worked out*\n\n");
          out.append("- ").append(Shown.markdown(part.text()));
        }
      }
      out.append("\n");
      before = part.form();
    }
    return out.toString();
  }

  /** As plain text. */
  public String plain() {
    StringBuilder out = new StringBuilder(Shown.name(title)).append("\n");
    Form before = Form.NOTE;
    for (Part part : ordered()) {
      if (part.form() == Form.FACT || part.form() == Form.CODE) {
        out.append(Shown.line(part.label())).append(": ");
      }
      if (part.form() == Form.FORMULA && before != Form.FORMULA) {
        out.append("\nHow it is worked out:\n");
      }
      String text = part.form() == Form.MARKUP ? part.text().replace("`", "") : part.text();
      out.append(Shown.line(text)).append("\n");
      before = part.form();
    }
    return out.toString();
  }

  /** In both forms. */
  public Explanation explanation() {
    return new Explanation(markdown(), plain());
  }

  private List<Part> ordered() {
    List<Part> ordered = new ArrayList<>();
    parts.stream().filter(part -> part.form() != Form.FORMULA).forEach(ordered::add);
    parts.stream().filter(part -> part.form() == Form.FORMULA).distinct().forEach(ordered::add);
    return ordered;
  }
}
