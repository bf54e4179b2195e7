/** The sheet for the machine: a plan step by step, with dials, sizes and boxes to write in. */
@NullMarked
package org.handwheel.plan.sheet;

import org.jspecify.annotations.NullMarked;
