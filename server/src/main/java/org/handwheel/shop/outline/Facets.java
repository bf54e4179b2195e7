package org.handwheel.shop.outline;

import org.handwheel.units.Length;

/**
 * A round cut as flats, or by a ball-nosed cutter in rows.
 *
 * <p>Geometry: n flats with their corners on the circle lie R(1 - cos(pi/n)) inside it at most;
 * flats touching the circle have corners R(1/cos(pi/n) - 1) outside. A ball of radius R stepped by
 * p leaves ridges of R - sqrt(R^2 - p^2/4).
 */
public final class Facets {
  private Facets() {}

  /** How far the middle of a flat lies inside the circle its corners are on. */
  public static Length insideBy(Length radius, int flats) {
    return Length.ofMillimetres(radius.millimetres() * (1 - Math.cos(Math.PI / atLeast3(flats))));
  }

  /** How far a corner lies outside the circle the flats touch: what is left to file. */
  public static Length outsideBy(Length radius, int flats) {
    return Length.ofMillimetres(
        radius.millimetres() * (1 / Math.cos(Math.PI / atLeast3(flats)) - 1));
  }

  /** The fewest flats whose middles lie at most {@code height} inside, at least 3. */
  public static int flatsFor(Length radius, Length height) {
    if (!height.isPositive() || !radius.isPositive()) {
      throw new IllegalArgumentException("radius and height are over zero");
    }
    double cosine = Math.max(-1, 1 - height.millimetres() / radius.millimetres());
    return Math.max(3, (int) Math.ceil(Math.PI / Math.acos(cosine)));
  }

  /** The height of the ridges between rows of a ball-nosed cutter. */
  public static Length scallop(Length ballRadius, Length stepOver) {
    double radius = ballRadius.millimetres();
    double half = stepOver.millimetres() / 2;
    if (!(half >= 0 && half <= radius)) {
      throw new IllegalArgumentException("the step is at most the cutter's diameter");
    }
    return Length.ofMillimetres(radius - Math.sqrt(radius * radius - half * half));
  }

  /** Whether a cutter gets into an inside corner drawn with this radius. */
  public static boolean fitsInsideRadius(Length cutterDiameter, Length drawnRadius) {
    return !cutterDiameter.isMoreThan(drawnRadius.times(2));
  }

  private static int atLeast3(int flats) {
    if (flats < 3) {
      throw new IllegalArgumentException("a round has at least three flats");
    }
    return flats;
  }
}
