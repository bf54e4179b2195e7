/** Rules about zeros, dials and locks. */
@NullMarked
package org.handwheel.rules.dial;

import org.jspecify.annotations.NullMarked;
