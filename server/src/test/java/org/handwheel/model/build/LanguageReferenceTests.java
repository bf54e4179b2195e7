package org.handwheel.model.build;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.tree.ParseTree;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.grammar.HandwheelParser.OwnHeaderContext;
import org.handwheel.grammar.HandwheelParser.PropertyLineContext;
import org.handwheel.model.Face;
import org.handwheel.model.Limit;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Workspace;
import org.handwheel.syntax.Examples;
import org.handwheel.syntax.Examples.Block;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.SyntaxTree;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The reference of the language says what the program does: every block of it is run. */
class LanguageReferenceTests {
  private static final Pattern EXPECTED = Pattern.compile("# -> ([a-z-]+): (.*?)\\s*$");

  static Stream<Block> goodBlocks() {
    return Examples.blocks().stream().filter(block -> !block.kind().equals("wrong"));
  }

  static Stream<Block> wrongBlocks() {
    return Examples.blocks().stream().filter(block -> block.kind().equals("wrong"));
  }

  @ParameterizedTest
  @MethodSource("goodBlocks")
  void goodExamplesGiveNoFinding(Block block) {
    String text =
        block.kind().equals("line") ? Examples.whole(block.section(), block.text()) : block.text();
    boolean isShop = block.tag().equals("shop") || block.tag().equals("line:shop");
    SyntaxTree tree = SyntaxTree.parse(isShop ? "x.shop" : "x.plan", text);
    assertThat(findings(tree)).extracting(f -> at(tree, f)).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("wrongBlocks")
  void wrongExamplesGiveExactlyTheirFindings(Block block) {
    String text = Examples.whole(block.section(), block.text());
    SyntaxTree tree = SyntaxTree.parse(block.section().equals("shop") ? "x.shop" : "x.plan", text);
    List<String> found =
        findings(tree).stream().map(finding -> at(tree, finding)).sorted().toList();
    assertThat(found).isEqualTo(expected(text)).isNotEmpty();
  }

  /** What the comments of a block say, for the line they stand on or the last line with code. */
  private static List<String> expected(String text) {
    List<String> expected = new ArrayList<>();
    String[] lines = text.split("\n");
    int code = 0;
    for (int i = 0; i < lines.length; i++) {
      Matcher matcher = EXPECTED.matcher(lines[i]);
      boolean found = matcher.find();
      if (!(found && lines[i].substring(0, matcher.start()).isBlank())) {
        code = i;
      }
      if (found) {
        expected.add(code + " " + matcher.group(1) + ": " + matcher.group(2));
      }
    }
    expected.sort(null);
    return expected;
  }

  private static String at(SyntaxTree tree, Finding finding) {
    return tree.line(finding.origin()) + " " + finding.rule() + ": " + finding.message();
  }

  private static List<Finding> findings(SyntaxTree tree) {
    if (tree.path().endsWith(".shop")) {
      return ShopFiles.build(tree).findings();
    }
    SyntaxTree shop = SyntaxTree.parse(Examples.SHOP_PATH, Examples.shop());
    return PlanFiles.build(Workspace.of(tree, shop), tree.path()).findings();
  }

  @Test
  void exampleFilesGiveNoFinding() {
    SyntaxTree[] trees =
        trees().stream()
            .filter(t -> t.path().matches(".*\\.(plan|shop)"))
            .toArray(SyntaxTree[]::new);
    Workspace workspace = Workspace.of(trees);
    assertThat(trees).isNotEmpty();
    for (SyntaxTree tree : trees) {
      List<Finding> findings =
          tree.path().endsWith(".shop")
              ? ShopFiles.build(tree).findings()
              : PlanFiles.build(workspace, tree.path()).findings();
      assertThat(findings).as(tree.path()).extracting(f -> at(tree, f)).isEmpty();
    }
  }

  @Test
  void everyAlternativeOfTheGrammarOccursInAnExample() {
    Set<Class<?>> wanted =
        Arrays.stream(HandwheelParser.class.getDeclaredClasses())
            .filter(ParserRuleContext.class::isAssignableFrom)
            .collect(Collectors.toSet());
    // Rules whose alternatives have labels occur as those; an unknown line is never right.
    Set<Class<?>> labelled =
        wanted.stream().<Class<?>>map(Class::getSuperclass).collect(Collectors.toSet());
    wanted.removeAll(labelled);
    wanted.remove(HandwheelParser.UnknownLineContext.class);
    trees().forEach(tree -> tree.sections().forEach(s -> visit(s.tree(), wanted)));
    assertThat(wanted).isEmpty();
  }

  @Test
  void everyWordOccursInAnExample() {
    Set<String> unused = new TreeSet<>();
    for (int type = 1; type <= HandwheelLexer.VOCABULARY.getMaxTokenType(); type++) {
      String name = HandwheelLexer.VOCABULARY.getSymbolicName(type);
      if (name != null) {
        unused.add(name);
      }
    }
    unused.removeAll(
        Set.of("ERROR", "OPEN_STRING", "TIGHT_DIV", "HASH_SIZE", "JOIN", "WS", "COMMENT", "NL"));
    for (SyntaxTree tree : trees()) {
      for (Section section : tree.sections()) {
        for (Token token : section.tokens()) {
          unused.remove(HandwheelLexer.VOCABULARY.getSymbolicName(token.getType()));
        }
      }
    }
    // The reference names these units in a table; no example needs them.
    assertThat(unused).isEqualTo(Set.of("UM", "UIN", "PERCENT"));
  }

  private static void visit(ParseTree node, Set<Class<?>> wanted) {
    wanted.remove(node.getClass());
    for (int i = 0; i < node.getChildCount(); i++) {
      visit(node.getChild(i), wanted);
    }
  }

  private static List<SyntaxTree> trees() {
    return Examples.files().entrySet().stream()
        .map(file -> SyntaxTree.parse(file.getKey(), file.getValue()))
        .toList();
  }

  @Test
  void everyPropertyOfEveryKindOccursInAnExample() {
    Map<OwnKind, Set<String>> shown = shownProperties();
    for (OwnKind kind : OwnKind.values()) {
      Set<String> properties = shown.getOrDefault(kind, Set.of());
      switch (kind) {
        case LIMITS ->
            assertThat(properties)
                .containsExactlyInAnyOrderElementsOf(
                    Arrays.stream(Limit.values()).map(Limit::word).toList());
        case SEVERITIES -> assertThat(shown).containsKey(kind);
        case MACHINE, VISE, PARALLELS, CUTTER, INSTRUMENT, FINDER, MATERIAL ->
            assertThat(properties).as(kind.word()).isEqualTo(properties(kind));
        default -> assertThat(properties(kind)).as(kind.word()).containsAll(properties);
      }
    }
    Set<String> ofPieces =
        shown.entrySet().stream()
            .filter(entry -> isPiece(entry.getKey()))
            .flatMap(entry -> entry.getValue().stream())
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(ofPieces).isEqualTo(properties(OwnKind.DRILL));
  }

  private static boolean isPiece(OwnKind kind) {
    return switch (kind) {
      case MACHINE, VISE, PARALLELS, CUTTER, INSTRUMENT, FINDER, LIMITS, SEVERITIES, MATERIAL ->
          false;
      default -> true;
    };
  }

  /** The properties a kind of thing may have: those its builder asks for. */
  private static Set<String> properties(OwnKind kind) {
    SyntaxTree tree = SyntaxTree.parse("x.shop", "own " + kind.word() + " thing");
    FileBuilder file = new FileBuilder(tree);
    Section section = tree.sections().get(tree.sections().size() - 1);
    Properties properties = new Properties(section, file.values(), file.problems(), "it");
    new ThingBuilder("thing", section.header(), properties).build(kind);
    return new TreeSet<>(properties.asked());
  }

  private static Map<OwnKind, Set<String>> shownProperties() {
    Map<OwnKind, Set<String>> shown = new LinkedHashMap<>();
    for (SyntaxTree tree : trees()) {
      for (Section section : tree.sections()) {
        if (section.kind() != SectionKind.OWN || !tree.path().startsWith("LANGUAGE.md")) {
          continue;
        }
        OwnHeaderContext header = (OwnHeaderContext) section.lines().get(0).header();
        String word = header.ownKind().getText().toUpperCase(Locale.ROOT).replace('-', '_');
        Set<String> names = shown.computeIfAbsent(OwnKind.valueOf(word), k -> new TreeSet<>());
        section.lines().stream()
            .filter(line -> line.statement() instanceof PropertyLineContext)
            .map(line -> ((PropertyLineContext) line.statement()).property().getText())
            .forEach(names::add);
      }
    }
    return shown;
  }

  @Test
  void theTablesNameEveryStatementAndEveryProperty() {
    String tables =
        Examples.reference()
            .lines()
            .filter(line -> line.startsWith("|"))
            .collect(Collectors.joining("\n"));
    Set<String> words = new TreeSet<>();
    for (OwnKind kind : OwnKind.values()) {
      if (kind != OwnKind.LIMITS && kind != OwnKind.SEVERITIES) {
        properties(kind).stream()
            .map(name -> name.replaceFirst("-[xyz]$", "-A"))
            .filter(name -> !isPiece(kind))
            .forEach(words::add);
      }
    }
    assertThat(missing(tables, words)).isEmpty();
  }

  private static Collection<String> missing(String text, Collection<String> words) {
    return words.stream().filter(word -> !text.contains("`" + word + "`")).toList();
  }

  @Test
  void theReservedWordsAreTheOnesListed() {
    String reference = Examples.reference();
    String list = reference.substring(reference.indexOf("## 13."), reference.indexOf("## 14."));
    Set<String> listed = new TreeSet<>();
    list.lines()
        .filter(line -> line.startsWith("|"))
        .forEach(
            line -> {
              Matcher word = Pattern.compile("`([a-z-]+)`").matcher(line);
              while (word.find()) {
                listed.add(word.group(1));
              }
            });
    assertThat(listed).hasSizeGreaterThan(30);
    for (String word : listed) {
      assertThat(isName(word)).as(word).isFalse();
    }
    Set<String> reserved = new TreeSet<>();
    for (int type = 1; type <= HandwheelLexer.VOCABULARY.getMaxTokenType(); type++) {
      String literal = HandwheelLexer.VOCABULARY.getLiteralName(type);
      if (literal != null && literal.matches("'[a-zA-Z-]{1,}'")) {
        String word = literal.substring(1, literal.length() - 1).toLowerCase(Locale.ROOT);
        if (!isName(word)) {
          reserved.add(word);
        }
      }
    }
    assertThat(listed).containsAll(reserved);
  }

  private static boolean isName(String word) {
    SyntaxTree tree = SyntaxTree.parse("x.plan", "units mm\nlet " + word + " = 3");
    return tree.sections().stream().allMatch(section -> section.problems().isEmpty());
  }

  /** The table of section 4, against the vector product. */
  @Test
  void theTableOfOrientationsIsRight() {
    Matcher row =
        Pattern.compile("\\| `(\\w+)` \\| `(\\w+)` \\| `(\\w+)` \\|").matcher(Examples.reference());
    int rows = 0;
    while (row.find()) {
      Face up = Face.valueOf(row.group(1).toUpperCase(Locale.ROOT));
      Face fixed = Face.valueOf(row.group(2).toUpperCase(Locale.ROOT));
      assertThat(fixed.cross(up).word()).as(row.group()).isEqualTo(row.group(3));
      rows++;
    }
    if (rows < 4) {
      fail("only " + rows + " rows read");
    }
  }
}
