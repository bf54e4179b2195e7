/** Holes: where they are, what each step makes of them, and how the dials are set for them. */
@NullMarked
package org.handwheel.work.hole;

import org.jspecify.annotations.NullMarked;
