package org.handwheel.cli;

import java.nio.charset.StandardCharsets;
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
    deliver(text.getBytes(StandardCharsets.UTF_8), output, surroundings);
  }

  /** The file it goes into, as it was named; nothing for the standard output. */
  @Nullable String name() {
    return file;
  }

  /** The same for the bytes of a file. */
  void deliver(byte[] bytes, Output output, Surroundings surroundings) {
    if (file == null) {
      output.bytes(bytes);
      return;
    }
    NewText.Existing existing = overwrite ? NewText.Existing.REPLACE : NewText.Existing.KEEP;
    Optional<String> trouble = NewText.write(OnePlan.path(file, surroundings), bytes, existing);
    if (trouble.isPresent()) {
      throw new UserException(
          file
              + ": "
              + trouble.get()
              + (trouble.get().equals(NewText.THERE) ? "; --overwrite replaces it" : ""));
    }
  }
}
