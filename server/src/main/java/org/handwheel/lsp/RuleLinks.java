package org.handwheel.lsp;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Addresses of the pages that explain rules, where they lie as files beside the program: in a
 * distribution in {@code rules/} beside {@code lib/}, in a checkout among the sources.
 */
final class RuleLinks {
  private static final String ENDING = ".md";

  private final Map<String, String> addresses;

  private RuleLinks(Map<String, String> addresses) {
    this.addresses = Map.copyOf(addresses);
  }

  /** Looked up when the first link is wanted, and never again. */
  private static final class Lazy {
    static final RuleLinks BESIDE_PROGRAM = ofProgram();
  }

  /** The pages beside the program that runs. */
  static RuleLinks besideProgram() {
    return Lazy.BESIDE_PROGRAM;
  }

  private static RuleLinks ofProgram() {
    @Nullable CodeSource source = RuleLinks.class.getProtectionDomain().getCodeSource();
    if (source == null || source.getLocation() == null) {
      return new RuleLinks(Map.of());
    }
    try {
      return beside(Path.of(source.getLocation().toURI()));
    } catch (URISyntaxException | IllegalArgumentException e) {
      return new RuleLinks(Map.of());
    }
  }

  /**
   * The pages beside a program.
   *
   * @param code its jar, or the folder of its classes
   */
  static RuleLinks beside(Path code) {
    @Nullable Path parent = code.toAbsolutePath().normalize().getParent();
    if (parent == null) {
      return new RuleLinks(Map.of());
    }
    List<Path> candidates =
        List.of(
            parent.resolveSibling("rules"),
            parent
                .resolveSibling(Path.of("src", "main", "resources", "org", "handwheel"))
                .resolve("rules")
                .resolve("pages"));
    for (Path folder : candidates) {
      Map<String, String> pages = pages(folder);
      if (!pages.isEmpty()) {
        return new RuleLinks(pages);
      }
    }
    return new RuleLinks(Map.of());
  }

  private static Map<String, String> pages(Path folder) {
    Map<String, String> pages = new HashMap<>();
    if (!Files.isDirectory(folder)) {
      return pages;
    }
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*" + ENDING)) {
      for (Path file : files) {
        String name = String.valueOf(file.getFileName());
        pages.put(name.substring(0, name.length() - ENDING.length()), file.toUri().toString());
      }
    } catch (IOException e) {
      // A folder that cannot be read is as good as none: a link is a convenience.
      pages.clear();
    }
    return pages;
  }

  /** The address of a rule's page, if there is one. */
  Optional<String> page(String rule) {
    return Optional.ofNullable(addresses.get(rule));
  }
}
