package org.handwheel.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.handwheel.syntax.SyntaxTree;

/** Texts for the targets of a fuzzer. */
final class FuzzTexts {
  private FuzzTexts() {}

  /** Bytes as a text; what is not UTF-8 becomes the replacement character. */
  static String text(byte[] data, int start, int end) {
    return new String(data, start, end - start, StandardCharsets.UTF_8);
  }

  /** The shop that {@code use "shop/inch-mill.shop"} names. */
  static SyntaxTree shop() {
    try {
      String text = Files.readString(Path.of("../examples/shop/inch-mill.shop"));
      return SyntaxTree.parse("shop/inch-mill.shop", text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
