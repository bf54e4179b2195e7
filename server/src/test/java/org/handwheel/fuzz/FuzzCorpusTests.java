package org.handwheel.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Runs the targets of the fuzzer over the inputs kept beside the tests: some that reach much of the
 * program, and every one that went wrong once. {@code mvn -Pfuzz verify} looks for new ones.
 */
final class FuzzCorpusTests {
  private static final Path CORPUS = Path.of("src/test/fuzz");

  private static List<Path> inputs(String target) throws IOException {
    try (Stream<Path> files = Files.list(CORPUS.resolve(target))) {
      return files.sorted().toList();
    }
  }

  static Stream<Path> checks() throws IOException {
    return inputs("CheckTarget").stream();
  }

  static Stream<Path> formats() throws IOException {
    return inputs("FormatTarget").stream();
  }

  static Stream<Path> diffs() throws IOException {
    return inputs("DiffTarget").stream();
  }

  static Stream<Path> streams() throws IOException {
    return inputs("StreamTarget").stream();
  }

  @ParameterizedTest
  @MethodSource("checks")
  void check(Path input) throws IOException {
    CheckTarget.fuzzerTestOneInput(Files.readAllBytes(input));
  }

  @ParameterizedTest
  @MethodSource("formats")
  void format(Path input) throws IOException {
    FormatTarget.fuzzerTestOneInput(Files.readAllBytes(input));
  }

  @ParameterizedTest
  @MethodSource("diffs")
  void diff(Path input) throws IOException {
    DiffTarget.fuzzerTestOneInput(Files.readAllBytes(input));
  }

  @ParameterizedTest
  @MethodSource("streams")
  void stream(Path input) throws IOException, InterruptedException {
    StreamTarget.fuzzerTestOneInput(Files.readAllBytes(input));
  }

  @Test
  void everyTargetHasInputs() throws IOException {
    for (String target : List.of("CheckTarget", "FormatTarget", "DiffTarget", "StreamTarget")) {
      assertThat(inputs(target)).as(target).isNotEmpty();
    }
  }
}
