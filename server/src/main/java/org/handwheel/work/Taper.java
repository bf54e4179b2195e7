package org.handwheel.work;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.model.PartDimension;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.Slope;

/**
 * What several readings of one size show: how far the two faces are from parallel.
 *
 * <p>The bound is the difference of the readings and twice the instrument's error, over the longest
 * way along the faces that the readings can lie apart.
 */
final class Taper {
  private Taper() {}

  /**
   * The work after several readings of a size. A bound from the cut stays if it is tighter, as long
   * as the readings do not contradict it.
   *
   * @param read from the least to the greatest reading
   */
  static Workpiece afterReadings(
      Workpiece work,
      PartDimension dimension,
      LengthRange read,
      Owned.Instrument instrument,
      Origin origin) {
    Face face = Face.of(dimension, 1);
    Face opposite = face.opposite();
    if (!work.face(face).isMachined() || !work.face(opposite).isMachined()) {
      return work;
    }
    Optional<Length> longest =
        Arrays.stream(PartDimension.values())
            .filter(other -> other != dimension)
            .flatMap(other -> Optional.ofNullable(work.size(other)).stream())
            .map(size -> size.range().low())
            .filter(Length::isPositive)
            .max(Length::compareTo);
    if (longest.isEmpty()) {
      return work;
    }
    Length doubt = instrument.accuracy().times(2);
    Slope slope = Slope.of(read.width().plus(doubt), longest.get());
    Map<PartDimension, Slope> slopes = new EnumMap<>(PartDimension.class);
    for (PartDimension other : PartDimension.values()) {
      if (other != dimension) {
        slopes.put(other, slope);
      }
    }
    Relation next = new Relation(slopes, "read as " + read, origin);
    Relation known = work.relation(face, opposite);
    if (known != null) {
      Length bound = known.zone(face, opposite, work.sizes());
      boolean isContradicted = read.width().minus(doubt).isMoreThan(bound);
      boolean isTighter = next.zone(face, opposite, work.sizes()).isLessThan(bound);
      if (!isContradicted && !isTighter) {
        return work;
      }
    }
    Map<FacePair, Relation> relations = new HashMap<>(work.relations());
    relations.put(new FacePair(face, opposite), next);
    Closures.close(relations);
    return work.withRelations(relations, work.obstacles());
  }
}
