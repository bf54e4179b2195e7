/** The log of a plan: where what was measured on a piece is written down. */
@NullMarked
package org.handwheel.plan.log;

import org.jspecify.annotations.NullMarked;
