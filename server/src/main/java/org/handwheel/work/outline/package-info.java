/** Round outlines cut on a mill with two handles: stations, what they leave, the dials. */
@NullMarked
package org.handwheel.work.outline;

import org.jspecify.annotations.NullMarked;
