package org.handwheel.model.build;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.handwheel.model.Part;
import org.handwheel.model.Plan;
import org.handwheel.model.Workspace;
import org.handwheel.syntax.SyntaxTree;

/** A plan says the same whether its numbers are written in millimetres, inches or thousandths. */
class SameInInchesTests {
  /** How a number of hundredths of a millimetre is written. */
  private enum Style {
    BARE_MM {
      @Override
      String write(int hundredths) {
        return BigDecimal.valueOf(hundredths, 2).toPlainString();
      }
    },
    MM {
      @Override
      String write(int hundredths) {
        return BARE_MM.write(hundredths) + " mm";
      }
    },
    INCH {
      @Override
      String write(int hundredths) {
        // 1 in is 2540 hundredths: the fraction is exact.
        return fraction(hundredths, 2540) + " in";
      }
    },
    THOU {
      @Override
      String write(int hundredths) {
        return fraction(hundredths * 100, 254) + " thou";
      }
    },
    MICRON {
      @Override
      String write(int hundredths) {
        return hundredths * 10 + " um";
      }
    };

    abstract String write(int hundredths);
  }

  /** Whole, a fraction or a mixed number, in lowest terms. */
  private static String fraction(int above, int below) {
    int whole = above / below;
    int rest = above % below;
    if (rest == 0) {
      return Integer.toString(whole);
    }
    int common = BigInteger.valueOf(rest).gcd(BigInteger.valueOf(below)).intValue();
    String part = rest / common + "/" + below / common;
    return whole == 0 ? part : whole + "-" + part;
  }

  @Property(tries = 300)
  void theModelIsTheSame(
      @ForAll @Size(14) List<@IntRange(min = 1, max = 20_000) Integer> numbers,
      @ForAll @Size(14) List<@IntRange(min = 1, max = 4) Integer> styles) {
    List<Style> mixed = styles.stream().map(i -> Style.values()[i]).toList();
    Plan metric = plan("mm", numbers, List.of(Style.BARE_MM));
    assertThat(metric.findings()).isEmpty();
    for (List<Style> written : List.of(List.of(Style.INCH), List.of(Style.THOU), mixed)) {
      Plan other = plan("mm", numbers, written);
      assertThat(other.findings()).isEmpty();
      assertThat(values(other)).isEqualTo(values(metric));
    }
    // In a file in inches or thou, with millimetres written out.
    for (String units : List.of("in", "thou")) {
      assertThat(values(plan(units, numbers, List.of(Style.MM)))).isEqualTo(values(metric));
    }
  }

  private static Plan plan(String units, List<Integer> numbers, List<Style> styles) {
    String[] n = new String[14];
    for (int i = 0; i < n.length; i++) {
      n[i] = styles.get(i % styles.size()).write(numbers.get(i));
    }
    String size = numbers.get(0) > numbers.get(1) ? n[0] : n[1];
    String tolerance = numbers.get(0) > numbers.get(1) ? n[1] : n[0];
    String text =
        """
        plan "Crosshead"
          units %s
          let edge = %s
          let rib = (edge + %s)/3
        part
          length (%s + %s) +-%s
          width (rib*3)
          height (%s - %s + %s) +%s/-0
          hole a in top, dia %s, at (%s, rib), depth %s
          square all %s
        stock
          size %s x %s x %s
        """
            .formatted(
                units, n[2], n[3], size, n[4], tolerance, size, tolerance, n[5], n[6], n[7], n[8],
                n[9], n[10], n[11], n[12], n[13]);
    return PlanFiles.build(Workspace.of(SyntaxTree.parse("x.plan", text)), "x.plan");
  }

  /** Every length of the model in picometres. */
  private static String values(Plan plan) {
    Part part = requireNonNull(plan.part());
    String dimensions =
        new TreeMap<>(part.dimensions())
            .values().stream()
                .map(d -> d.nominal().picometres() + " " + limits(d))
                .collect(Collectors.joining("; "));
    Part.HoleSpec hole = part.holes().get(0);
    String holes =
        List.of(
                requireNonNull(hole.dia()),
                requireNonNull(hole.depth()),
                requireNonNull(hole.position()).first(),
                requireNonNull(hole.position()).second())
            .stream()
            .map(length -> Long.toString(length.picometres()))
            .collect(Collectors.joining(" "));
    String sizes =
        new TreeMap<>(requireNonNull(plan.stock()).sizes())
            .values().stream()
                .map(length -> Long.toString(length.picometres()))
                .collect(Collectors.joining(" "));
    return dimensions
        + " | "
        + holes
        + " | "
        + part.callouts().get(0).zone().picometres()
        + " | "
        + sizes;
  }

  private static String limits(Part.DimensionSpec dimension) {
    return dimension.limits() == null
        ? "-"
        : dimension.limits().low().picometres() + ".." + dimension.limits().high().picometres();
  }
}
