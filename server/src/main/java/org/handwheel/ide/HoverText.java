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
    NOTE,
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
    StringBuilder out = new StringBuilder("**").append(escaped(title)).append("**\n");
    Form before = Form.NOTE;
    for (Part part : ordered()) {
      switch (part.form()) {
        case FACT -> {
          out.append(before == Form.FACT ? "" : "\n");
          out.append("- ").append(escaped(part.label())).append(": ").append(escaped(part.text()));
        }
        case NOTE -> out.append("\n").append(escaped(part.text()));
        case FORMULA -> {
          out.append(before == Form.FORMULA ? "" : "\n---\n*How it is worked out*\n\n");
          out.append("- ").append(escaped(part.text()));
        }
      }
      out.append("\n");
      before = part.form();
    }
    return out.toString();
  }

  /** As plain text. */
  public String plain() {
    StringBuilder out = new StringBuilder(title).append("\n");
    Form before = Form.NOTE;
    for (Part part : ordered()) {
      if (part.form() == Form.FACT) {
        out.append(part.label()).append(": ");
      }
      if (part.form() == Form.FORMULA && before != Form.FORMULA) {
        out.append("\nHow it is worked out:\n");
      }
      out.append(part.text()).append("\n");
      before = part.form();
    }
    return out.toString();
  }

  private List<Part> ordered() {
    List<Part> ordered = new ArrayList<>();
    parts.stream().filter(part -> part.form() != Form.FORMULA).forEach(ordered::add);
    parts.stream().filter(part -> part.form() == Form.FORMULA).distinct().forEach(ordered::add);
    return ordered;
  }

  /** Text in back quotes is left alone: it is already code. */
  private static String escaped(String text) {
    StringBuilder out = new StringBuilder();
    boolean code = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '`' && (code || text.indexOf('`', i + 1) >= 0)) {
        code = !code;
      } else if (!code && "\\*_[]<>#`|~".indexOf(c) >= 0) {
        out.append('\\');
      }
      out.append(c);
    }
    return out.toString();
  }
}
