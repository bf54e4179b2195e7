package org.handwheel.model.build;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.tree.ParseTree;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.LanguageLineContext;
import org.handwheel.grammar.HandwheelParser.LetLineContext;
import org.handwheel.grammar.HandwheelParser.NoteLineContext;
import org.handwheel.grammar.HandwheelParser.StatementContext;
import org.handwheel.grammar.HandwheelParser.UnitsLineContext;
import org.handwheel.grammar.HandwheelParser.UseLineContext;
import org.handwheel.model.Names.Kind;
import org.handwheel.model.Shop.UsedFile;
import org.handwheel.syntax.LanguageLevel;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Dimension;
import org.handwheel.units.LengthUnit;
import org.handwheel.units.Quantity;
import org.jspecify.annotations.Nullable;

/** What plan files and shop files share: level, units, used files and named values. */
final class FileBuilder {
  private final SyntaxTree tree;
  private final Problems problems;
  private final NameTable names;
  private final Values values;
  private final List<UsedFile> uses = new ArrayList<>();
  private @Nullable Origin unitsOrigin;

  FileBuilder(SyntaxTree tree) {
    this.tree = tree;
    this.problems = new Problems();
    this.names = new NameTable(problems);
    this.values = new Values(problems, names);
  }

  SyntaxTree tree() {
    return tree;
  }

  Problems problems() {
    return problems;
  }

  NameTable names() {
    return names;
  }

  Values values() {
    return values;
  }

  List<UsedFile> uses() {
    return uses;
  }

  /** Reads a line that any section may have; says whether it was one. */
  boolean readCommon(Section section, ContentContext line) {
    StatementContext statement = line.statement();
    if (statement instanceof UnitsLineContext units) {
      readUnits(section, units);
    } else if (statement instanceof LanguageLineContext language) {
      readLanguage(section, language);
    } else if (statement instanceof UseLineContext use) {
      readUse(section, use);
    } else if (statement instanceof LetLineContext let) {
      readLet(section, let);
    } else {
      return statement instanceof NoteLineContext;
    }
    return true;
  }

  private void readUnits(Section section, UnitsLineContext line) {
    Origin origin = section.origin(line);
    if (unitsOrigin != null) {
      problems.error("repeated-line", origin, "the units of the file are already given");
      return;
    }
    LengthUnit unit = Values.lengthUnit(line.lengthUnit());
    if (unit != LengthUnit.MM && unit != LengthUnit.IN && unit != LengthUnit.THOU) {
      problems.error("bad-value", section.origin(line.lengthUnit()), "units are mm, in or thou");
      return;
    }
    unitsOrigin = origin;
    values.setUnits(unit);
  }

  private void readLanguage(Section section, LanguageLineContext line) {
    int level = values.wholeNumber(section, line.wholeNumber());
    if (level > LanguageLevel.KNOWN) {
      problems.error(
          "language-level",
          section.origin(line),
          "this file is written in level "
              + level
              + " of the language; this version knows level "
              + LanguageLevel.KNOWN
              + " and cannot be relied on for it");
    } else if (level < 1) {
      problems.error("language-level", section.origin(line), "levels of the language start at 1");
    }
  }

  private void readUse(Section section, UseLineContext line) {
    String written = unquote(line.path());
    Origin origin = section.origin(line.path());
    WorkspacePath.Result result = WorkspacePath.resolve(tree.path(), written);
    if (result.problem() != null) {
      problems.error("use-path", origin, result.problem());
    }
    uses.add(new UsedFile(written, result.path(), origin));
  }

  private void readLet(Section section, LetLineContext line) {
    String name = line.name().getText();
    Origin origin = section.origin(line.name());
    Quantity value = values.expression(section, line.expr());
    if (isPartSize(name)) {
      problems.error(
          "duplicate-name", origin, "`" + name + "` is always the part's own size; choose another");
      return;
    }
    names.declare(Kind.VALUE, name, origin);
    if (value != null) {
      values.define(name, value);
    }
  }

  private static boolean isPartSize(String name) {
    return name.equalsIgnoreCase("length")
        || name.equalsIgnoreCase("width")
        || name.equalsIgnoreCase("height");
  }

  /** A line that its section cannot have. */
  void misplaced(Section section, ContentContext line, String belongs) {
    Origin origin = section.origin(line);
    String first = line.getStart().getText();
    problems.error(
        "misplaced-line", origin, "`" + first + "` does not belong here; it belongs in " + belongs);
  }

  static String unquote(@Nullable ParseTree node) {
    if (node == null) {
      return "";
    }
    String text = node.getText();
    return text.length() >= 2 && text.startsWith("\"") && text.endsWith("\"")
        ? text.substring(1, text.length() - 1)
        : text;
  }

  /** The rotation speed of a clause, in turns a minute. */
  @Nullable Double rpm(Section section, @Nullable ParseTree node) {
    Quantity quantity = values.quantity(section, node, Dimension.SPINDLE_SPEED);
    return quantity == null ? null : quantity.value().doubleValue();
  }
}
