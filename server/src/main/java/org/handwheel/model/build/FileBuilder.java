package org.handwheel.model.build;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.tree.ParseTree;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.LanguageLineContext;
import org.handwheel.grammar.HandwheelParser.LetLineContext;
import org.handwheel.grammar.HandwheelParser.NoteLineContext;
import org.handwheel.grammar.HandwheelParser.PropertyLineContext;
import org.handwheel.grammar.HandwheelParser.StatementContext;
import org.handwheel.grammar.HandwheelParser.UnitsLineContext;
import org.handwheel.grammar.HandwheelParser.UseLineContext;
import org.handwheel.model.Names.Kind;
import org.handwheel.model.Shop.UsedFile;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.LanguageLevel;
import org.handwheel.syntax.Nearest;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Dimension;
import org.handwheel.units.LengthUnit;
import org.handwheel.units.Quantity;
import org.jspecify.annotations.Nullable;

/** What plan files and shop files share: level, units, used files and named values. */
final class FileBuilder {
  /** The name is the third word in {@code own vise V80}, the second in {@code let edge}. */
  private static final int WORDS_BEFORE_A_NAME = 3;

  /** First words of lines on which much of the rest of a file depends. */
  private static final Set<String> MUCH_DEPENDS_ON = Set.of("use", "units", "datum", "hole");

  private final SyntaxTree tree;
  private final Problems problems;
  private final NameTable names;
  private final Values values;
  private final List<UsedFile> uses = new ArrayList<>();
  private @Nullable Origin unitsOrigin;
  private int commonLines;

  FileBuilder(SyntaxTree tree) {
    this.tree = tree;
    this.problems = new Problems();
    this.names = new NameTable(problems);
    this.values = new Values(problems, names);
    for (Section section : tree.sections()) {
      section.brokenLines().forEach(this::doubtNames);
    }
  }

  /** Names that a broken line may declare: they stand among its first words. */
  private void doubtNames(List<Token> line) {
    line.stream().limit(WORDS_BEFORE_A_NAME).map(Token::getText).forEach(names::doubt);
    String first = line.isEmpty() ? "" : line.get(0).getText();
    switch (Nearest.to(first, MUCH_DEPENDS_ON).orElse("")) {
      case "use" -> names.doubtThings();
      case "units" -> values.doubtUnits();
      case "datum" -> names.doubtDatums();
      case "hole" -> names.doubtHoles();
      default -> {}
    }
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

  /** How many lines that change the ground for all lines after them were read. */
  int commonLines() {
    return commonLines;
  }

  /** Reads a line that any section may have; says whether it was one. */
  boolean readCommon(Section section, ContentContext line) {
    StatementContext statement = line.statement();
    commonLines++;
    if (statement instanceof UnitsLineContext units) {
      readUnits(section, units);
    } else if (statement instanceof LanguageLineContext language) {
      readLanguage(section, language);
    } else if (statement instanceof UseLineContext use) {
      readUse(section, use);
    } else if (statement instanceof LetLineContext let) {
      readLet(section, let);
    } else {
      commonLines--;
      return statement instanceof NoteLineContext;
    }
    return true;
  }

  private void readUnits(Section section, UnitsLineContext line) {
    Origin origin = section.origin(line);
    if (unitsOrigin != null) {
      problems.repeated(
          "repeated-line", origin, "the units of the file are already given", unitsOrigin);
      return;
    }
    LengthUnit unit = Literals.lengthUnit(line.lengthUnit());
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
  void misplaced(Section section, ContentContext line) {
    StatementContext statement = Objects.requireNonNull(line.statement());
    Origin origin = section.origin(line);
    String first = line.getStart().getText();
    if (statement instanceof PropertyLineContext property) {
      Origin colon = section.origin(property.COLON());
      problems.add(
          new Finding(
                  "misplaced-line",
                  Severity.ERROR,
                  origin,
                  "lines with a colon describe what a shop owns; write `" + first + "` without it")
              .withFix(Fix.replace("Take the colon away", colon, "")));
      return;
    }
    if (section.kind() == SectionKind.OWN) {
      Origin word = section.origin(line.getStart());
      problems.add(
          new Finding(
                  "misplaced-line",
                  Severity.ERROR,
                  origin,
                  "what is owned is described by properties: write `" + first + ": ...`")
              .withFix(Fix.replace("Write `" + first + ":`", word, word.text() + ":")));
      return;
    }
    problems.error(
        "misplaced-line",
        origin,
        "`" + first + "` does not belong here; it belongs in " + Places.of(statement));
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
    Quantity quantity = values.positive(section, node, Dimension.SPINDLE_SPEED);
    return quantity == null ? null : quantity.value().doubleValue();
  }
}
