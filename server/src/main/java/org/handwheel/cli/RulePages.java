package org.handwheel.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.handwheel.rules.Rules;
import org.jspecify.annotations.Nullable;

/** The pages that explain rules, in Markdown. */
interface RulePages {
  /** The page of a rule by its id. */
  Optional<String> page(String rule);

  /** The pages that are packed beside the rules. */
  final class OnClassPath implements RulePages {
    @Override
    public Optional<String> page(String rule) {
      try (@Nullable InputStream in = Rules.class.getResourceAsStream("pages/" + rule + ".md")) {
        return in == null
            ? Optional.empty()
            : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
