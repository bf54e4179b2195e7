package org.handwheel.shop;

import org.handwheel.shop.drill.Drilling;
import org.handwheel.shop.drill.Drills;
import org.handwheel.shop.drill.HoleRates;
import org.handwheel.shop.fit.Fits;
import org.handwheel.shop.fit.GeneralTolerances;
import org.handwheel.shop.fit.Instruments;
import org.handwheel.shop.material.Materials;
import org.handwheel.shop.material.Passes;
import org.handwheel.shop.stock.Saws;
import org.handwheel.shop.thread.ScrewHoles;
import org.handwheel.shop.thread.Threads;

/**
 * All the tables kept with the program, read once and never changed.
 *
 * @param materials materials with speeds, feeds and forces
 * @param passes usual depths of a pass
 * @param drills drills of the four series
 * @param drilling feeds of drills
 * @param holeRates speeds and feeds of the other tools for holes
 * @param threads screw threads with tapping drills
 * @param screwHoles clearance holes, counterbores and countersinks
 * @param fits ISO 286 limits and fits
 * @param generalTolerances ISO 2768-1
 * @param instruments measuring instruments
 * @param saws saws and their kerfs
 */
public record StandardTables(
    Materials materials,
    Passes passes,
    Drills drills,
    Drilling drilling,
    HoleRates holeRates,
    Threads threads,
    ScrewHoles screwHoles,
    Fits fits,
    GeneralTolerances generalTolerances,
    Instruments instruments,
    Saws saws) {

  /**
   * Reads every table; some milliseconds.
   *
   * @throws IllegalStateException if a table is missing or malformed: the program is built wrong
   */
  public static StandardTables load() {
    Drills drills = Drills.load();
    return new StandardTables(
        Materials.load(),
        Passes.load(),
        drills,
        Drilling.load(),
        HoleRates.load(),
        Threads.load(drills),
        ScrewHoles.load(drills),
        Fits.load(),
        GeneralTolerances.load(),
        Instruments.load(),
        Saws.load());
  }

  /** The built-in tables, read when first asked for. */
  public static StandardTables builtIn() {
    return Holder.BUILT_IN;
  }

  private static final class Holder {
    static final StandardTables BUILT_IN = load();
  }
}
