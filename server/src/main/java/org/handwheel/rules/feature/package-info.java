/** Rules about slots, pockets, outlines and the order they are cut in. */
@NullMarked
package org.handwheel.rules.feature;

import org.jspecify.annotations.NullMarked;
