package org.handwheel.ide;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.antlr.v4.runtime.ParserRuleContext;
import org.handwheel.grammar.HandwheelParser.CleanLineContext;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.DimensionLineContext;
import org.handwheel.grammar.HandwheelParser.FeatureLineContext;
import org.handwheel.grammar.HandwheelParser.FinishLineContext;
import org.handwheel.grammar.HandwheelParser.HoldInViseLineContext;
import org.handwheel.grammar.HandwheelParser.HoldOnLineContext;
import org.handwheel.grammar.HandwheelParser.HoleCutLineContext;
import org.handwheel.grammar.HandwheelParser.HoleLineContext;
import org.handwheel.grammar.HandwheelParser.LetLineContext;
import org.handwheel.grammar.HandwheelParser.OwnHeaderContext;
import org.handwheel.grammar.HandwheelParser.PatternLineContext;
import org.handwheel.grammar.HandwheelParser.PropertyLineContext;
import org.handwheel.grammar.HandwheelParser.RoughLineContext;
import org.handwheel.grammar.HandwheelParser.SizeLineContext;
import org.handwheel.grammar.HandwheelParser.StatementContext;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;

/** The outline of a file: its sections in order, with what stands in them. */
public final class Symbols {
  private Symbols() {}

  /** What a symbol is. */
  public enum Kind {
    PLAN,
    PART,
    STOCK,
    SETUP,
    LOG,
    INSPECTION,
    SHOP,
    THING,
    SIZE,
    HOLE,
    FEATURE,
    VALUE,
    HOLD,
    CUT,
    PROPERTY
  }

  /**
   * One entry of the outline.
   *
   * @param name never empty
   * @param detail more about it, maybe empty
   * @param start of all that belongs to it, in the file
   * @param end one past it
   * @param nameStart of its name, within it
   * @param nameEnd one past the name
   */
  public record Symbol(
      String name,
      String detail,
      Kind kind,
      int start,
      int end,
      int nameStart,
      int nameEnd,
      List<Symbol> children) {
    public Symbol {
      // Some editors refuse an outline with a name that is blank.
      name = name.isBlank() ? kind.name().toLowerCase(Locale.ROOT) : Shown.name(name).strip();
      detail = Shown.name(detail);
      children = List.copyOf(children);
    }
  }

  /** The outline: in a plan everything below the plan's header is its child. */
  public static List<Symbol> of(SyntaxTree tree) {
    List<Symbol> flat = new ArrayList<>();
    Symbol root = null;
    for (Section section : tree.sections()) {
      Symbol symbol = section(tree, section);
      if (symbol == null) {
        continue;
      }
      boolean top = symbol.kind() == Kind.PLAN || symbol.kind() == Kind.SHOP;
      if (top && root == null && flat.isEmpty()) {
        root = symbol;
      } else {
        flat.add(symbol);
      }
    }
    if (root == null) {
      return flat;
    }
    List<Symbol> children = new ArrayList<>(root.children());
    children.addAll(flat);
    int end = flat.isEmpty() ? root.end() : flat.get(flat.size() - 1).end();
    return List.of(
        new Symbol(
            root.name(),
            root.detail(),
            root.kind(),
            root.start(),
            end,
            root.nameStart(),
            root.nameEnd(),
            children));
  }

  private static @Nullable Symbol section(SyntaxTree tree, Section section) {
    List<Symbol> children = new ArrayList<>();
    for (ContentContext line : section.lines()) {
      if (line.statement() != null && !section.isBroken(line)) {
        statement(tree, section, line.statement()).ifPresent(children::add);
      }
    }
    if (section.kind() == SectionKind.PREAMBLE) {
      return null;
    }
    Origin header = section.header();
    String text = header.text();
    int lead = text.length() - text.stripLeading().length();
    String written = withoutComment(section, text).strip();
    Origin name =
        new Origin(section, header.start() + lead, header.start() + lead + written.length());
    return new Symbol(
        written.isEmpty() ? section.kind().word() : name(section, written),
        detail(section),
        kind(section.kind()),
        tree.base(section),
        tree.base(section) + section.text().stripTrailing().length(),
        tree.start(name),
        tree.end(name),
        children);
  }

  private static String withoutComment(Section section, String text) {
    ContentContext first = section.lines().isEmpty() ? null : section.lines().get(0);
    return first == null || first.header() == null || section.isBroken(first)
        ? text
        : section.origin(first.header()).text();
  }

  private static String name(Section section, String written) {
    ContentContext first = section.lines().get(0);
    if (first.header() instanceof OwnHeaderContext own && !section.isBroken(first)) {
      return own.name().getText();
    }
    return written.replace("\"", "");
  }

  private static String detail(Section section) {
    ContentContext first = section.lines().isEmpty() ? null : section.lines().get(0);
    if (first != null
        && first.header() instanceof OwnHeaderContext own
        && !section.isBroken(first)) {
      String title = own.title() == null ? "" : ", " + own.title().getText().replace("\"", "");
      return own.ownKind().getText() + title;
    }
    return "";
  }

  private static Kind kind(SectionKind kind) {
    return switch (kind) {
      case PREAMBLE, PLAN -> Kind.PLAN;
      case SHOP -> Kind.SHOP;
      case PART -> Kind.PART;
      case STOCK -> Kind.STOCK;
      case SETUP -> Kind.SETUP;
      case OWN -> Kind.THING;
      case LOG -> Kind.LOG;
      case INSPECT -> Kind.INSPECTION;
    };
  }

  private static Optional<Symbol> statement(
      SyntaxTree tree, Section section, StatementContext statement) {
    boolean inPart = section.kind() == SectionKind.PART;
    if (statement instanceof DimensionLineContext line) {
      return symbol(tree, section, line, line.dimension(), Kind.SIZE);
    } else if (statement instanceof HoleLineContext line) {
      return symbol(tree, section, line, line.name(), Kind.HOLE);
    } else if (statement instanceof PatternLineContext line) {
      return symbol(tree, section, line, line.name(), Kind.HOLE);
    } else if (statement instanceof LetLineContext line) {
      return symbol(tree, section, line, line.name(), Kind.VALUE);
    } else if (statement instanceof PropertyLineContext line) {
      return symbol(tree, section, line, line.property(), Kind.PROPERTY);
    } else if (statement instanceof FeatureLineContext line) {
      return inPart
          ? symbol(tree, section, line, line.featureTarget(), Kind.FEATURE)
          : Optional.of(whole(tree, section, line, Kind.CUT));
    }
    boolean hold =
        statement instanceof HoldInViseLineContext || statement instanceof HoldOnLineContext;
    boolean cut =
        statement instanceof CleanLineContext
            || statement instanceof RoughLineContext
            || statement instanceof FinishLineContext
            || statement instanceof HoleCutLineContext;
    if (hold || cut || statement instanceof SizeLineContext) {
      Kind kind = hold ? Kind.HOLD : cut ? Kind.CUT : Kind.SIZE;
      return Optional.of(whole(tree, section, statement, kind));
    }
    return Optional.empty();
  }

  /** A line known by a name in it; what follows the name is the detail. */
  private static Optional<Symbol> symbol(
      SyntaxTree tree, Section section, ParserRuleContext line, ParserRuleContext name, Kind kind) {
    Origin all = section.origin(line);
    Origin word = section.origin(name);
    String detail = section.text().substring(word.end(), all.end()).strip();
    return Optional.of(
        new Symbol(
            word.text(),
            detail.startsWith(":") || detail.startsWith("=") ? detail.substring(1).strip() : detail,
            kind,
            tree.start(all),
            tree.end(all),
            tree.start(word),
            tree.end(word),
            List.of()));
  }

  private static Symbol whole(SyntaxTree tree, Section section, ParserRuleContext line, Kind kind) {
    Origin all = section.origin(line);
    String text = all.text().replaceAll("\\s+", " ");
    int comma = text.indexOf(',');
    String name = comma < 0 ? text : text.substring(0, comma);
    String detail = comma < 0 ? "" : text.substring(comma + 1).strip();
    return new Symbol(
        name,
        detail,
        kind,
        tree.start(all),
        tree.end(all),
        tree.start(all),
        tree.end(all),
        List.of());
  }

  // ---- Over the whole workspace
  // ------------------------------------------------------------------

  /** A symbol of some file. */
  public record Found(String path, Symbol symbol, String within) {}

  /**
   * Named things of all files whose name holds the letters of a query in their order, best first.
   */
  public static List<Found> search(Project project, String query) {
    List<Found> found = new ArrayList<>();
    for (Project.NamedFile file : project.files()) {
      for (Symbol symbol : of(file.tree())) {
        collect(file.tree().path(), symbol, "", query, found);
      }
    }
    found.sort(
        Comparator.<Found>comparingInt(hit -> score(hit.symbol().name(), query))
            .thenComparing(hit -> hit.symbol().name())
            .thenComparing(Found::path));
    return found;
  }

  private static void collect(
      String path, Symbol symbol, String within, String query, List<Found> out) {
    boolean named =
        switch (symbol.kind()) {
          case SIZE, HOLD, CUT, PROPERTY, INSPECTION, STOCK -> false;
          default -> true;
        };
    if (named && score(symbol.name(), query) >= 0) {
      out.add(new Found(path, symbol, within));
    }
    symbol.children().forEach(child -> collect(path, child, symbol.name(), query, out));
  }

  /**
   * How far a name is from a query: 0 if it starts with it, more the more scattered its letters
   * are, -1 if they are not all there.
   */
  static int score(String name, String query) {
    String text = name.toLowerCase(Locale.ROOT);
    String wanted = query.toLowerCase(Locale.ROOT).replace(" ", "");
    int at = -1;
    int gaps = 0;
    for (int i = 0; i < wanted.length(); i++) {
      int next = text.indexOf(wanted.charAt(i), at + 1);
      if (next < 0) {
        return -1;
      }
      gaps += next - at - 1;
      at = next;
    }
    return gaps;
  }
}
