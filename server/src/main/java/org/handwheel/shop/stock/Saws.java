package org.handwheel.shop.stock;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.handwheel.shop.table.Table;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;

/** The saws stock is cut with, and their kerfs. */
public final class Saws {
  private final List<Saw> all;

  private Saws(List<Saw> all) {
    this.all = List.copyOf(all);
  }

  /** Reads the table kept beside this class. */
  public static Saws load() {
    return new Saws(
        Table.read(Saws.class, "kerfs.csv")
            .map(
                row ->
                    new Saw(
                        row.text("saw"),
                        row.text("words"),
                        new LengthRange(
                            row.length("least", LengthUnit.MM), row.length("most", LengthUnit.MM)),
                        row.provenance())));
  }

  /** The saw of this name: {@code band}, {@code hand}, {@code cold}; case does not matter. */
  public Optional<Saw> find(String name) {
    String wanted = name.strip().toLowerCase(Locale.ROOT);
    return all.stream().filter(saw -> saw.name().equals(wanted)).findFirst();
  }

  public List<Saw> all() {
    return all;
  }
}
