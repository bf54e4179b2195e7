/** Slots, pockets, outlines, corners and chamfers cut on a mill with two handles. */
@NullMarked
package org.handwheel.work.feature;

import org.jspecify.annotations.NullMarked;
