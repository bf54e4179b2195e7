package org.handwheel.shop.thread;

import java.util.List;
import java.util.Optional;
import org.handwheel.shop.drill.Drills;
import org.handwheel.shop.table.Provenance;
import org.handwheel.shop.table.Row;
import org.handwheel.shop.table.Table;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;
import org.jspecify.annotations.Nullable;

/** The holes a screw passes through: clearance, counterbore and countersink. */
public final class ScrewHoles {
  /** How freely a screw passes; ISO 273 calls them fine, medium and coarse series. */
  public enum Clearance {
    CLOSE,
    NORMAL,
    FREE
  }

  private final List<ClearanceRow> clearances;
  private final List<HeadRow> heads;

  private ScrewHoles(List<ClearanceRow> clearances, List<HeadRow> heads) {
    this.clearances = List.copyOf(clearances);
    this.heads = List.copyOf(heads);
  }

  /** Reads the tables kept beside this class. */
  public static ScrewHoles load(Drills drills) {
    return new ScrewHoles(
        Table.read(ScrewHoles.class, "clearance-holes.csv").map(row -> clearance(row, drills)),
        Table.read(ScrewHoles.class, "screw-heads.csv").map(ScrewHoles::head));
  }

  /**
   * The clearance hole for a screw: ISO 273 for metric ones, drills of the shop tables for the
   * others. Nothing where the table has none, as a free hole for an inch screw.
   */
  public Optional<ClearanceHole> clearance(ScrewThread thread, Clearance wanted) {
    return clearances.stream()
        .filter(row -> row.screw.fits(thread))
        .findFirst()
        .flatMap(row -> row.hole(wanted));
  }

  /** The counterbore for a socket cap screw: DIN 974-1 series 1, or the shop tables for inches. */
  public Optional<Counterbore> counterbore(ScrewThread thread) {
    return head(thread).map(HeadRow::counterbore);
  }

  /** The countersink for a flat head: 90 degrees for metric screws, 82 for inch screws. */
  public Optional<Countersink> countersink(ScrewThread thread) {
    return head(thread).flatMap(row -> Optional.ofNullable(row.countersink));
  }

  private Optional<HeadRow> head(ScrewThread thread) {
    // The inch heads are those of Unified screws; Whitworth screws have their own.
    boolean whitworth = thread.series().form() == ThreadForm.WHITWORTH_55;
    return heads.stream().filter(row -> !whitworth && row.screw.fits(thread)).findFirst();
  }

  /**
   * A clearance hole.
   *
   * @param diameter of the hole
   * @param provenance where it comes from
   */
  public record ClearanceHole(Length diameter, Provenance provenance) {}

  /**
   * A counterbore for a socket cap screw.
   *
   * @param head the diameter of the screw's head
   * @param headHeight its height
   * @param diameter of the counterbore
   * @param depth of the counterbore: the head below the surface
   * @param provenance where it comes from
   */
  public record Counterbore(
      Length head, Length headHeight, Length diameter, Length depth, Provenance provenance) {}

  /**
   * A countersink for a flat head.
   *
   * @param diameter to the sharp corner at the surface
   * @param includedDegrees the included angle
   * @param provenance where it comes from
   */
  public record Countersink(Length diameter, double includedDegrees, Provenance provenance) {}

  private static ClearanceRow clearance(Row row, Drills drills) {
    boolean byDrill = row.text("family").equals("inch");
    return new ClearanceRow(
        screw(row),
        hole(row, "close", byDrill, drills),
        hole(row, "normal", byDrill, drills),
        hole(row, "free", byDrill, drills));
  }

  private static @Nullable ClearanceHole hole(
      Row row, String column, boolean byDrill, Drills drills) {
    if (row.optional(column).isEmpty()) {
      return null;
    }
    Length diameter =
        byDrill
            ? row.parse(column, text -> Threads.drill(drills, text)).diameter()
            : row.length(column, LengthUnit.MM);
    return new ClearanceHole(diameter, row.provenance());
  }

  private static HeadRow head(Row row) {
    LengthUnit unit = unit(row);
    Length height = row.length("cap height", unit);
    Counterbore counterbore =
        new Counterbore(
            row.length("cap head", unit),
            height,
            row.length("counterbore", unit),
            height.plus(row.length("deeper", unit)),
            row.provenance());
    Countersink countersink =
        row.optional("sunk head").isEmpty()
            ? null
            : new Countersink(
                row.length("sunk head", unit), row.number("sunk angle"), row.provenance());
    return new HeadRow(screw(row), counterbore, countersink);
  }

  private static Screw screw(Row row) {
    return new Screw(row.text("family"), row.length("thread", unit(row)));
  }

  private static LengthUnit unit(Row row) {
    return row.text("family").equals("inch") ? LengthUnit.IN : LengthUnit.MM;
  }

  private record Screw(String family, Length major) {
    boolean fits(ScrewThread thread) {
      return thread.series().screwFamily().equals(family) && thread.major().equals(major);
    }
  }

  private record ClearanceRow(
      Screw screw,
      @Nullable ClearanceHole close,
      @Nullable ClearanceHole normal,
      @Nullable ClearanceHole free) {
    Optional<ClearanceHole> hole(Clearance wanted) {
      return Optional.ofNullable(
          switch (wanted) {
            case CLOSE -> close;
            case NORMAL -> normal;
            case FREE -> free;
          });
    }
  }

  private record HeadRow(Screw screw, Counterbore counterbore, @Nullable Countersink countersink) {}
}
