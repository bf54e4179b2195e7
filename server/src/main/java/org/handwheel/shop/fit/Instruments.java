package org.handwheel.shop.fit;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.handwheel.shop.table.Table;
import org.handwheel.units.LengthUnit;

/** The instruments a small shop usually has; its own come first. */
public final class Instruments {
  private final List<Instrument> all;

  private Instruments(List<Instrument> all) {
    this.all = List.copyOf(all);
  }

  /** Reads the table kept beside this class. */
  public static Instruments load() {
    return new Instruments(
        Table.read(Instruments.class, "instruments.csv")
            .map(
                row ->
                    new Instrument(
                        row.text("name"),
                        row.text("words"),
                        row.length("resolution", LengthUnit.MM),
                        row.length("uncertainty", LengthUnit.MM),
                        row.provenance())));
  }

  /** The instrument of this name; upper and lower case are one. */
  public Optional<Instrument> find(String name) {
    String wanted = name.strip().toLowerCase(Locale.ROOT);
    return all.stream().filter(instrument -> instrument.name().equals(wanted)).findFirst();
  }

  public List<Instrument> all() {
    return all;
  }
}
