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
import org.handwheel.shop.table.Once;
import org.handwheel.shop.thread.ScrewHoles;
import org.handwheel.shop.thread.Threads;

/**
 * All the tables kept with the program. Each is read when it is first asked for, since the first
 * check of a plan needs few of them, and never changes; threads may share it.
 *
 * <p>Every table throws an {@link IllegalStateException} when it is missing or malformed: the
 * program is then built wrong.
 */
public final class StandardTables {
  private final Once<Materials> materials = new Once<>(Materials::load);
  private final Once<Passes> passes = new Once<>(Passes::load);
  private final Once<Drills> drills = new Once<>(Drills::load);
  private final Once<Drilling> drilling = new Once<>(Drilling::load);
  private final Once<HoleRates> holeRates = new Once<>(HoleRates::load);
  private final Once<Threads> threads = new Once<>(() -> Threads.load(drills()));
  private final Once<ScrewHoles> screwHoles = new Once<>(() -> ScrewHoles.load(drills()));
  private final Once<Fits> fits = new Once<>(Fits::load);
  private final Once<GeneralTolerances> generalTolerances = new Once<>(GeneralTolerances::load);
  private final Once<Instruments> instruments = new Once<>(Instruments::load);
  private final Once<Saws> saws = new Once<>(Saws::load);

  private StandardTables() {}

  /** Tables of their own, for those who want to read them anew. */
  public static StandardTables load() {
    return new StandardTables();
  }

  /** The tables that everybody shares. */
  public static StandardTables builtIn() {
    return Holder.BUILT_IN;
  }

  /** Materials with speeds, feeds and forces. */
  public Materials materials() {
    return materials.get();
  }

  /** Usual depths of a pass. */
  public Passes passes() {
    return passes.get();
  }

  /** Drills of the four series. */
  public Drills drills() {
    return drills.get();
  }

  /** Feeds of drills. */
  public Drilling drilling() {
    return drilling.get();
  }

  /** Speeds and feeds of the other tools for holes. */
  public HoleRates holeRates() {
    return holeRates.get();
  }

  /** Screw threads with tapping drills. */
  public Threads threads() {
    return threads.get();
  }

  /** Clearance holes, counterbores and countersinks. */
  public ScrewHoles screwHoles() {
    return screwHoles.get();
  }

  /** ISO 286 limits and fits. */
  public Fits fits() {
    return fits.get();
  }

  /** ISO 2768-1. */
  public GeneralTolerances generalTolerances() {
    return generalTolerances.get();
  }

  /** Measuring instruments. */
  public Instruments instruments() {
    return instruments.get();
  }

  /** Saws and their kerfs. */
  public Saws saws() {
    return saws.get();
  }

  private static final class Holder {
    static final StandardTables BUILT_IN = load();
  }
}
