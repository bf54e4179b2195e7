package org.handwheel.examples;

import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import java.util.function.LongFunction;

/**
 * A plan made of chance: a block squared in setups that are now right and now wrong. All its
 * lengths are whole thou, which are finite decimals in millimetres, in inches and in thou alike.
 */
final class GeneratedPlan {
  /** A way to write the lengths of a file: its unit, and a number of thou in that unit. */
  enum Spelling {
    MM("mm", thou -> decimal(thou, "0.0254")),
    IN("in", thou -> decimal(thou, "0.001")),
    THOU("thou", Long::toString);

    private final String unit;
    private final LongFunction<String> number;

    Spelling(String unit, LongFunction<String> number) {
      this.unit = unit;
      this.number = number;
    }

    private static String decimal(long thou, String factor) {
      return BigDecimal.valueOf(thou)
          .multiply(new BigDecimal(factor))
          .stripTrailingZeros()
          .toPlainString();
    }
  }

  private static final List<String> PAIRS =
      List.of("P6x10", "P3x10", "P6x16", "P6x22", "P3x20", "P6x3", "P17x10", "P6x10-long");
  private static final List<String> FACES =
      List.of("top", "back", "front", "bottom", "right", "left");

  private final Spelling spelling;
  private final Random random;
  private final StringBuilder text = new StringBuilder();

  private GeneratedPlan(Spelling spelling, long seed) {
    this.spelling = spelling;
    this.random = new Random(seed);
  }

  /** A plan of so many setups; the same seed gives the same plan in any spelling. */
  static String text(Spelling spelling, long seed, int setups) {
    return new GeneratedPlan(spelling, seed).write(setups);
  }

  private String write(int setups) {
    int length = between(1500, 2400);
    int width = between(700, 1400);
    int height = between(400, 1000);
    line("language 1");
    line("plan \"Made of chance\"");
    line("  units " + spelling.unit);
    line("  use \"shop/inch-mill.shop\"");
    line("part");
    line("  material steel-mild");
    line("  length " + length(length) + " +-" + length(between(2, 8)));
    line("  width " + length(width) + " +0/-" + length(between(1, 6)));
    line("  height " + length(height) + " / " + length(height - between(1, 6)));
    line("  square back to top " + length(between(1, 4)));
    line("  parallel front to back " + length(between(1, 4)));
    line("stock");
    line(
        "  size "
            + length(length + between(-20, 200))
            + " x "
            + length(width + between(-20, 150))
            + " x "
            + length(height + between(-20, 150)));
    line("  " + one("cast", "rolled", "sawn", "drawn") + " top bottom front back");
    line("  sawn left right");
    for (int i = 0; i < setups; i++) {
      setup(i);
    }
    line("inspect");
    line("  check width with " + one("caliper", "mic25", "mic50"));
    return text.toString();
  }

  private void setup(int index) {
    String face = FACES.get(index % FACES.size());
    boolean end = face.equals("left") || face.equals("right");
    line("setup s" + index + " \"" + face + "\"");
    if (index == 0 || random.nextInt(4) == 0) {
      line("  deburr all edges");
    }
    if (random.nextInt(3) == 0) {
      line("  true V80 with dti, " + length(1) + " over " + length(3000));
    }
    line("  hold in V80, " + hold(face, end));
    if (random.nextInt(4) != 0) {
      line("  seat tapped, both parallels tight");
    }
    if (index == 0 || random.nextInt(2) == 0) {
      line("  cutter " + (end ? one("EM16", "EM10", "EM16-stub") : one("FC40", "FC40", "EM16")));
    }
    if (random.nextInt(6) != 0) {
      line(
          "  touch "
              + face
              + " with paper "
              + length(between(1, 4))
              + ", zero "
              + (end ? "x" : "z"));
    }
    if (end && random.nextInt(5) != 0) {
      String up = text.substring(text.lastIndexOf(" up ") + 4).split(",", 2)[0];
      line("  set z " + length(between(300, 1200)) + " below " + up);
    }
    line("  lock " + (end ? "x z" : one("y z", "y z", "x")));
    cuts(face);
  }

  private String hold(String face, boolean end) {
    String under = "on pair " + PAIRS.get(random.nextInt(PAIRS.size()));
    String support = random.nextInt(5) == 0 ? "on soft-strip " + length(between(30, 90)) : under;
    if (end) {
      String up = one("top", "bottom");
      return "up "
          + up
          + ", fixed "
          + one("back", "front")
          + ", "
          + support
          + ", overhang "
          + face
          + " "
          + length(between(100, 700))
          + (random.nextInt(3) == 0
              ? ""
              : ", spacer "
                  + length(between(600, 1450))
                  + " at "
                  + one("operator-left", "operator-right"));
    }
    boolean flat = face.equals("top") || face.equals("bottom");
    String fixed = flat ? one("back", "front") : one("top", "bottom");
    String bar =
        random.nextInt(2) == 0 ? "" : ", bar " + length(between(200, 400)) + " at mid-grip";
    return "up " + face + ", fixed " + fixed + ", " + support + bar;
  }

  private void cuts(String face) {
    if (random.nextInt(2) == 0) {
      int at = between(5, 30);
      line("  clean " + face + " at " + length(at) + ", at most " + length(at + between(0, 40)));
      burrs(face);
      return;
    }
    String size =
        face.equals("top") || face.equals("bottom")
            ? "height"
            : face.equals("left") || face.equals("right") ? "length" : "width";
    line(
        "  rough "
            + face
            + " to "
            + size
            + " leaving "
            + length(between(0, 14))
            + ", pass "
            + length(between(8, 30))
            + one("", ", conventional", ", climb"));
    burrs(face);
    if (random.nextInt(3) != 0) {
      line("  measure " + size + " with " + one("caliper", "mic25", "mic50"));
    }
    line(
        "  finish "
            + face
            + " to "
            + one(size, "(" + size + " - " + length(between(1, 9)) + ")")
            + one("", ", repeat", ", one pass"));
    burrs(face);
  }

  private void burrs(String face) {
    if (random.nextInt(4) != 0) {
      line("  deburr edges of " + face);
    }
  }

  private void line(String line) {
    text.append(line).append('\n');
  }

  private String length(long thou) {
    return spelling.number.apply(thou);
  }

  private String one(String... choices) {
    return choices[random.nextInt(choices.length)];
  }

  private int between(int low, int high) {
    return low + random.nextInt(high - low + 1);
  }
}
