package org.handwheel.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.syntax.Nearest;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Wrong usage in one line, with a suggestion where a word is nearly right. */
final class UsageWords {
  private UsageWords() {}

  static String of(ParameterException e) {
    if (e instanceof UnmatchedArgumentException unmatched && !unmatched.getUnmatched().isEmpty()) {
      return unmatched(unmatched);
    }
    String message = e.getMessage() == null ? "wrong usage" : e.getMessage();
    return message.replaceAll("\\s+", " ").strip();
  }

  private static String unmatched(UnmatchedArgumentException e) {
    CommandLine line = e.getCommandLine();
    String first = e.getUnmatched().get(0);
    List<String> known = new ArrayList<>();
    String kind;
    if (first.startsWith("-") && first.length() > 1) {
      kind = "option";
      line.getCommandSpec().options().forEach(option -> known.addAll(List.of(option.names())));
    } else if (line.getSubcommands().isEmpty()) {
      return "there is no use for '" + String.join("', '", e.getUnmatched()) + "'";
    } else {
      kind = "command";
      known.addAll(line.getSubcommands().keySet());
    }
    Optional<String> near = Nearest.to(first, known);
    return "there is no "
        + kind
        + " '"
        + first
        + "'"
        + near.map(word -> "; did you mean '" + word + "'?").orElse("");
  }
}
