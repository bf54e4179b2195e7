package org.handwheel.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Plans and shops for tests, of the steam launch's boiler feed pump. */
final class Samples {
  /** A plan without a finding; it uses no shop. */
  static final String CLEAN =
      """
      language 1
      plan "Gland packing ring, blank only"
        units mm
      """;

  /** One note: a value that nothing uses. */
  static final String UNUSED =
      """
      language 1
      plan "Stuffing box flange"
        units mm
        let edge = 7.5
      """;

  /** One warning: a comment that silences nothing. */
  static final String IGNORING =
      """
      language 1
      plan "Valve chest cover"
        units mm  # ignore overcut: it is tried on scrap first
      """;

  /** One error: a decimal comma in line 6, columns 10 to 15. */
  static final String COMMA =
      """
      language 1
      plan "Feed pump bearing block"
        units mm

      part
        height 19,05 +0/-0.04
      """;

  private Samples() {}

  static String example(String name) throws IOException {
    return Files.readString(Path.of("..", "examples").resolve(name));
  }

  static Path write(Path folder, String name, String text) throws IOException {
    return write(folder, name, text.getBytes(StandardCharsets.UTF_8));
  }

  static Path write(Path folder, String name, byte[] bytes) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    return Files.write(file, bytes);
  }

  /** The launch's bench mill and the plan of the bearing block, in their places. */
  static void writeBearingBlock(Path folder) throws IOException {
    write(folder, "shop/inch-mill.shop", example("shop/inch-mill.shop"));
    write(folder, "bearing-block.plan", example("bearing-block.plan"));
  }

  /** The bearing block's plan with its setups over and over, under new names. */
  static String longPlan(int lines) throws IOException {
    String example = example("bearing-block.plan");
    int setups = example.indexOf("setup one");
    int inspect = example.indexOf("inspect");
    StringBuilder plan = new StringBuilder(example.substring(0, setups));
    long count = plan.chars().filter(c -> c == '\n').count();
    for (int round = 1; count < lines; round++) {
      String again = example.substring(setups, inspect);
      for (String name : List.of("one", "two", "three", "four", "five", "six")) {
        again = again.replace("setup " + name + " ", "setup " + name + "-" + round + " ");
      }
      plan.append(again);
      count += again.chars().filter(c -> c == '\n').count();
    }
    return plan.toString();
  }
}
