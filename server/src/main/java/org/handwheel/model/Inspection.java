package org.handwheel.model;

import org.handwheel.syntax.Origin;

/** One check of the finished part. */
public sealed interface Inspection {
  Origin origin();

  Owned.Instrument instrument();

  record OfDimension(PartDimension dimension, Owned.Instrument instrument, Origin origin)
      implements Inspection {}

  record OfFeature(String name, Owned.Instrument instrument, Origin origin) implements Inspection {}

  record OfRelation(Face face, Face reference, Owned.Instrument instrument, Origin origin)
      implements Inspection {}

  record OfFlatness(Face face, Owned.Instrument instrument, Origin origin) implements Inspection {}
}
