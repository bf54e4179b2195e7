package org.handwheel.model.build;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.handwheel.model.Names.Declaration;
import org.handwheel.model.Part;
import org.handwheel.model.Shop;
import org.handwheel.units.LengthUnit;
import org.handwheel.units.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * All that the meaning of a setup's lines rests on besides their own text: the same lines on the
 * same ground mean the same.
 *
 * @param units the file's units where the setup begins
 * @param values what names of values stand for there
 * @param names the names that lines of a setup may refer to
 * @param doubts what broken lines leave open; it matters only to a setup that asked
 */
record SetupGround(
    @Nullable LengthUnit units,
    Map<String, Quantity> values,
    List<Declaration> names,
    Shop shop,
    @Nullable Part part,
    NameTable.Doubts doubts) {

  static SetupGround of(FileBuilder file, Shop shop, @Nullable Part part) {
    return new SetupGround(
        file.values().units(),
        file.values().known(),
        file.names().referable(),
        shop,
        part,
        file.names().doubts());
  }

  /** Whether all is the same except perhaps what is doubtful. */
  boolean saysTheSame(SetupGround other) {
    return units == other.units
        && values.equals(other.values)
        && names.equals(other.names)
        && shop.equals(other.shop)
        && Objects.equals(part, other.part);
  }
}
