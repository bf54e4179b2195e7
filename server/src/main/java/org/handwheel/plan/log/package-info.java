/** Readings put into a plan's log. */
@NullMarked
package org.handwheel.plan.log;

import org.jspecify.annotations.NullMarked;
