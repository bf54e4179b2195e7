package org.handwheel.model;

import java.util.List;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;

/** What was measured on one piece. */
public record LogSection(String title, Origin header, List<Reading> readings) {
  public LogSection {
    readings = List.copyOf(readings);
  }

  /** {@code in second: read height 19.22 19.24 with mic25}. */
  public record Reading(
      Located<String> setup,
      PartDimension dimension,
      List<Length> values,
      Owned.Instrument instrument,
      Origin origin) {
    public Reading {
      values = List.copyOf(values);
    }
  }
}
