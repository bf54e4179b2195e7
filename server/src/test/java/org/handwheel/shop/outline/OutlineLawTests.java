package org.handwheel.shop.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.handwheel.units.Length;
import org.junit.jupiter.api.Test;

/** Laws the outlines keep; the geometry itself is the source. */
class OutlineLawTests {
  /**
   * The perimeter lies between those of the circles of its half axes' mean and root mean square.
   */
  @Property
  void perimeterLiesBetweenItsBounds(
      @ForAll @DoubleRange(min = 0.1, max = 200) double a,
      @ForAll @DoubleRange(min = 0.05, max = 1) double ratio) {
    Ellipse ellipse = new Ellipse(a, a * ratio);
    double mean = Math.PI * (ellipse.a() + ellipse.b());
    double rootMeanSquare = Math.PI * Math.sqrt(2 * (a * a + ellipse.b() * ellipse.b()));
    assertThat(ellipse.perimeter()).isBetween(mean * (1 - 1e-12), rootMeanSquare * (1 + 1e-12));
  }

  /**
   * The series of Gauss and Kummer, pi (a + b) sum of binomial(1/2, n)^2 h^n with h = ((a - b)/(a +
   * b))^2, from memory.
   */
  @Property
  void perimeterEqualsTheSeriesOfGaussAndKummer(
      @ForAll @DoubleRange(min = 1, max = 200) double a,
      @ForAll @DoubleRange(min = 0.1, max = 1) double ratio) {
    Ellipse ellipse = new Ellipse(a, a * ratio);
    double h = Math.pow((ellipse.a() - ellipse.b()) / (ellipse.a() + ellipse.b()), 2);
    double term = 1;
    double sum = 1;
    double power = 1;
    for (int n = 1; n < 200; n++) {
      term *= (0.5 - (n - 1)) / n;
      power *= h;
      sum += term * term * power;
    }
    double expected = Math.PI * (ellipse.a() + ellipse.b()) * sum;
    assertThat(ellipse.perimeter()).isCloseTo(expected, within(1e-9 * expected));
  }

  /**
   * Ramanujan's second approximation of 1914, pi (a + b) (1 + 3h/(10 + sqrt(4 - 3h))), from memory;
   * its error is of the order h^5.
   */
  @Property
  void perimeterIsNearRamanujansSecondFormula(
      @ForAll @DoubleRange(min = 1, max = 200) double a,
      @ForAll @DoubleRange(min = 0.3, max = 1) double ratio) {
    Ellipse ellipse = new Ellipse(a, a * ratio);
    double h = Math.pow((ellipse.a() - ellipse.b()) / (ellipse.a() + ellipse.b()), 2);
    double expected =
        Math.PI * (ellipse.a() + ellipse.b()) * (1 + 3 * h / (10 + Math.sqrt(4 - 3 * h)));
    assertThat(ellipse.perimeter()).isCloseTo(expected, within(1e-6 * expected));
  }

  @Property
  void aRoundEllipseIsACircle(@ForAll @DoubleRange(min = 0.1, max = 500) double radius) {
    Ellipse circle = new Ellipse(radius, radius);
    assertThat(circle.perimeter()).isCloseTo(2 * Math.PI * radius, within(1e-9));
    assertThat(circle.endRadius()).isCloseTo(radius, within(1e-9));
  }

  @Property
  void offsetPointsLieTheDistanceAway(
      @ForAll @DoubleRange(min = 0, max = 6.28) double t,
      @ForAll @DoubleRange(min = -12, max = 12) double d) {
    Ellipse oval = new Ellipse(50, 25);
    Ellipse.Point on = oval.at(t);
    Ellipse.Point off = oval.offset(t, d);
    assertThat(Math.hypot(on.x() - off.x(), on.y() - off.y())).isCloseTo(Math.abs(d), within(1e-9));
  }

  @Property
  void flatsForIsTheFewest(
      @ForAll @LongRange(min = 1_000_000_000L, max = 100_000_000_000L) long radius,
      @ForAll @LongRange(min = 1_000_000L, max = 500_000_000L) long height) {
    Length r = new Length(radius);
    Length h = new Length(height);
    int flats = Facets.flatsFor(r, h);
    Length slack = new Length(10);
    assertThat(Facets.insideBy(r, flats)).isLessThanOrEqualTo(h.plus(slack));
    if (flats > 3) {
      assertThat(Facets.insideBy(r, flats - 1)).isGreaterThan(h.minus(slack));
    }
  }

  @Property
  void cornersOutsideAreFartherThanMiddlesInside(@ForAll @IntRange(min = 3, max = 500) int flats) {
    Length radius = Length.mm("25");
    assertThat(Facets.outsideBy(radius, flats)).isGreaterThan(Facets.insideBy(radius, flats));
  }

  @Test
  void refusesImpossibleOutlines() {
    assertIllegal(() -> new Ellipse(20, 30));
    assertIllegal(() -> new Ellipse(20, 0));
    assertIllegal(() -> new Ellipse(Double.POSITIVE_INFINITY, 1));
    assertIllegal(() -> new Ellipse(50, 25).offsetArea(-12.5));
    assertIllegal(() -> new Obround(10, 20));
    assertIllegal(() -> Facets.insideBy(Length.mm("5"), 2));
    assertIllegal(() -> Facets.flatsFor(Length.mm("5"), Length.ZERO));
    assertIllegal(() -> Facets.scallop(Length.mm("3"), Length.mm("6.1")));
  }

  private static void assertIllegal(ThrowingCallable call) {
    assertThatThrownBy(call).isInstanceOf(IllegalArgumentException.class);
  }
}
