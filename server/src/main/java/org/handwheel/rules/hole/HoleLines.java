package org.handwheel.rules.hole;

import java.util.Collection;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import org.handwheel.model.Limit;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.rules.Checkup;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.DrawnHole;
import org.jspecify.annotations.Nullable;

/** What several rules about holes ask for. */
final class HoleLines {
  private HoleLines() {}

  /** Every line on holes that was worked out, in the setups that could be read. */
  static void forEach(Checkup checkup, BiConsumer<SetupRun, StepRun> action) {
    checkup.forEachHoleLine(action);
  }

  /** What a plain bore may be: by its limits, its fit, or give or take what is not toleranced. */
  static @Nullable LengthRange limits(HoleSpec spec, Checkup checkup) {
    Length dia = spec.dia();
    if (dia == null) {
      return null;
    }
    if (spec.limits() != null) {
      return spec.limits();
    }
    LengthRange around = LengthRange.around(dia, checkup.limits().length(Limit.UNTOLERANCED));
    StandardTables tables = checkup.tables();
    return spec.fit() == null ? around : tables.fits().limits(dia, spec.fit()).orElse(around);
  }

  /**
   * Whether a line drills no other holes than these, so that its size may be changed for them.
   *
   * @param drilledBy the line
   */
  static boolean drillsOnly(Checkup checkup, Origin drilledBy, List<DrawnHole> holes) {
    return checkup
        .run()
        .steps()
        .filter(step -> step.step().origin().equals(drilledBy))
        .allMatch(step -> step.holes() != null && holes.containsAll(step.holes().holes()));
  }

  /** The names of several holes: the first three, and how many more. */
  static String names(Collection<String> names) {
    List<String> distinct = names.stream().distinct().toList();
    String some = distinct.stream().limit(3).collect(Collectors.joining(", "));
    return distinct.size() <= 3 ? some : some + " and " + (distinct.size() - 3) + " more";
  }
}
