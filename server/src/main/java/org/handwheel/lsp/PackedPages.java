package org.handwheel.lsp;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.handwheel.ide.RulePages;
import org.handwheel.rules.Rules;
import org.jspecify.annotations.Nullable;

/** The pages of the rules that are packed with the program. */
public final class PackedPages implements RulePages {
  @Override
  public Optional<String> page(String rule) {
    // Ids are words with dashes; anything else is no page's name.
    if (!Rules.severities().containsKey(rule)) {
      return Optional.empty();
    }
    try (@Nullable InputStream in = Rules.class.getResourceAsStream("pages/" + rule + ".md")) {
      return in == null
          ? Optional.empty()
          : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      return Optional.empty();
    }
  }
}
