package org.handwheel.ide.complete;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.handwheel.ide.complete.Completion.Proposals;
import org.handwheel.rules.Rules;
import org.handwheel.syntax.SourceText;

/** Rule ids in a comment {@code # ignore RULE: reason}. */
final class IgnoreProposals {
  private static final Pattern RULE = Pattern.compile("#\\s*ignore\\s+([a-z-]*)$");
  private static final Pattern WORD = Pattern.compile("#\\s*([a-z]*)$");

  private IgnoreProposals() {}

  static Proposals at(SourceText source, int offset) {
    int line = source.lineAt(offset);
    String before = source.text().substring(source.lineStart(line), offset);
    Matcher word = WORD.matcher(before);
    if (word.find() && "ignore".startsWith(word.group(1))) {
      int start = offset - word.group(1).length();
      return new Proposals(
          start,
          offset,
          List.of(
              new Proposal(
                  "ignore",
                  Proposal.Kind.KEYWORD,
                  "ignore ",
                  Snippets.snippet("ignore {rule}: {reason}", Map.of()),
                  "silences a rule on this line",
                  "",
                  0)));
    }
    Matcher rule = RULE.matcher(before);
    if (!rule.find()) {
      return new Proposals(offset, offset, List.of());
    }
    List<Proposal> proposals = new ArrayList<>();
    Rules.severities()
        .keySet()
        .forEach(
            id ->
                proposals.add(
                    new Proposal(
                        id,
                        Proposal.Kind.RULE,
                        id + ": ",
                        Snippets.snippet(id + ": {reason}", Map.of()),
                        "",
                        "rule " + id,
                        proposals.size())));
    int end = offset;
    String text = source.text();
    while (end < text.length()
        && (Character.isLowerCase(text.charAt(end)) || text.charAt(end) == '-')) {
      end++;
    }
    return new Proposals(offset - rule.group(1).length(), end, proposals);
  }
}
