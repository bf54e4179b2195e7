package org.handwheel.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.math3.util.FastMath;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.shop.cutting.Deflection;
import org.handwheel.shop.material.CutterMaterial;
import org.handwheel.shop.outline.Ellipse;
import org.handwheel.units.Length;
import org.handwheel.work.Engagement;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Closed formulas against the integrals they stand for, worked out by a reference library: Apache
 * Commons Math 3.6.1.
 */
class NumericalTests {
  private static final int MOST = 1_000_000;
  private static final IterativeLegendreGaussIntegrator INTEGRATOR =
      new IterativeLegendreGaussIntegrator(5, 1e-12, 1e-12);

  /** The length of the curve: the integral of its speed. */
  @ParameterizedTest
  @CsvSource({"30,20", "50,25", "40,10", "38.1,19.05", "25,25"})
  void perimeterOfAnEllipse(double a, double b) {
    double length =
        INTEGRATOR.integrate(
            MOST, t -> FastMath.hypot(a * FastMath.sin(t), b * FastMath.cos(t)), 0, 2 * Math.PI);
    assertThat(new Ellipse(a, b).perimeter()).isCloseTo(length, within(1e-6));
  }

  /** The mean of sin(phi) over the angle in the work. */
  @ParameterizedTest
  @CsvSource({"0.5,12", "2,20", "5,10", "9,12", "10,10"})
  void meanChip(String width, String diameter) {
    double angle = FastMath.acos(1 - 2 * Double.parseDouble(width) / Double.parseDouble(diameter));
    double mean = INTEGRATOR.integrate(MOST, FastMath::sin, 0, angle) / angle;
    assertThat(side(Length.mm(width), Length.mm(diameter)).meanChip())
        .isCloseTo(mean, within(1e-9));
  }

  /** Castigliano: the integral of moment times moment of a unit load, over E I. */
  @ParameterizedTest
  @CsvSource({"100,20,6,210000,HIGH_SPEED_STEEL", "250,35,10,600000,CARBIDE"})
  void deflection(
      double newtons, String stickOut, String diameter, double modulus, CutterMaterial material) {
    double radius = 0.8 * Double.parseDouble(diameter) / 2;
    double secondMoment = INTEGRATOR.integrate(MOST, r -> Math.PI * r * r * r, 0, radius);
    double bent =
        INTEGRATOR.integrate(
            MOST, x -> newtons * x * x / (modulus * secondMoment), 0, Double.parseDouble(stickOut));
    assertThat(
            Deflection.endMill(newtons, Length.mm(stickOut), Length.mm(diameter), material)
                .millimetres())
        .isCloseTo(bent, within(1e-8));
  }

  /** The side of a cutter in a wall. */
  private static Engagement side(Length width, Length diameter) {
    return Engagement.ofSide(
        2 * width.millimetres() / diameter.millimetres(), CutDirection.CONVENTIONAL);
  }
}
