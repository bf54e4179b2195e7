package org.handwheel.ide.complete;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser.OwnHeaderContext;
import org.handwheel.model.OwnKind;
import org.handwheel.model.OwnProperties;
import org.handwheel.model.OwnProperties.Property;
import org.handwheel.rules.Rules;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.Severity;

/** The properties of an owned thing and their values. */
final class PropertyProposals {
  private final Slot slot;

  PropertyProposals(Slot slot) {
    this.slot = slot;
  }

  private Optional<OwnKind> ownKind() {
    Section section = slot.section();
    if (section.kind() != SectionKind.OWN
        || section.lines().isEmpty()
        || !(section.lines().get(0).header() instanceof OwnHeaderContext header)
        || header.ownKind() == null) {
      return Optional.empty();
    }
    String word = header.ownKind().getText().toLowerCase(Locale.ROOT);
    return Stream.of(OwnKind.values()).filter(kind -> kind.word().equals(word)).findFirst();
  }

  /** The words of properties, those that are not there yet first. */
  List<Proposal> words() {
    List<Proposal> proposals = new ArrayList<>();
    Optional<OwnKind> kind = ownKind();
    if (kind.isEmpty()) {
      return proposals;
    }
    String text = slot.section().text().toLowerCase(Locale.ROOT);
    if (kind.get() == OwnKind.SEVERITIES) {
      Rules.severities()
          .keySet()
          .forEach(
              rule ->
                  proposals.add(
                      property(
                          new Property(rule, "warning", OwnProperties.Need.OPTIONAL, "", List.of()),
                          Completion.UNIT)));
    }
    int rank = Completion.UNIT;
    for (Property property : OwnProperties.of(kind.get())) {
      boolean there =
          text.lines().anyMatch(line -> line.strip().matches(property.word() + "\\s*:.*"));
      boolean needed = property.need() == OwnProperties.Need.REQUIRED;
      proposals.add(
          property(property, rank++ + (needed ? 0 : 50) + (there ? Completion.AGAIN : 0)));
    }
    return proposals;
  }

  private static Proposal property(Property property, int rank) {
    String usual = property.usual();
    return new Proposal(
        property.word(),
        Proposal.Kind.PROPERTY,
        property.word() + ": ",
        Snippets.snippet(property.word() + ": {value}", Map.of("value", usual)),
        property.about(),
        "",
        rank);
  }

  /** The values of the property of the line. */
  List<Proposal> values() {
    List<Proposal> proposals = new ArrayList<>();
    String word = slot.before().get(0).getText();
    Optional<OwnKind> kind = ownKind();
    if (kind.isPresent() && kind.get() == OwnKind.SEVERITIES) {
      for (Severity severity : Severity.values()) {
        proposals.add(
            Proposal.plain(
                severity.name().toLowerCase(Locale.ROOT),
                Proposal.Kind.VALUE,
                "",
                Completion.KEYWORD));
      }
    }
    kind.flatMap(one -> OwnProperties.find(one, word))
        .ifPresent(property -> proposals.addAll(values(property)));
    return proposals;
  }

  /** The value that comes next, and what of the list is usual behind it. */
  private List<Proposal> values(Property property) {
    List<Proposal> proposals = new ArrayList<>();
    boolean open = slot.type(1) == HandwheelLexer.COLON || slot.type(1) == HandwheelLexer.COMMA;
    List<String> usual = List.of(property.usual().split(", "));
    int given = slot.count(HandwheelLexer.COMMA) + (open ? 0 : 1);
    if (given == 0) {
      property
          .choices()
          .forEach(
              choice ->
                  proposals.add(
                      Proposal.plain(choice, Proposal.Kind.VALUE, "", Completion.KEYWORD)));
    }
    if (property.choices().isEmpty() && given < usual.size() && (open || slot.wantsComma())) {
      String rest = String.join(", ", usual.subList(given, usual.size()));
      Proposal value = Proposal.plain(rest, Proposal.Kind.VALUE, "usual", Completion.UNIT);
      proposals.add(open ? value : value.behindComma());
    }
    return proposals;
  }
}
