package org.handwheel.ide.complete;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.ide.Fixtures;
import org.handwheel.ide.Fixtures.Marked;
import org.handwheel.ide.View;
import org.handwheel.ide.complete.Completion.Proposals;
import org.handwheel.syntax.Expectations;
import org.handwheel.syntax.Expectations.Expected;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.syntax.Vocabulary;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** What is proposed where: by grammar, by kind of name, and by the plan worked through. */
final class CompletionTests {
  private static final String HEAD =
      """
      language 1
      plan "Test"
        units mm
        use "shop/inch-mill.shop"

      part
        material gunmetal-LG2
        length 56 +-0.1
        width 30 +0/-0.05
        height 21 +0/-0.05
        datum A top, B back
        hole foot in top, dia 5.5, at (8, 15) from left front, through

      stock
        size 60 x 33.5 x 24.5
        cast front back top bottom
        sawn left right

      """;

  private static final String FIRST =
      """
      setup one
        deburr all edges
        hold in V80, up top, fixed back, on pair P6x10
        cutter FC40
        touch top with paper 0.05, zero z
        clean top at 0.4, at most 1.2
        deburr edges of top

      setup two
        hold in V80, up bottom, fixed back, on pair P6x10
      """;

  private static Proposals at(String marked) {
    Marked text = Marked.of(marked);
    return Completion.at(Fixtures.view("a.plan", text.text()), text.offset());
  }

  /** The labels at the end of a line of a setup behind the usual head. */
  private static List<String> labels(String line) {
    return labels(at(HEAD + line + "\n"));
  }

  private static List<String> labels(Proposals proposals) {
    return proposals.proposals().stream().map(Proposal::label).toList();
  }

  private static List<String> labels(Proposals proposals, Proposal.Kind kind) {
    return proposals.proposals().stream()
        .filter(proposal -> proposal.kind() == kind)
        .map(Proposal::label)
        .toList();
  }

  // ---- Names

  private static Proposal proposal(Proposals proposals, String label) {
    return proposals.proposals().stream()
        .filter(one -> one.label().equals(label))
        .findFirst()
        .orElseThrow();
  }

  private static String about(String marked, String label) {
    Marked text = Marked.of(marked);
    View view = Fixtures.view("a.plan", text.text());
    return Completion.about(view, proposal(Completion.at(view, text.offset()), label).topic())
        .markdown();
  }

  private static final String HOLES =
      HEAD.replace(
          "  hole foot",
          "  hole bore in top, dia 12 H7, at (28, 15), through\n"
              + "  hole oil in top, M6, thread 7, drill 12, at (40, 15)\n"
              + "  hole foot");

  /** The tapping drill of M6 is 5 mm; the reamer of 12 wants 11.75 to 11.87 (TM 1-420). */
  @Test
  void drillsAreProposedByWhatTheHoleAsksFor() {
    assertThat(labels(at(HOLES + "setup a\n  drill oil, $0\n"))).contains("no 9", "letter F");
    assertThat(labels(at(HOLES + "setup a\n  drill oil, 5$0\n"))).startsWith("5");
    assertThat(labels(at(HOLES + "setup a\n  drill bore, 11$0\n"))).startsWith("11.8");
    assertThat(labels(at(HOLES + "setup a\n  ream bore, 1$0\n"))).startsWith("12");
    assertThat(proposal(at(HOLES + "setup a\n  drill oil, 5$0\n"), "5").detail())
        .isEqualTo("5.00 mm (0.1969 in), tapping drill of M6, 77 % of thread");
  }

  @Test
  void drillsGoOnFromWhatIsWritten() {
    assertThat(labels(at(HOLES + "setup a\n  drill oil, no $0\n")))
        .startsWith("no 9", "no 8")
        .contains("no 80", "no 1")
        .allMatch(label -> label.startsWith("no "));
    assertThat(labels(at(HOLES + "setup a\n  drill oil, no 7$0\n")))
        .startsWith("no 7")
        .contains("no 70", "no 79")
        .doesNotContain("no 8");
    assertThat(labels(at(HOLES + "setup a\n  drill oil, letter $0\n")))
        .hasSize(26)
        .allMatch(label -> label.startsWith("letter "));
    assertThat(labels(at(HOLES + "setup a\n  drill oil, 1/4$0\n"))).containsExactly("1/4 in");
    assertThat(labels(at(HOLES + "setup a\n  drill oil, 13/$0\n")))
        .contains("13/64 in", "13/32 in");
    assertThat(labels(at(HOLES + "setup a\n  drill oil, 4 then 5$0\n"))).startsWith("5");
    assertThat(labels(at(HOLES.replace("units mm", "units in") + "setup a\n  drill oil, 1/4$0\n")))
        .contains("1/4");
    // a depth is no drill
    assertThat(labels(at(HOLES + "setup a\n  drill oil, depth 1$0\n"))).doesNotContain("1", "10");
  }

  @Test
  void theShopsOwnMaterialsComeFirst() {
    View view =
        Fixtures.view(
            "a.shop",
            "shop\n  units mm\nown material liner\n  like: gunmetal-LG2\n  speed-drill: 25 m/min\n");
    assertThat(view.checked().findings()).isEmpty();
    Marked text = Marked.of("shop\n  units mm\nown material liner\n  spe$0\n");
    assertThat(labels(Completion.at(Fixtures.view("a.shop", text.text()), text.offset())))
        .contains("speed-hss", "speed-drill", "like", "force");
  }

  @Test
  void threadsGoOnFromWhatIsWritten() {
    assertThat(labels(at(HEAD.replace("stock\n", "  hole a in top, M$0\nstock\n"))))
        .contains("M5", "M6", "M8x1");
    assertThat(labels(at(HEAD.replace("stock\n", "  hole a in top, M5$0\nstock\n"))))
        .startsWith("M5");
    assertThat(labels(at(HEAD.replace("stock\n", "  hole a in top, BSW 1/$0\nstock\n"))))
        .contains("BSW 1/4", "BSW 1/2")
        .allMatch(label -> label.startsWith("BSW 1/"));
    assertThat(labels(at(HEAD.replace("stock\n", "  hole a in top, BA $0\nstock\n"))))
        .contains("BA 2")
        .allMatch(label -> label.startsWith("BA "));
    assertThat(labels(at(HEAD.replace("stock\n", "  hole a in top, ME 3$0\nstock\n"))))
        .contains("ME 3/16-40");
    assertThat(labels(at(HEAD.replace("stock\n", "  hole a in top, UNC no $0\nstock\n"))))
        .contains("UNC no 10-24");
  }

  /** 12 H7 is 12.000 to 12.018 (ISO 286-2). */
  @Test
  void fitsHaveTheirLimitsAndEachKindItsDocumentation() {
    String fit = HEAD.replace("stock\n", "  hole a in top, dia 12 H$0, through\nstock\n");
    assertThat(labels(at(fit)).stream().filter(label -> label.startsWith("H")))
        .startsWith("H7", "H8");
    assertThat(proposal(at(fit), "H7").detail()).startsWith("12.00..12.018 mm");
    assertThat(about(fit, "H7")).contains("Limits", "0.4724", "Drill before reaming");
    String thread = HEAD.replace("stock\n", "  hole a in top, M6$0\nstock\n");
    assertThat(proposal(at(thread), "M6").detail())
        .isEqualTo("6.00 mm (0.2362 in), pitch 1.00 mm (39.4 thou), tapping drill 5 mm");
    assertThat(about(thread, "M6"))
        .contains("77 per cent of thread", "Clearance hole, normal: 6.60 mm (0.2598 in)")
        .contains("Counterbore for a socket head", "Countersink for a flat head", "Blind hole");
    assertThat(about(HOLES + "setup a\n  drill oil, no 7$0\n", "no 7"))
        .contains("5.105 mm (0.201 in)", "long at 118 deg", "UNC 1/4-20");
    assertThat(about(HEAD.replace("gunmetal-LG2", "gun$0"), "gunmetal-LG2"))
        .contains("Cutting speed, drill", "m/min", "ft/min", "Feed a tooth", "Take care");
  }

  @Test
  void namesAreOfTheFittingKind() {
    assertThat(labels("setup a\n  hold in $0")).containsExactly("V80");
    assertThat(labels("setup a\n  cutter $0")).contains("EM16", "FC40").doesNotContain("V80");
    assertThat(labels("setup a\n  hold in V80, on pair $0")).contains("P6x10", "P3x10");
    assertThat(labels("setup a\n  measure height with $0"))
        .contains("mic25")
        .doesNotContain("FC40");
    assertThat(labels("setup a\n  drill $0")).contains("foot");
    assertThat(labels("setup a\n\nlog\n  in $0")).containsExactly("a");
    assertThat(labels(at("part\n  material gun$0\n"))).contains("gunmetal-LG2");
  }

  @Test
  void namesSayWhatTheyAre() {
    Proposals cutters = at(HEAD + "setup a\n  cutter $0\n");
    assertThat(cutters.proposals())
        .anySatisfy(
            proposal -> {
              assertThat(proposal.label()).isEqualTo("EM16");
              assertThat(proposal.detail()).isEqualTo("16.00 mm (0.6299 in) end mill, 4 teeth");
            });
    View view = Fixtures.view("a.plan", HEAD);
    assertThat(Completion.about(view, "thing cutter EM16").markdown()).contains("flute: 32");
    assertThat(Completion.about(view, "material gunmetal-LG2").markdown())
        .contains("Cutting fluid");
    assertThat(Completion.about(view, "word cutClause leaving").markdown())
        .contains("finishing pass");
    assertThat(Completion.about(view, "word nothing here").isEmpty()).isTrue();
  }

  @Test
  void theWholeWordAtTheCursorIsReplaced() {
    Marked text = Marked.of("part\n  material gunm$0etal-L\n");
    Proposals proposals = Completion.at(Fixtures.view("a.plan", text.text()), text.offset());
    assertThat(text.text().substring(proposals.start(), proposals.end())).isEqualTo("gunmetal-L");
    Marked unit = Marked.of("part\n  length 10m$0\n");
    Proposals units = Completion.at(Fixtures.view("a.plan", unit.text()), unit.offset());
    assertThat(unit.text().substring(units.start(), units.end())).isEqualTo("m");
    assertThat(labels(units)).contains("mm");
  }

  @Test
  void nothingIsProposedWhereNothingFits() {
    assertThat(labels("setup a\n  clean top at 0.4$0")).isEmpty();
    assertThat(labels("setup a\n  clean top top $0")).isEmpty();
    assertThat(labels("setup a\n  note \"clean $0\"")).isEmpty();
    assertThat(labels("setup a\n  wipe jaws # so $0")).isEmpty();
  }

  // ---- Units, values

  @Test
  void unitsFollowNumbers() {
    assertThat(labels("setup a\n  clean top at 0.4 $0")).startsWith("mm", "in", "thou");
    assertThat(labels("setup a\n  cutter FC40, speed 500 $0")).startsWith("rpm", "m/min");
    assertThat(labels(at("units $0\n"))).containsExactly("mm", "in", "thou");
  }

  @Test
  void theAllowanceIsWhatIsUsual() {
    assertThat(labels("setup a\n  rough top to height leaving $0"))
        .startsWith("0.25 mm", "10 thou");
  }

  /**
   * 24.5 less the skims leaves at most 24.4 mm or so; 21 less half the tolerance and 0.25 are left:
   * the passes are equal and none is over 20 thou.
   */
  @Test
  void passesAreSplitEvenly() {
    Proposals proposals = at(HEAD + FIRST + "  rough bottom to height leaving 0.25, pass $0\n");
    Proposal best = proposals.proposals().get(0);
    double depth = Double.parseDouble(best.label());
    int count = Integer.parseInt(best.detail().replaceAll(".*, (\\d+) equal passes for .*", "$1"));
    double removal = Double.parseDouble(best.detail().replaceAll(".* for ([0-9.]+) mm.*", "$1"));
    assertThat(depth).isLessThanOrEqualTo(0.508);
    assertThat(depth * count).isGreaterThanOrEqualTo(removal - 1e-9);
    assertThat(depth * count).isLessThan(removal + 0.01 * count);
    assertThat(0.508 * (count - 1)).isLessThan(removal);
  }

  @Test
  void theSizeOfTheFaceComesFirstAfterTo() {
    assertThat(labels(second("  rough bottom to $0"))).startsWith("height");
    assertThat(labels(second("  rough left to $0"))).startsWith("length");
  }

  private static Proposals second(String line) {
    return at(HEAD + FIRST + line + "\n");
  }

  /** The stock is 33.5 wide, give or take 0.3: no piece is narrower than 33.2. */
  @Test
  void aSpacerIsAsWideAsTheWork() {
    assertThat(labels("setup a\n  hold in V80, up top, fixed back, spacer $0")).startsWith("33.2");
  }

  // ---- Faces and places

  @Test
  void theFaceUnderneathIsNotCut() {
    List<String> faces = labels(second("  clean $0"), Proposal.Kind.FACE);
    assertThat(faces).startsWith("bottom").endsWith("right").doesNotContain("top");
    assertThat(labels(second("  finish $0"), Proposal.Kind.FACE)).doesNotContain("top");
  }

  @Test
  void milledFacesComeFirstOnTheFixedJaw() {
    List<String> faces =
        labels(
            at(HEAD + FIRST + "\nsetup three\n  hold in V80, up back, fixed $0\n"),
            Proposal.Kind.FACE);
    assertThat(faces).startsWith("top").doesNotContain("back", "front");
  }

  @Test
  void burredFacesComeFirstWhenDeburring() {
    String plan = HEAD + FIRST.substring(0, FIRST.indexOf("  deburr edges of top"));
    assertThat(labels(at(plan + "  deburr edges of $0\n"), Proposal.Kind.FACE)).startsWith("top");
  }

  /** The grammar takes more, to be able to say where it belongs. */
  @Test
  void clausesAreThoseOfTheirLine() {
    String slot = "  slot oil in top, at (30, 15), width 6, length 20, depth 3\n\nstock";
    String plan = HEAD.replace("\nstock", slot) + FIRST;
    assertThat(labels(at(plan + "  slot oil $0\n")))
        .extracting(label -> label.split("[ \u2026]", 2)[0])
        .containsExactlyInAnyOrder("with", "leaving", "pass", "cusp", "conventional", "climb");
    assertThat(labels(at(plan + "  slot $0\n"), Proposal.Kind.FACE)).isEmpty();
    assertThat(labels(at(HEAD.replace("\nstock", "  slot oil $0\n\nstock"))))
        .contains("in …", "width …")
        .noneMatch(label -> label.startsWith("with ") || label.startsWith("cusp"));
    assertThat(labels(at(plan + "  clean bottom $0\n")))
        .contains("at …", "at most …")
        .doesNotContain("leaving …", "pass …", "one pass");
    assertThat(labels(at(plan + "  finish bottom to height $0\n")))
        .contains("pass …", "climb")
        .doesNotContain("leaving …", "at …", "at most …");
    assertThat(labels(at(plan + "  finish bottom to $0\n"))).containsOnlyOnce("height");
  }

  /** With the bottom up and the back at its jaw, the left looks to the operator's right. */
  @Test
  void anEdgeIsFoundFromWhereItLooks() {
    assertThat(labels(at(HEAD + FIRST + "  find left from $0\n")))
        .startsWith("operator-right")
        .doesNotContain("centre");
    assertThat(labels(at(HEAD + FIRST + "  find front from $0\n"))).startsWith("operator-front");
  }

  @Test
  void placesFollowAt() {
    assertThat(labels("setup a\n  hold in V80, stop at $0"))
        .contains("operator-left", "operator-right", "centre");
  }

  // ---- Whole lines

  @Test
  void theNextLineIsProposed() {
    String plan = HEAD + FIRST.substring(0, FIRST.indexOf("  deburr edges of top"));
    assertThat(labels(at(plan + "  $0\n"))).startsWith("deburr edges of top");
    plan = HEAD + FIRST.substring(0, FIRST.indexOf("  touch top"));
    assertThat(labels(at(plan + "  $0\n"), Proposal.Kind.STATEMENT))
        .startsWith("touch top with paper 0.05, zero z");
    assertThat(labels(second("  $0"), Proposal.Kind.STATEMENT))
        .contains("seat tapped, both parallels tight", "touch bottom with paper 0.05, zero z")
        .anyMatch(line -> line.startsWith("rough bottom to height leaving 0.25, pass 0."));
    assertThat(
            labels(
                second(
                    "  touch bottom with paper 0.05, zero z\n  rough bottom to height leaving 0.25, pass"
                        + " 0.5\n  deburr edges of bottom\n  $0"),
                Proposal.Kind.STATEMENT))
        .contains("measure height with mic25", "finish bottom to height");
  }

  @Test
  void theNextHoldIsProposed() {
    String one = HEAD + FIRST.substring(0, FIRST.indexOf("setup two"));
    List<String> first = labels(at(HEAD + "setup one\n  $0\n"));
    assertThat(first).startsWith("deburr all edges");
    assertThat(first.get(1)).startsWith("hold in V80, up top, fixed back, on pair P6x1");
    assertThat(labels(at(one + "setup two\n  $0\n")))
        .first()
        .asString()
        .startsWith("hold in V80, up back, fixed top, on ")
        .endsWith(", bar 8 at mid-grip");
  }

  /** Whole lines are what they say: put into the plan, they can be read and are not misplaced. */
  @Test
  void wholeLinesCanBeRead() {
    for (String place : List.of(FIRST, FIRST + "  touch bottom with paper 0.05, zero z\n")) {
      String text = HEAD + place + "  ";
      View view = Fixtures.view("a.plan", text);
      for (Proposal proposal : Completion.at(view, text.length()).proposals()) {
        if (proposal.kind() == Proposal.Kind.STATEMENT) {
          View after = Fixtures.view("a.plan", text + proposal.text() + "\n");
          assertThat(errors(after)).as(proposal.label()).isSubsetOf(errors(view));
        }
      }
    }
  }

  private static Set<String> errors(View view) {
    return view.checked().findings().stream()
        .filter(finding -> finding.severity() == org.handwheel.syntax.Severity.ERROR)
        .filter(
            finding ->
                !List.of("short-of-size", "touch-missing")
                    .contains(finding.rule())) // lines to come
        .map(finding -> finding.rule() + finding.message())
        .collect(Collectors.toSet());
  }

  // ---- Commas

  /** The text with the only proposal of a label put in, comma and all. */
  private static String applied(String marked, String label) {
    Marked text = Marked.of(marked);
    Proposals proposals = Completion.at(Fixtures.view("a.plan", text.text()), text.offset());
    Proposal proposal =
        proposals.proposals().stream()
            .filter(one -> one.label().equals(label))
            .findFirst()
            .orElseThrow(() -> new AssertionError(label + " is not in " + labels(proposals)));
    return text.text().substring(0, proposals.joint())
        + proposal.joint()
        + text.text().substring(proposals.joint(), proposals.start())
        + proposal.text()
        + text.text().substring(proposals.end());
  }

  @Test
  void aListThatNeedsCommasGetsThem() {
    String plan = HEAD + "inspect\n";
    assertThat(applied(plan + "  check height $0", "width")).endsWith("  check height, width");
    assertThat(applied(plan + "  check height fo$0", "foot")).endsWith("  check height, foot");
    assertThat(applied(plan + "  check height, $0", "width")).endsWith("  check height, width");
    assertThat(labels(at(plan + "  check height, foot $0"))).doesNotContain("height", "foot");
    // Where commas may be left out, none is put in.
    assertThat(applied(HEAD + "setup a\n  hold in V80 $0", "on bed"))
        .endsWith("hold in V80 on bed");
    String caliper = "own instrument C\n  range: ";
    assertThat(applied(caliper + "0 $0", "150 mm")).endsWith("range: 0, 150 mm");
    assertThat(applied(caliper + "0, $0", "150 mm")).endsWith("range: 0, 150 mm");
    assertThat(applied(caliper + "$0", "0, 150 mm")).endsWith("range: 0, 150 mm");
    assertThat(labels(at(caliper + "0, 100 $0"))).doesNotContain("150 mm");
    assertThat(labels(at("own vise V\n  opening: 60 $0"))).doesNotContain("70");
    assertThat(labels(at("own cutter C\n  kind: end-mill $0"))).doesNotContain("face-mill");
  }

  // ---- Shops, comments, files

  @Test
  void propertiesAreThoseOfTheKind() {
    Proposals vise = at("own vise V\n  $0\n");
    assertThat(labels(vise, Proposal.Kind.PROPERTY))
        .startsWith("jaw-width", "jaw-depth", "opening")
        .doesNotContain("flute");
    assertThat(labels(at("own vise V\n  jaw-width: 80\n  $0\n"), Proposal.Kind.PROPERTY))
        .startsWith("jaw-depth")
        .endsWith("jaw-width");
    assertThat(labels(at("own limits L\n  $0\n"), Proposal.Kind.PROPERTY)).contains("heavy-pass");
    assertThat(labels(at("own cutter C\n  kind: $0\n"))).contains("end-mill", "face-mill");
    assertThat(labels(at("own severities S\n  $0\n"))).contains("overcut");
    assertThat(labels(at("own severities S\n  overcut: $0\n"))).contains("off", "warning");
  }

  @Test
  void rulesFollowIgnore() {
    assertThat(labels(at("part\n  length 5 # ignore $0\n"))).contains("overcut", "heavy-pass");
    assertThat(labels(at("part\n  length 5 # ig$0\n"))).containsExactly("ignore");
  }

  @Test
  void usedFilesAreThoseOfTheWorkspace() {
    assertThat(labels(at("use \"$0\"\n"))).contains("shop/inch-mill.shop");
    Marked text = Marked.of("use \"$0\"\n");
    View view = Fixtures.view("plans/a.plan", text.text());
    assertThat(labels(Completion.at(view, text.offset(), () -> List.of("b.shop", "shop/a.shop"))))
        .containsExactly("../b.shop", "../shop/a.shop");
    Proposals bare = at("use $0\n");
    assertThat(labels(bare)).contains("shop/inch-mill.shop");
    assertThat(applied("use $0", "shop/inch-mill.shop")).isEqualTo("use \"shop/inch-mill.shop\"");
  }

  @Test
  void sectionsAreOfTheKindOfFile() {
    Set<String> plan = Set.copyOf(firstWords(at("plan \"a\"\n$0\n"), Proposal.Kind.SECTION));
    assertThat(plan).containsExactlyInAnyOrder("plan", "part", "stock", "setup", "log", "inspect");
    Marked shop = Marked.of("shop \"a\"\n$0\n");
    Proposals proposals = Completion.at(Fixtures.view("a.shop", shop.text()), shop.offset());
    assertThat(firstWords(proposals, Proposal.Kind.SECTION)).containsOnly("shop", "own");
  }

  @Test
  void snippetsHaveStopsAndAPlainForm() {
    Proposal hold =
        at(HEAD + "setup a\n  ho$0\n").proposals().stream()
            .filter(proposal -> proposal.label().startsWith("hold in"))
            .filter(proposal -> proposal.kind() == Proposal.Kind.KEYWORD)
            .findFirst()
            .orElseThrow();
    assertThat(hold.snippet())
        .isEqualTo("hold in ${1:V80}, up ${2:top}, fixed ${3:back}, on pair ${4:P6x10}");
    assertThat(hold.text()).isEqualTo("hold in");
  }

  // ---- The law: the grammar's words and no others

  @TestFactory
  Stream<DynamicTest> keywordsAreThoseOfTheGrammar() {
    return Fixtures.examples().stream()
        .map(file -> DynamicTest.dynamicTest(Fixtures.path(file), () -> checkAllPlaces(file)));
  }

  private static void checkAllPlaces(Path file) {
    String text = Fixtures.read(file);
    View view = Fixtures.view(Fixtures.path(file), text);
    int places = 0;
    for (Section section : view.tree().sections()) {
      for (Token token : section.tokens()) {
        if (token.getChannel() != Token.DEFAULT_CHANNEL || token.getType() == Token.EOF) {
          continue;
        }
        if (section.kind() == SectionKind.OWN && token.getType() != HandwheelLexer.NL) {
          continue; // properties have words of their own
        }
        int offset = view.tree().base(section) + section.origin(token).start();
        if (offset > 0 && Character.isLetterOrDigit(text.charAt(offset - 1))) {
          continue;
        }
        checkPlace(view, offset);
        places++;
      }
    }
    assertThat(places).isPositive();
  }

  private static void checkPlace(View view, int offset) {
    Slot slot = Slot.at(view.tree(), offset);
    if (slot.where() != Slot.Where.CODE || !slot.isReadable()) {
      return;
    }
    Set<String> expected = new TreeSet<>();
    for (Expected next : Expectations.after(slot.before()).expected()) {
      List<Integer> rules = next.rules();
      boolean word =
          rules.stream()
              .noneMatch(
                  rule ->
                      rule == HandwheelParser.RULE_name
                          || rule == HandwheelParser.RULE_startWord
                          || rule == HandwheelParser.RULE_verbWord
                          || rule == HandwheelParser.RULE_clauseWord
                          || rule == HandwheelParser.RULE_face
                          || rule == HandwheelParser.RULE_place
                          || rule == HandwheelParser.RULE_operatorPlace
                          || rule == HandwheelParser.RULE_thread
                          || rule == HandwheelParser.RULE_unit
                          || rule == HandwheelParser.RULE_lengthUnit);
      String keyword = Vocabulary.keyword(next.tokenType());
      boolean allowed =
          !slot.before().isEmpty()
              || rules.contains(HandwheelParser.RULE_header)
              || SectionWords.of(slot.section().kind()).contains(next.tokenType());
      allowed = allowed && SectionWords.fits(slot.section().kind(), slot.firstType(), next);
      boolean header = rules.contains(HandwheelParser.RULE_header) && slot.before().isEmpty();
      if (word && !keyword.isEmpty() && allowed) {
        boolean ofFile =
            !header
                || SectionWords.headers(view.tree()).stream()
                    .anyMatch(kind -> kind.word().equals(keyword));
        if (ofFile) {
          expected.add(keyword);
        }
      }
    }
    Proposals proposals = Completion.at(view, offset);
    Set<String> offered = new TreeSet<>(firstWords(proposals, Proposal.Kind.KEYWORD));
    offered.addAll(firstWords(proposals, Proposal.Kind.SECTION));
    SyntaxTree tree = view.tree();
    assertThat(offered)
        .as("line %s, offset %s", tree.source().lineAt(offset) + 1, offset)
        .isEqualTo(expected);
  }

  private static Set<String> firstWords(Proposals proposals, Proposal.Kind kind) {
    return proposals.proposals().stream()
        .filter(proposal -> proposal.kind() == kind && proposal.joint().isEmpty())
        .map(Proposal::label)
        .map(label -> label.split("[ \u2026]", 2)[0])
        .collect(Collectors.toCollection(TreeSet::new));
  }
}
