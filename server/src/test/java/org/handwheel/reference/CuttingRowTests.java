package org.handwheel.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.handwheel.model.Step.CutDirection;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.cutting.CuttingPower;
import org.handwheel.shop.cutting.Deflection;
import org.handwheel.shop.material.CutterMaterial;
import org.handwheel.shop.material.IsoGroup;
import org.handwheel.shop.material.Material;
import org.handwheel.shop.material.SpecificForce;
import org.handwheel.shop.outline.Ellipse;
import org.handwheel.shop.outline.Facets;
import org.handwheel.shop.outline.Obround;
import org.handwheel.units.Length;
import org.handwheel.work.Engagement;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** Chips, power, deflection and outlines against the rows of section M. */
class CuttingRowTests implements RowChecks {
  private static final StandardTables TABLES = StandardTables.builtIn();
  private static final Length TEN = Length.mm("10");
  private static final Length R25 = Length.mm("25");
  private static final Ellipse OVAL = new Ellipse(50, 25);

  @Override
  public Map<String, Consumer<CheckRow>> checks() {
    return new Builder()
        .row("M01", row -> row.isNear(side(Length.mm("1"), TEN).greatestChip(), 0))
        .row("M02", row -> row.isNear(side(Length.mm("0.5"), TEN).greatestChip(), 0))
        .row("M03", row -> row.isNear(side(Length.mm("2.5"), TEN).greatestChip(), 0))
        .row("M05", CuttingRowTests::engagement)
        .row("M05a", CuttingRowTests::meanChip)
        .row(
            "M05b",
            row ->
                row.isNear(side(Length.mm("1"), TEN).feedFor(Length.mm("0.05")).millimetres(), 0))
        .row(
            "M05c", row -> row.isNear(CuttingPower.removalRate(Length.mm("2"), TEN, 200), 0, 1e-12))
        .row("M05d", CuttingRowTests::removalInch)
        .row("M06", row -> unitPower(row, "0.63"))
        .row("M08", row -> unitPower(row, "0.85"))
        .row("M09", CuttingRowTests::freeMachiningTakesLess)
        .row("M10", row -> row.isNear(CuttingPower.unitPower(1), 0))
        .row("M11", row -> row.isNear(CuttingPower.specificForceOf(1), 0, 0))
        .row("M12", CuttingRowTests::motorPower)
        .row("M13", CuttingRowTests::workedPower)
        .row("M15", CuttingRowTests::orderOfPower)
        .row("M16", row -> row.isNear(new SpecificForce(1500, 0.25).at(0.05), 0))
        .row("M17", CuttingRowTests::specificForces)
        .row("M18", CuttingRowTests::isoLetters)
        .row("M19", row -> row.isNear(CuttingPower.torque(0.5, 900), 0))
        .row("M20", row -> row.isNear(CuttingPower.torquePoundInches(0.5, 900), 0))
        .row("M22", row -> row.isNear(bend("30", "10", CutterMaterial.HIGH_SPEED_STEEL), 0))
        .row("M23", row -> row.isNear(bend("30", "10", CutterMaterial.CARBIDE), 0))
        .row("M24", row -> row.isNear(bendRatio("60", "10", "30", "10"), 0, 1e-6))
        .row("M25", row -> row.isNear(bendRatio("30", "8", "30", "10"), 0))
        .row(
            "M26",
            row -> row.isNear(Facets.scallop(Length.mm("3"), Length.mm("0.5")).millimetres(), 0))
        .row("M27", row -> facets(row, 12))
        .row("M29", row -> facets(row, 36))
        .row("M30", row -> facets(row, 72))
        .row(
            "M31",
            row ->
                assertThat(Facets.flatsFor(R25, Length.mm("0.01"))).isEqualTo((int) row.number(1)))
        .row("M32", row -> perimeter(row, 30, 20))
        .row("M33", row -> perimeter(row, 50, 25))
        .row("M34", row -> perimeter(row, 40, 10))
        .row("M36", row -> radii(row, OVAL))
        .row("M37", row -> radii(row, Ellipse.of(Length.inches("1.5"), Length.inches("0.75"))))
        .row("M38", CuttingRowTests::parallelPoint)
        .row("M39", row -> offset(row, 6))
        .row("M40", row -> offset(row, -6))
        .row("M41", CuttingRowTests::offsetIsNoEllipse)
        .row("M43", CuttingRowTests::chordSag)
        .row("M44", CuttingRowTests::obround)
        .row(
            "M45",
            row -> {
              assertThat(row.expected()).endsWith("refuse");
              assertThat(Facets.fitsInsideRadius(Length.inches("0.25"), Length.mm("3"))).isFalse();
              assertThat(Facets.fitsInsideRadius(Length.mm("6"), Length.mm("3"))).isTrue();
            })
        .build();
  }

  private static void engagement(CheckRow row) {
    row.isNear(Math.toDegrees(side(Length.mm("1"), TEN).angle()), 0);
    row.isNear(Math.toDegrees(side(Length.mm("5"), TEN).angle()), 1);
    row.isNear(Math.toDegrees(side(TEN, TEN).angle()), 2);
  }

  private static void meanChip(CheckRow row) {
    row.isNear(side(Length.mm("1"), TEN).meanChip(), 0);
    row.isNear(Math.sqrt(0.1), 1);
  }

  private static void removalInch(CheckRow row) {
    double cm3 = CuttingPower.removalRate(Length.inches("0.1"), Length.inches("0.5"), 8 * 25.4);
    row.isNear(cm3 / Math.pow(2.54, 3), 0, 1e-9);
  }

  private static void unitPower(CheckRow row, String horsepower) {
    assertThat(row.inputs() + row.expected()).contains(horsepower);
    row.isNear(CuttingPower.unitPower(Double.parseDouble(horsepower)), 0);
  }

  private static void freeMachiningTakesLess(CheckRow row) {
    row.isNear(CuttingPower.unitPower(row.number(0)), 1);
    row.isNear(CuttingPower.unitPower(row.number(2)), 3, 0.006);
    assertThat(material("steel-free-machining").force().at(0.05))
        .isLessThan(material("steel-mild").force().at(0.05));
  }

  private static void motorPower(CheckRow row) {
    double force = CuttingPower.specificForceOf(CuttingPower.unitPower(0.74));
    row.isNear(horsepower(CuttingPower.atMotor(CuttingPower.atCutter(force, cm3(0.40)), 0.8)), 0);
  }

  private static void workedPower(CheckRow row) {
    double force = CuttingPower.specificForceOf(CuttingPower.unitPower(1 / 1.56));
    row.isNear(horsepower(CuttingPower.atCutter(force, cm3(3 * 0.2 * 42))), 0);
  }

  private static double cm3(double cubicInches) {
    return cubicInches * 2.54 * 2.54 * 2.54;
  }

  private static double horsepower(double kilowatts) {
    return kilowatts / 0.7456998715822702;
  }

  private static Material material(String name) {
    return TABLES.materials().find(name).orElseThrow();
  }

  /** The printed factors have no visible unit: only their order is checked. */
  private static void orderOfPower(CheckRow row) {
    List<String> words = List.of("aluminium", "brass", "cast iron", "mild steel", "tool steel");
    List<String> names =
        List.of(
            "aluminium-6082",
            "brass-free-cutting",
            "iron-grey",
            "steel-mild",
            "steel-tool-annealed");
    for (int i = 1; i < words.size(); i++) {
      assertThat(row.numbersAfter(words.get(i)).get(0))
          .isGreaterThan(row.numbersAfter(words.get(i - 1)).get(0));
      assertThat(material(names.get(i)).force().kc11())
          .as("%s: %s", row, names.get(i))
          .isGreaterThan(material(names.get(i - 1)).force().kc11());
    }
  }

  private static void specificForces(CheckRow row) {
    assertForce(row, "P low-carbon", "steel-mild");
    assertForce(row, "alloy", "steel-alloy");
    assertForce(row, "M austenitic", "stainless-303");
    assertForce(row, "M austenitic", "stainless-304");
    assertForce(row, "M austenitic", "stainless-316");
    assertForce(row, "K grey", "iron-grey");
    assertForce(row, "N wrought Al", "aluminium-6082");
    assertForce(row, "N wrought Al", "aluminium-7075");
    assertForce(row, "brass", "brass-free-cutting");
    assertForce(row, "brass", "brass-naval");
    assertForce(row, "S titanium", "titanium-grade-2");
    assertForce(row, "S titanium", "titanium-6al4v");
    List<BigDecimal> mc = row.numbersAfter("mc ");
    for (Material material : TABLES.materials().all()) {
      assertThat(material.force().mc())
          .as(material.name())
          .isBetween(mc.get(0).doubleValue(), mc.get(1).doubleValue());
    }
  }

  private static void assertForce(CheckRow row, String words, String material) {
    List<BigDecimal> printed = row.numbersAfter(words);
    assertThat(material(material).force().kc11())
        .as("%s: %s", row, material)
        .isBetween(printed.get(0).doubleValue(), printed.get(1).doubleValue());
  }

  private static void isoLetters(CheckRow row) {
    for (IsoGroup group : IsoGroup.values()) {
      assertThat(row.expected()).contains(group.name() + " " + group.colour());
    }
  }

  private static double bend(String stickOut, String diameter, CutterMaterial material) {
    return Deflection.endMill(200, Length.mm(stickOut), Length.mm(diameter), material)
        .millimetres();
  }

  private static double bendRatio(String length, String diameter, String length0, String d0) {
    return bend(length, diameter, CutterMaterial.HIGH_SPEED_STEEL)
        / bend(length0, d0, CutterMaterial.HIGH_SPEED_STEEL);
  }

  private static void facets(CheckRow row, int flats) {
    row.isNear(Facets.insideBy(R25, flats).millimetres(), 0);
    row.isNear(Facets.outsideBy(R25, flats).millimetres(), 1);
  }

  private static void perimeter(CheckRow row, double a, double b) {
    row.isNear(new Ellipse(a, b).perimeter(), 0);
    double h = Math.pow((a - b) / (a + b), 2);
    row.isNear(Math.PI * (3 * (a + b) - Math.sqrt((3 * a + b) * (a + 3 * b))), 1);
    row.isNear(Math.PI * (a + b) * (1 + 3 * h / (10 + Math.sqrt(4 - 3 * h))), 2);
  }

  private static void radii(CheckRow row, Ellipse ellipse) {
    row.isNear(ellipse.endRadius(), 0, 1e-12);
    row.isNear(ellipse.sideRadius(), 1, 1e-12);
  }

  private static void parallelPoint(CheckRow row) {
    Ellipse.Point point = new Ellipse(30, 20).offset(Math.PI / 4, 5);
    row.isNear(point.x(), 0);
    row.isNear(point.y(), 1);
  }

  /** Trap X2: a polygon library is a check within 1e-2 only, the formula is the measure. */
  private static void offset(CheckRow row, double by) {
    row.isNear(OVAL.offsetPerimeter(by), 0);
    row.isNear(OVAL.offsetArea(by), 1);
    Coordinate[] ring = new Coordinate[20_001];
    for (int i = 0; i < 20_000; i++) {
      Ellipse.Point point = OVAL.at(2 * Math.PI * i / 20_000);
      ring[i] = new Coordinate(point.x(), point.y());
    }
    ring[20_000] = ring[0];
    Geometry buffer = new GeometryFactory().createPolygon(ring).buffer(by, 64);
    assertThat(buffer.getArea()).isCloseTo(OVAL.offsetArea(by), within(1e-2));
    assertThat(buffer.getLength()).isCloseTo(OVAL.offsetPerimeter(by), within(1e-2));
  }

  /** Trap X11: planning the cutter's centre on the ellipse (a + d, b + d) is wrong by this much. */
  private static void offsetIsNoEllipse(CheckRow row) {
    row.isNear(greatestGap(new Ellipse(50, 25), 6), 0);
    row.isNear(greatestGap(new Ellipse(30, 20), 5), 2);
    row.isNear(greatestGap(new Ellipse(38.1, 19.05), 6.35), 3);
  }

  private static double greatestGap(Ellipse ellipse, double d) {
    double a = ellipse.a() + d;
    double b = ellipse.b() + d;
    double greatest = 0;
    for (int i = 0; i <= 9000; i++) {
      Ellipse.Point p = ellipse.offset(i * Math.PI / 2 / 9000, d);
      double value = Math.pow(p.x() / a, 2) + Math.pow(p.y() / b, 2) - 1;
      double gradient = 2 * Math.hypot(p.x() / (a * a), p.y() / (b * b));
      greatest = Math.max(greatest, Math.abs(value) / gradient);
    }
    return greatest;
  }

  private static void chordSag(CheckRow row) {
    row.isNear(new Ellipse(30, 20).greatestSag(36), 0);
    row.isNear(30 * (1 - Math.cos(Math.PI / 36)), 1);
  }

  private static void obround(CheckRow row) {
    Obround slot = new Obround(60, 20);
    row.isNear(slot.perimeter(), 0);
    row.isNear(slot.area(), 1);
    Geometry buffer =
        new GeometryFactory()
            .createLineString(new Coordinate[] {new Coordinate(-20, 0), new Coordinate(20, 0)})
            .buffer(10, 256);
    assertThat(buffer.getArea()).isCloseTo(slot.area(), within(1e-2));
  }

  /** The side of a cutter in a wall. */
  private static Engagement side(Length width, Length diameter) {
    return Engagement.ofSide(
        2 * width.millimetres() / diameter.millimetres(), CutDirection.CONVENTIONAL);
  }
}
