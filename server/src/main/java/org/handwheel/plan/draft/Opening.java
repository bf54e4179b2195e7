package org.handwheel.plan.draft;

import org.handwheel.model.Owned;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * A hole, a pattern of holes, or a slot or pocket.
 *
 * @param half how far it reaches to each side of its middle, or of the middles of a pattern
 * @param below how far a tool comes out below the work; zero if it does not go through
 */
record Opening(
    String name,
    Extent extent,
    HoleTools.@Nullable Work work,
    @Nullable String cut,
    Owned.@Nullable Cutter cutter,
    Length half,
    Length below,
    Length depth,
    boolean several) {}
