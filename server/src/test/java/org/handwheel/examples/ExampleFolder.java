package org.handwheel.examples;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** The folder {@code examples}, found from the module or from the repository's top. */
public final class ExampleFolder {
  public static final Path PATH =
      Stream.of(Path.of("..", "examples"), Path.of("examples"))
          .filter(Files::isDirectory)
          .findFirst()
          .orElseThrow(() -> new IllegalStateException("no folder of examples"));

  private ExampleFolder() {}

  /** Copies the shops, which every plan uses, into a folder. */
  public static void copyShops(Path folder) throws IOException {
    Files.createDirectories(folder.resolve("shop"));
    for (String shop : new String[] {"shop/inch-mill.shop", "shop/metric-mill.shop"}) {
      Files.copy(PATH.resolve(shop), folder.resolve(shop));
    }
  }

  /** Copies a plan into a folder under a name. */
  public static void copy(String plan, Path to) throws IOException {
    Files.copy(PATH.resolve(plan), to);
  }

  public static String text(String path) throws IOException {
    return Files.readString(PATH.resolve(path));
  }
}
