/** Rules about the cut itself: depth, reach, coverage and direction. */
@NullMarked
package org.handwheel.rules.cut;

import org.jspecify.annotations.NullMarked;
