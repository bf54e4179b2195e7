package org.handwheel.cli;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.handwheel.ide.RulePages;
import org.handwheel.rules.Rules;
import org.handwheel.syntax.Nearest;
import org.handwheel.syntax.Severity;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Explains a rule: what it finds, why that matters, and how to mend it. */
@Command(
    name = "explain",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Explains a rule: what it finds, why that matters, and what to do.",
      "Without a rule, lists all of them."
    },
    footerHeading = "%nExample:%n",
    footer = "  handwheel explain overcut")
final class ExplainCommand implements Callable<Integer> {
  private final Output output;
  private final Surroundings surroundings;
  private final RulePages pages;

  @Parameters(
      arity = "0..1",
      paramLabel = "RULE",
      description = "The id of a rule, as in the brackets of a finding.")
  private @Nullable String rule;

  @Option(names = "--list", description = "List all rules with their usual severity.")
  private boolean list;

  @Option(
      names = "--color",
      paramLabel = "auto|always|never",
      description = "Whether to use colour. Default: auto, on a terminal without NO_COLOR.")
  private Palette.Choice color = Palette.Choice.AUTO;

  ExplainCommand(Surroundings surroundings, Output output, RulePages pages) {
    this.surroundings = surroundings;
    this.output = output;
    this.pages = pages;
  }

  @Override
  public Integer call() {
    Palette palette = Palette.of(color, surroundings);
    if (rule == null || list) {
      printList(palette);
    } else {
      printPage(rule, palette);
    }
    return Handwheel.EXIT_CLEAN;
  }

  private void printList(Palette palette) {
    Map<String, Severity> rules = Rules.severities();
    int longest = rules.keySet().stream().mapToInt(String::length).max().orElse(0);
    rules.forEach(
        (id, severity) -> {
          String word = TextReport.word(severity);
          String head = pad(id, longest) + "  " + pad(word, "warning".length()) + "  ";
          String sentence = output.glyphs().show(MarkdownText.firstSentence(page(id)));
          var lines = Wrapping.wrap(head, " ".repeat(head.length()), sentence, output.width());
          output.line(
              palette.strong(pad(id, longest))
                  + "  "
                  + palette.severity(word, severity)
                  + lines
                      .get(0)
                      .substring(Math.min(lines.get(0).length(), longest + 2 + word.length())));
          output.lines(lines.subList(1, lines.size()));
        });
  }

  private void printPage(String asked, Palette palette) {
    Severity severity = Rules.severities().get(asked);
    if (severity == null) {
      Optional<String> near = Nearest.to(asked, Rules.severities().keySet());
      throw new UserException(
          "there is no rule '"
              + asked
              + "'"
              + near.map(id -> "; did you mean '" + id + "'?")
                  .orElse("; handwheel explain --list shows all"));
    }
    String page = page(asked);
    String word = TextReport.word(severity);
    output.line(palette.strong(asked) + "  (" + palette.severity(word, severity) + ")");
    output.line("");
    output.lines(MarkdownText.lines(page, output.glyphs(), palette, output.width()));
  }

  private String page(String id) {
    return pages
        .page(id)
        .orElseThrow(() -> new IllegalStateException("the rule " + id + " has no page"));
  }

  private static String pad(String text, int width) {
    return text + " ".repeat(Math.max(0, width - text.length()));
  }
}
