package org.handwheel.ide;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.OwnHeaderContext;
import org.handwheel.grammar.HandwheelParser.PropertyLineContext;
import org.handwheel.model.OwnKind;
import org.handwheel.rules.Rules;
import org.handwheel.syntax.Ignore;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.SyntaxTree;

/** Places of a file that name a rule: comments that silence it, and a shop's severities. */
public final class RuleMentions {
  private RuleMentions() {}

  /**
   * A place that names a rule.
   *
   * @param start first UTF-16 unit of the rule's id in the file
   * @param end one past the last
   */
  public record Mention(String rule, int start, int end) {}

  /** All of a file, in order; only of rules there are. */
  public static List<Mention> of(SyntaxTree tree) {
    List<Mention> mentions = new ArrayList<>();
    for (Section section : tree.sections()) {
      for (Ignore ignore : section.ignores()) {
        int at = ignore.origin().text().indexOf(ignore.rule(), "# ignore".length() - 1);
        if (at >= 0) {
          add(mentions, ignore.rule(), tree.start(ignore.origin()) + at);
        }
      }
      if (isSeverities(section)) {
        for (ContentContext line : section.lines()) {
          if (line.statement() instanceof PropertyLineContext property && !section.isBroken(line)) {
            Origin word = section.origin(property.property());
            add(mentions, word.text().toLowerCase(Locale.ROOT), tree.start(word));
          }
        }
      }
    }
    mentions.sort(Comparator.comparingInt(Mention::start));
    return List.copyOf(mentions);
  }

  private static void add(List<Mention> mentions, String rule, int start) {
    if (Rules.severities().containsKey(rule)) {
      mentions.add(new Mention(rule, start, start + rule.length()));
    }
  }

  private static boolean isSeverities(Section section) {
    return section.kind() == SectionKind.OWN
        && !section.lines().isEmpty()
        && section.lines().get(0).header() instanceof OwnHeaderContext header
        && header.ownKind() != null
        && header.ownKind().getText().equalsIgnoreCase(OwnKind.SEVERITIES.word());
  }
}
