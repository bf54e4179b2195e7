package org.handwheel.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.SyntaxTree;

/** How the statement at a place is written, and which of its slots is being filled. */
public final class Signatures {
  private static final Pattern SLOT = Pattern.compile("\\{([^}]*)\\}");

  /** Statements by their first words; the longer one is asked first. */
  private static final Map<String, String> BY_FIRST_WORDS =
      Map.ofEntries(
          Map.entry("language", "languageLine"),
          Map.entry("units", "unitsLine"),
          Map.entry("use", "useLine"),
          Map.entry("let", "letLine"),
          Map.entry("note", "noteLine"),
          Map.entry("material", "materialLine"),
          Map.entry("machine", "machineLine"),
          Map.entry("datum", "datumLine"),
          Map.entry("square", "relationLine"),
          Map.entry("square all", "squareAllLine"),
          Map.entry("parallel", "relationLine"),
          Map.entry("flat", "flatLine"),
          Map.entry("tolerance", "generalToleranceLine"),
          Map.entry("surface", "surfaceLine"),
          Map.entry("break", "breakLine"),
          Map.entry("hole", "holeLine"),
          Map.entry("pattern", "patternLine"),
          Map.entry("size", "sizeLine"),
          Map.entry("kerf", "kerfLine"),
          Map.entry("wander", "wanderLine"),
          Map.entry("make", "makeLine"),
          Map.entry("hold", "holdInViseLine"),
          Map.entry("hold on", "holdOnLine"),
          Map.entry("seat", "seatLine"),
          Map.entry("true", "trueLine"),
          Map.entry("tram", "tramLine"),
          Map.entry("cutter", "cutterLine"),
          Map.entry("touch", "touchLine"),
          Map.entry("find", "findLine"),
          Map.entry("zero", "zeroLine"),
          Map.entry("set", "setLine"),
          Map.entry("lock", "lockLine"),
          Map.entry("unlock", "unlockLine"),
          Map.entry("move", "moveHeadLine"),
          Map.entry("clean", "cleanLine"),
          Map.entry("rough", "roughLine"),
          Map.entry("finish", "finishLine"),
          Map.entry("deburr", "deburrLine"),
          Map.entry("wipe", "wipeLine"),
          Map.entry("measure", "measureLine"),
          Map.entry("in", "readLine"),
          Map.entry("check", "checkLine"),
          Map.entry("check square", "checkRelationLine"),
          Map.entry("check parallel", "checkRelationLine"),
          Map.entry("check flat", "checkFlatLine"),
          Map.entry("setup", "setupHeader"),
          Map.entry("own", "ownHeader"),
          Map.entry("plan", "planHeader"));

  /** First words that share a form under another word. */
  private static final Map<String, String> SHARED =
      Map.ofEntries(
          Map.entry("length", "dimensionLine"),
          Map.entry("width", "dimensionLine"),
          Map.entry("height", "dimensionLine"),
          Map.entry("sawn", "skinLine"),
          Map.entry("rolled", "skinLine"),
          Map.entry("cast", "skinLine"),
          Map.entry("drawn", "skinLine"),
          Map.entry("milled", "skinLine"),
          Map.entry("ground", "skinLine"),
          Map.entry("spot", "holeCutLine"),
          Map.entry("drill", "holeCutLine"),
          Map.entry("ream", "holeCutLine"),
          Map.entry("tap", "holeCutLine"),
          Map.entry("bore", "holeCutLine"),
          Map.entry("counterbore", "holeCutLine"),
          Map.entry("countersink", "holeCutLine"),
          Map.entry("slot", "featureLine"),
          Map.entry("pocket", "featureLine"),
          Map.entry("profile", "featureLine"),
          Map.entry("step", "featureLine"),
          Map.entry("chamfer", "featureLine"),
          Map.entry("outline", "featureLine"),
          Map.entry("window", "featureLine"),
          Map.entry("corner", "featureLine"));

  private Signatures() {}

  /**
   * A statement with its slots.
   *
   * @param label the statement as written
   * @param meaning one sentence
   * @param slots places in the label, in order
   * @param active which slot is being filled, or -1
   */
  public record Signature(String label, String meaning, List<Slot> slots, int active) {
    public Signature {
      slots = List.copyOf(slots);
    }
  }

  /** A slot: a range of the label in UTF-16 units. */
  public record Slot(int start, int end) {}

  /** The statement whose line an offset is on, if it has begun. */
  public static Optional<Signature> at(SyntaxTree tree, int offset) {
    Optional<Signature> signature = Optional.empty();
    for (Section section : tree.sections()) {
      int base = tree.base(section);
      if (offset >= base && offset <= base + section.text().length()) {
        // At the border of two sections the later one counts.
        List<Token> before = tokensBefore(section, offset - base);
        signature =
            before.isEmpty()
                ? Optional.empty()
                : form(before, section.kind()).map(form -> signature(form, before));
      }
    }
    return signature;
  }

  /** The tokens of the line that end before the offset; none within a comment. */
  private static List<Token> tokensBefore(Section section, int offset) {
    List<Token> before = new ArrayList<>();
    for (Token token : section.tokens()) {
      Origin origin = section.origin(token);
      if (token.getType() == HandwheelLexer.NL && origin.end() <= offset) {
        before.clear();
      } else if (token.getType() == HandwheelLexer.COMMENT
          && origin.start() < offset
          && origin.end() >= offset) {
        return List.of();
      } else if (token.getChannel() == Token.DEFAULT_CHANNEL
          && token.getType() != Token.EOF
          && token.getType() != HandwheelLexer.NL
          && origin.end() < offset) {
        before.add(token);
      }
    }
    return before;
  }

  /** The form of the statement that a line with these words would be. */
  static Optional<WrittenForms.Form> form(List<Token> before, SectionKind within) {
    if (within == SectionKind.PART) {
      Optional<WrittenForms.Form> feature = WrittenForms.ofPart(word(before.get(0)));
      if (feature.isPresent()) {
        return feature;
      }
    }
    String first = word(before.get(0));
    String two = before.size() > 1 ? first + " " + word(before.get(1)) : first;
    String shared = SHARED.get(first);
    if (shared != null) {
      return WrittenForms.named(shared).map(form -> form.under(first));
    }
    String alternative = BY_FIRST_WORDS.getOrDefault(two, BY_FIRST_WORDS.get(first));
    return alternative == null
        ? Optional.empty()
        : WrittenForms.named(alternative).map(form -> form.under(first));
  }

  private static String word(Token token) {
    return token.getText().toLowerCase(Locale.ROOT);
  }

  private static Signature signature(WrittenForms.Form form, List<Token> before) {
    StringBuilder label = new StringBuilder();
    List<Slot> slots = new ArrayList<>();
    List<String> keys = new ArrayList<>();
    Matcher matcher = SLOT.matcher(form.pattern());
    int at = 0;
    while (matcher.find()) {
      String between = form.pattern().substring(at, matcher.start());
      label.append(between);
      keys.add(lastWord(between));
      slots.add(new Slot(label.length(), label.length() + matcher.group(1).length()));
      label.append(matcher.group(1));
      at = matcher.end();
    }
    label.append(form.pattern().substring(at));
    return new Signature(label.toString(), form.meaning(), slots, active(keys, before));
  }

  /** The word in front of a slot; empty if none stands between it and the slot before. */
  private static String lastWord(String between) {
    String text = between.replaceAll("[^\\p{L}-]+", " ").strip();
    return text.substring(text.lastIndexOf(' ') + 1).toLowerCase(Locale.ROOT);
  }

  /**
   * The slot behind the last word that leads one: after {@code leaving} the allowance. Where a word
   * leads several slots, each counts in its turn.
   */
  private static int active(List<String> keys, List<Token> before) {
    int active = -1;
    int from = 0;
    for (int i = 0; i < before.size(); i++) {
      String typed = word(before.get(i));
      int next = -1;
      for (int k = from; k < keys.size() && next < 0; k++) {
        if (keys.get(k).equals(typed)) {
          next = k;
        }
      }
      for (int k = 0; k < from && next < 0; k++) {
        if (keys.get(k).equals(typed) && i > 0) {
          next = k;
        }
      }
      boolean value = i > 0 && next < 0;
      boolean goesOn =
          value
              && active >= 0
              && active + 1 < keys.size()
              && keys.get(active + 1).isEmpty()
              && before.get(i).getType() != HandwheelLexer.LP;
      if (next >= 0) {
        active = next;
        from = next + 1;
      } else if (goesOn) {
        active++;
        from = active + 1;
      }
    }
    return active;
  }
}
