package org.handwheel.plan.sheet;

import org.handwheel.units.UnitChoice;
import org.jspecify.annotations.Nullable;

/**
 * How a sheet is set out.
 *
 * @param paper what it is printed on, or nothing for what the printer has
 */
public record SheetLook(@Nullable Paper paper, UnitChoice units) {
  /** Where nobody asks for anything. */
  public static final SheetLook USUAL = new SheetLook(null, UnitChoice.BOTH);
}
