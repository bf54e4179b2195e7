package org.handwheel.shop.material;

import java.util.EnumMap;
import java.util.Map;
import org.handwheel.shop.table.Provenance;
import org.handwheel.shop.table.Row;
import org.handwheel.shop.table.Table;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;

/**
 * How deep a pass is usual on a small mill, by class of material. Common practice, no source: the
 * machine and the set-up decide.
 */
public final class Passes {
  /** What is usually left for the finishing pass: about 10 thou. */
  public static final Length FINISH_ALLOWANCE = Length.mm("0.25");

  private final Map<MaterialClass, PassDepths> byClass;

  private Passes(Map<MaterialClass, PassDepths> byClass) {
    this.byClass = byClass;
  }

  /** Reads the table kept beside this class. */
  public static Passes load() {
    Map<MaterialClass, PassDepths> depths = new EnumMap<>(MaterialClass.class);
    for (Row row : Table.read(Passes.class, "passes.csv").rows()) {
      depths.put(
          row.parse("class", MaterialClass::valueOf),
          new PassDepths(
              range(row, "rough least", "rough most"),
              range(row, "finish least", "finish most"),
              row.provenance()));
    }
    for (MaterialClass kind : MaterialClass.values()) {
      if (!depths.containsKey(kind)) {
        throw new IllegalStateException("passes.csv: no line for " + kind);
      }
    }
    return new Passes(depths);
  }

  private static LengthRange range(Row row, String least, String most) {
    return new LengthRange(row.length(least, LengthUnit.THOU), row.length(most, LengthUnit.THOU));
  }

  /** The usual depths for a class of material. */
  public PassDepths of(MaterialClass kind) {
    PassDepths depths = byClass.get(kind);
    if (depths == null) {
      throw new IllegalStateException("no passes for " + kind);
    }
    return depths;
  }

  /**
   * Usual depths of a pass.
   *
   * @param rough for a roughing pass
   * @param finish for the finishing pass
   * @param provenance where they come from
   */
  public record PassDepths(LengthRange rough, LengthRange finish, Provenance provenance) {}
}
