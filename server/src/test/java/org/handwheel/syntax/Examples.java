package org.handwheel.syntax;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The texts that tests run over: the example files and the fenced blocks of the reference. */
public final class Examples {
  /** Where a skeleton and the first plan of the reference find their shop. */
  public static final String SHOP_PATH = "shop/shed.shop";

  private static final Path REFERENCE = Path.of("../grammar/LANGUAGE.md");
  private static final Path FILES = Path.of("../examples");
  private static final String PLAN = "plan \"Skeleton\"\n  units mm\n  use \"" + SHOP_PATH + "\"\n";
  private static final String STOCK = "stock\n  size 51.5 x 34.5 x 22\n";
  private static final Map<String, String> SIZES =
      Map.of("length", "48 +-0.10", "width", "32 +0/-0.05", "height", "19 +0/-0.04");
  private static final String FEATURES =
      """
        hole shaft in top, dia 12 H7, at (24, width/2) from left front, through
        hole oilway in front, M6, thread 7, drill 12, at (24, 9.5) from left bottom
        hole foot in top, dia 5.5, through
        pattern feet of foot, circle dia 26, count 4, first at 45 deg, about (24, 16)
        slot keyway in top, at (24, 16), width 5, length 20, depth 3
        outline gland in top, at (24, 16), ellipse 44 x 28, depth 6
        chamfer lip in top, width 1
      """;

  private Examples() {}

  /**
   * A fenced block of the reference.
   *
   * @param tag what stands behind the fence
   * @param text its lines, each ended
   * @param line where its text starts in the reference, from 1
   */
  public record Block(String tag, String text, int line) {
    public String kind() {
      return tag.contains(":") ? tag.substring(0, tag.indexOf(':')) : tag;
    }

    public String section() {
      return tag.substring(tag.indexOf(':') + 1);
    }

    @Override
    public String toString() {
      return "LANGUAGE.md:" + line + " " + tag;
    }
  }

  public static String reference() {
    return read(REFERENCE);
  }

  public static List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    String[] lines = reference().split("\n", -1);
    for (int i = 0; i < lines.length; i++) {
      if (!lines[i].startsWith("```")) {
        continue;
      }
      String tag = lines[i].substring(3);
      int first = ++i;
      StringBuilder text = new StringBuilder();
      while (!lines[i].equals("```")) {
        text.append(lines[i++]).append('\n');
      }
      blocks.add(new Block(tag, text.toString(), first + 1));
    }
    return blocks;
  }

  /** The shop of the reference: its first block of that kind. */
  public static String shop() {
    return blocks().stream()
        .filter(block -> block.tag().equals("shop"))
        .findFirst()
        .orElseThrow()
        .text();
  }

  /** A whole file around the lines of a section. */
  public static String whole(String section, String lines) {
    return switch (section) {
      case "bare" -> lines;
      case "part" -> PLAN + part(lines, lines);
      case "stock" -> PLAN + part("", "") + "stock\n" + lines;
      case "setup" -> PLAN + part("", FEATURES) + STOCK + setup(lines);
      case "log" -> PLAN + part("", "") + STOCK + setup("") + "log \"first off\"\n" + lines;
      case "inspect" -> PLAN + part("", FEATURES) + STOCK + setup("") + "inspect\n" + lines;
      case "shop" -> "shop \"Skeleton\"\n  units mm\n" + lines;
      default -> throw new IllegalArgumentException("no section " + section);
    };
  }

  /** A part with the sizes that the lines do not give themselves; those come first. */
  private static String part(String given, String lines) {
    StringBuilder part = new StringBuilder("part\n");
    for (String size : List.of("length", "width", "height")) {
      if (!Pattern.compile("(?m)^\\s*" + size + "\\b").matcher(given).find()) {
        part.append("  ").append(size).append(' ').append(SIZES.get(size)).append('\n');
      }
    }
    return part.append(lines).toString();
  }

  private static String setup(String lines) {
    boolean held = Pattern.compile("(?m)^\\s*hold\\b").matcher(lines).find();
    String hold = held ? "" : "  hold in V80, up top, fixed back, on pair P6x10\n";
    return "setup second\n" + hold + lines;
  }

  /** Every example that is meant to be right, as whole files by name. */
  public static Map<String, String> files() {
    Map<String, String> files = new LinkedHashMap<>();
    try (Stream<Path> paths = Files.walk(FILES)) {
      paths
          .filter(path -> path.toString().matches(".*\\.(plan|shop)"))
          // Those are wrong on purpose and have a test of their own.
          .filter(path -> !path.getParent().endsWith("mistakes"))
          .sorted()
          .forEach(
              path -> files.put(FILES.relativize(path).toString().replace('\\', '/'), read(path)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    for (Block block : blocks()) {
      if (block.kind().equals("line")) {
        files.put(block.toString(), whole(block.section(), block.text()));
      } else if (!block.kind().equals("wrong")) {
        files.put(block.toString(), block.text());
      }
    }
    return files;
  }

  private static String read(Path path) {
    try {
      return Files.readString(path);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
