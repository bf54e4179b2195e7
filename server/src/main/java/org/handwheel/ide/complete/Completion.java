package org.handwheel.ide.complete;

import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.ide.Explanation;
import org.handwheel.ide.View;
import org.handwheel.model.Face;
import org.handwheel.model.OwnKind;
import org.handwheel.model.OwnProperties;
import org.handwheel.model.OwnProperties.Property;
import org.handwheel.model.Owned;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checker;
import org.handwheel.rules.Rules;
import org.handwheel.syntax.Expectations.Expected;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.syntax.Vocabulary;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.Orientation;
import org.jspecify.annotations.Nullable;

/** What may be written at a cursor. */
public final class Completion {
  static final int KEYWORD = 40;
  static final int UNIT = 10;
  private static final int HEADER = 300;
  static final int AGAIN = 500;

  /** Rules under which a keyword is a name and not itself. */
  private static final Set<Integer> NAME_RULES =
      Set.of(
          HandwheelParser.RULE_name,
          HandwheelParser.RULE_soft,
          HandwheelParser.RULE_startWord,
          HandwheelParser.RULE_verbWord,
          HandwheelParser.RULE_clauseWord);

  private final View view;
  private final Slot slot;
  private final Situation now;
  private final Map<String, Proposal> proposals = new LinkedHashMap<>();

  private Completion(View view, Slot slot) {
    this.view = view;
    this.slot = slot;
    this.now = Situation.at(view, slot);
  }

  /**
   * The proposals at a cursor.
   *
   * @param start where the word they replace starts in the file
   * @param end where it ends
   * @param proposals the best first
   * @param extent whether others could be proposed if less was typed
   * @param joint where a proposal's joint is written: behind the word before
   */
  public record Proposals(int start, int end, List<Proposal> proposals, Extent extent, int joint) {
    public Proposals {
      proposals = List.copyOf(proposals);
    }

    Proposals(int start, int end, List<Proposal> proposals) {
      this(start, end, proposals, Extent.ALL, start);
    }
  }

  /** How much of what may stand at a place is proposed. */
  public enum Extent {
    /** All, whatever of the word is typed already. */
    ALL,
    /** What begins with the letters typed so far. */
    NARROWED
  }

  /** What may be written at an offset of the view's file; the shops are those the view knows. */
  public static Proposals at(View view, int offset) {
    return at(view, offset, () -> shops(view.workspace()));
  }

  /** The workspace paths of all shop files. */
  public static List<String> shops(Workspace workspace) {
    return workspace.files().values().stream()
        .filter(Checker::isShop)
        .map(SyntaxTree::path)
        .toList();
  }

  /**
   * What may be written at an offset of the view's file.
   *
   * @param shops the workspace paths of the shop files there are, asked for where one is named
   */
  public static Proposals at(View view, int offset, Supplier<List<String>> shops) {
    return size(view, SizeWord.drill(view, offset), HandwheelParser.RULE_drillSize)
        .or(() -> size(view, SizeWord.thread(view, offset), HandwheelParser.RULE_thread))
        .orElseGet(() -> word(view, offset, shops));
  }

  /** Drills or threads for one that is half written, if one may stand there. */
  private static Optional<Proposals> size(View view, @Nullable SizeWord word, int rule) {
    if (word == null) {
      return Optional.empty();
    }
    Slot slot = Slot.at(view.tree(), word.start());
    boolean fits =
        slot.where() == Slot.Where.CODE
            && slot.start() == word.start()
            && slot.isReadable()
            && slot.expectations().expected().stream()
                .anyMatch(expected -> expected.rules().contains(rule));
    if (!fits) {
      return Optional.empty();
    }
    Situation now = Situation.at(view, slot);
    List<Proposal> proposals =
        rule == HandwheelParser.RULE_thread
            ? new NameProposals(now).of(List.of(rule))
            : new DrillProposals(slot, now).all();
    String written =
        view.tree().source().text().substring(word.start(), word.end()).replaceAll("\\s+", " ");
    return Optional.of(
        new Proposals(
            word.start(),
            word.end(),
            proposals.stream()
                .filter(
                    proposal ->
                        proposal.label().regionMatches(true, 0, written, 0, written.length()))
                .sorted(Comparator.comparingInt(Proposal::rank).thenComparing(Proposal::label))
                .toList(),
            Extent.NARROWED,
            word.start()));
  }

  private static Proposals word(View view, int offset, Supplier<List<String>> shops) {
    Slot slot = Slot.at(view.tree(), offset);
    Completion completion = new Completion(view, slot);
    switch (slot.where()) {
      case CODE -> {
        completion.code();
        if (slot.type(1) == HandwheelLexer.USE && slot.before().size() == 1) {
          completion.addAll(FileProposals.quoted(view, shops.get()));
        }
      }
      case COMMENT -> {
        return IgnoreProposals.at(view.tree().source(), offset);
      }
      case STRING -> {
        return slot.type(1) == HandwheelLexer.USE
            ? FileProposals.at(view, offset, shops.get())
            : new Proposals(offset, offset, List.of());
      }
      case NOTHING -> {
        return new Proposals(offset, offset, List.of());
      }
    }
    return new Proposals(slot.start(), slot.end(), completion.sorted(), Extent.ALL, slot.joint());
  }

  /** What a proposal's topic means, in a few sentences, if there is something to say. */
  public static Explanation about(View view, String topic) {
    String[] parts = topic.split(" ", 3);
    if (parts.length < 2) {
      return Explanation.NONE;
    }
    return switch (parts[0]) {
      case "word" -> Forms.about(topic.substring("word ".length()));
      case "thing" -> parts.length == 3 ? Things.about(view, parts[1], parts[2]) : Explanation.NONE;
      case "material" -> Things.material(view, parts[1]);
      case "thread" -> Things.thread(view, topic.substring("thread ".length()));
      case "drill" -> Things.drill(view, topic.substring("drill ".length()));
      case "fit" -> parts.length == 3 ? Things.fit(view, parts[1], parts[2]) : Explanation.NONE;
      case "rule" ->
          Optional.ofNullable(Rules.severities().get(parts[1]))
              .map(severity -> Explanation.of("`" + parts[1] + "`: usually " + words(severity)))
              .orElse(Explanation.NONE);
      default -> Explanation.NONE;
    };
  }

  private static String words(Severity severity) {
    return switch (severity) {
      case ERROR -> "an error";
      case WARNING -> "a warning";
      case INFO -> "an information";
      case OFF -> "off";
    };
  }

  private List<Proposal> sorted() {
    return proposals.values().stream()
        .sorted(Comparator.comparingInt(Proposal::rank).thenComparing(Proposal::label))
        .toList();
  }

  private void add(Proposal proposal) {
    if (proposal.kind() == Proposal.Kind.NAME
        && proposals.containsKey(Proposal.Kind.VALUE + " " + proposal.label())) {
      return; // `to height` alone is the size to make, not the nominal
    }
    proposals.remove(
        proposal.kind() == Proposal.Kind.VALUE ? Proposal.Kind.NAME + " " + proposal.label() : "");
    proposals.putIfAbsent(proposal.kind() + " " + proposal.label(), proposal);
  }

  private void addAll(List<Proposal> list) {
    list.forEach(this::add);
  }

  private void code() {
    if (!slot.isReadable()) {
      return;
    }
    if (slot.before().isEmpty()) {
      addAll(new StatementProposals(slot, now).all());
      addAll(new PropertyProposals(slot).words());
    }
    expected(slot.expectations().expected());
    if (slot.section().kind() == SectionKind.OWN && slot.has(HandwheelLexer.COLON)) {
      addAll(new PropertyProposals(slot).values());
    }
    if (slot.firstType() == HandwheelLexer.CHECK && slot.wantsComma()) {
      furtherChecks();
    }
  }

  /** What else is to be checked, with the comma that has to stand before it. */
  private void furtherChecks() {
    Set<String> given =
        slot.before().stream()
            .map(token -> token.getText().toLowerCase(Locale.ROOT))
            .collect(Collectors.toSet());
    Completion behind = new Completion(view, slot.behindComma());
    behind.expected(behind.slot.expectations().expected());
    behind.proposals.values().stream()
        .filter(proposal -> !given.contains(proposal.label().toLowerCase(Locale.ROOT)))
        .forEach(proposal -> add(proposal.behindComma()));
  }

  private void expected(List<Expected> all) {
    boolean number = false;
    for (Expected expected : all) {
      List<Integer> rules = expected.rules();
      int type = expected.tokenType();
      if (isName(expected)) {
        if (type == HandwheelLexer.ID) {
          names(rules);
        }
      } else if (rules.contains(HandwheelParser.RULE_face)) {
        // A face is cut by other lines than a feature; the grammar takes one to be able to say so.
        if (!rules.contains(HandwheelParser.RULE_featureTarget)) {
          addAll(new FaceProposals(slot, now).of(rules));
        }
      } else if (isPlace(expected)) {
        place(type);
      } else if (rules.contains(HandwheelParser.RULE_unit)
          || rules.contains(HandwheelParser.RULE_lengthUnit)) {
        units(rules, slot.before());
      } else if (type == HandwheelLexer.INT) {
        number = true;
      } else if (type == HandwheelLexer.NUMBER_DRILL || type == HandwheelLexer.LETTER_DRILL) {
        addAll(new DrillProposals(slot, now).all());
      } else if (rules.contains(HandwheelParser.RULE_thread)) {
        addAll(new NameProposals(now).of(rules));
      } else if (!Vocabulary.keyword(type).isEmpty()) {
        keyword(expected);
      }
    }
    if (number) {
      addAll(new ValueProposals(slot, now).all());
    }
  }

  /** A place at the machine; an edge is found from where its face looks, which comes first. */
  private void place(int type) {
    String word = Vocabulary.keyword(type);
    boolean finds = slot.firstType() == HandwheelLexer.FIND;
    if (finds && type == HandwheelLexer.CENTRE) {
      return;
    }
    Orientation lies = now.orientation();
    Optional<Face> face = finds ? Situation.face(slot.before().get(1)) : Optional.empty();
    boolean looksThere =
        lies != null
            && face.isPresent()
            && lies.directionOf(face.get()).name().replace('_', '-').equalsIgnoreCase(word);
    add(
        Proposal.plain(
            word,
            Proposal.Kind.PLACE,
            looksThere ? "where it looks here" : "",
            looksThere ? KEYWORD - 1 : KEYWORD));
  }

  private static boolean isName(Expected expected) {
    return expected.rules().stream().anyMatch(NAME_RULES::contains)
        || expected.tokenType() == HandwheelLexer.ID;
  }

  private static boolean isPlace(Expected expected) {
    return expected.rules().contains(HandwheelParser.RULE_place)
        || expected.rules().contains(HandwheelParser.RULE_operatorPlace);
  }

  private void names(List<Integer> rules) {
    if (slot.before().isEmpty()) {
      return; // the first word names nothing
    }
    addAll(
        rules.contains(HandwheelParser.RULE_fit)
            ? new FitProposals(slot, now).all()
            : new NameProposals(now).of(rules));
  }

  // ---- Keywords
  // ------------------------------------------------------------------------------------

  private void keyword(Expected expected) {
    boolean first = slot.before().isEmpty();
    boolean header = expected.rules().contains(HandwheelParser.RULE_header);
    if (first && !isAllowedHere(expected, header)) {
      return;
    }
    if (!SectionWords.fits(slot.section().kind(), slot.firstType(), expected)) {
      return;
    }
    if (slot.section().kind() == SectionKind.OWN
        && expected.rules().contains(HandwheelParser.RULE_value)) {
      return; // a property's own words are proposed instead
    }
    int rank = first && header ? HEADER : KEYWORD;
    if (!first && slot.has(expected.tokenType()) && isClause(expected)) {
      rank += AGAIN;
    }
    Proposal.Kind kind = first && header ? Proposal.Kind.SECTION : Proposal.Kind.KEYWORD;
    Map<String, String> fillings = fillings();
    List<Forms.Form> forms =
        expected.rules().contains(HandwheelParser.RULE_ownKind)
            ? List.of(ownForm(Vocabulary.keyword(expected.tokenType())))
            : Forms.of(expected, slot.before());
    for (Forms.Form form : forms) {
      String plain = Snippets.plain(form.text());
      String label = label(form.text());
      add(
          new Proposal(
              label,
              kind,
              plain.contains("\n") ? Vocabulary.keyword(expected.tokenType()) : plain,
              Snippets.snippet(form.text(), fillings),
              "",
              Forms.topic(expected),
              rank + proposals.size()));
    }
  }

  /** Whether the section, or the file, may have a line that starts so. */
  private boolean isAllowedHere(Expected expected, boolean header) {
    if (header) {
      return SectionWords.headers(view.tree()).stream()
          .anyMatch(kind -> kind.word().equals(Vocabulary.keyword(expected.tokenType())));
    }
    return SectionWords.of(slot.section().kind()).contains(expected.tokenType());
  }

  private static boolean isClause(Expected expected) {
    return Forms.clause(expected).endsWith("Clause");
  }

  /** The form's words, with what is to be filled in as dots. */
  private static String label(String form) {
    String firstLine = form.split("\n", 2)[0];
    return firstLine.replaceAll("[\"]?\\{[^}]*}[\"]?", "\u2026").strip();
  }

  private static Forms.Form ownForm(String word) {
    StringBuilder form = new StringBuilder(word).append(" {name}");
    for (OwnKind kind : OwnKind.values()) {
      if (kind.word().equals(word)) {
        for (Property property : OwnProperties.of(kind)) {
          if (property.need() == OwnProperties.Need.REQUIRED) {
            form.append("\n  ").append(property.word()).append(": {").append(property.usual());
            form.append('}');
          }
        }
      }
    }
    return new Forms.Form(form.toString(), "");
  }

  /** What usually stands in a form's places, as far as the plan and the shop tell. */
  private Map<String, String> fillings() {
    Map<String, String> fillings = new HashMap<>();
    first(fillings, "vise", Owned.Vise.class);
    first(fillings, "parallels", Owned.Parallels.class);
    first(fillings, "cutter", Owned.Cutter.class);
    first(fillings, "instrument", Owned.Instrument.class);
    first(fillings, "finder", Owned.Finder.class);
    Face up = now.orientation() == null ? Face.TOP : now.orientation().up();
    Face fixed = now.orientation() == null ? Face.BACK : now.orientation().back();
    fillings.put("face", up.word());
    fillings.put("faces", up.word());
    fillings.put("up", up.word());
    fillings.put("fixed", fixed.word());
    fillings.put("axis", "z");
    fillings.put("axes", "y z");
    fillings.put("place", "operator-left");
    fillings.put("side", "left");
    fillings.put("dimension", up.dimension().word());
    fillings.put("allowance", now.number(new CutSizes(now).allowance()));
    fillings.put("thickness", now.number(Length.mm("0.05")));
    fillings.put("units", "mm");
    fillings.put("rest", "table");
    return fillings;
  }

  private <T extends Owned> void first(Map<String, String> fillings, String place, Class<T> type) {
    now.shop().all(type).stream().findFirst().ifPresent(thing -> fillings.put(place, thing.name()));
  }

  // ---- Units
  // ---------------------------------------------------------------------------------------

  private void units(List<Integer> rules, List<Token> before) {
    if (rules.contains(HandwheelParser.RULE_speedValue)) {
      unitWords("rpm", "m/min", "ft/min");
    } else if (rules.contains(HandwheelParser.RULE_feedValue)) {
      unitWords("mm/tooth", "in/tooth", "thou/tooth", "mm/rev", "in/rev", "mm/min", "in/min");
    } else if (rules.contains(HandwheelParser.RULE_angleValue)) {
      unitWords("deg");
    } else if (rules.contains(HandwheelParser.RULE_roughness)) {
      unitWords("um", "uin");
    } else if (rules.contains(HandwheelParser.RULE_value)) {
      propertyUnits(before);
    } else if (before.size() == 1 && before.get(0).getType() == HandwheelLexer.UNITS) {
      unitWords("mm", "in", "thou");
    } else {
      lengthUnits();
    }
  }

  private void lengthUnits() {
    if (now.units() == LengthUnit.MM) {
      unitWords("mm", "in", "thou", "um", "tenths");
    } else {
      unitWords("in", "thou", "mm", "tenths", "um");
    }
  }

  private void propertyUnits(List<Token> before) {
    String property = before.isEmpty() ? "" : before.get(0).getText().toLowerCase(Locale.ROOT);
    if (property.contains("speed")) {
      unitWords("rpm");
    } else if (property.equals("power")) {
      unitWords("kW", "hp");
    } else {
      lengthUnits();
    }
  }

  private void unitWords(String... words) {
    for (int i = 0; i < words.length; i++) {
      add(Proposal.plain(words[i], Proposal.Kind.UNIT, "", UNIT + i));
    }
  }
}
