package org.handwheel.cli;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where a command puts the text it makes: on the standard output, or in a file. */
final class ResultFile {
  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "Write to this file. Default: print it.")
  private @Nullable String file;

  @Option(names = "--overwrite", description = "Replace FILE if it is there already.")
  private boolean overwrite;

  /**
   * Prints the text, or writes it whole.
   *
   * @throws UserException if the file cannot be written, or is there already and is to stay
   */
  void deliver(String text, Output output, Surroundings surroundings) {
    if (file == null) {
      output.text(text);
      return;
    }
    NewText.Existing existing = overwrite ? NewText.Existing.REPLACE : NewText.Existing.KEEP;
    Optional<String> trouble = NewText.write(OnePlan.path(file, surroundings), text, existing);
    if (trouble.isPresent()) {
      throw new UserException(
          file
              + ": "
              + trouble.get()
              + (trouble.get().equals(NewText.THERE) ? "; --overwrite replaces it" : ""));
    }
  }
}
