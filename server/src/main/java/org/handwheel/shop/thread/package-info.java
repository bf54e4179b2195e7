/** Screw threads, tapping sizes, clearance holes and screw heads. */
@NullMarked
package org.handwheel.shop.thread;

import org.jspecify.annotations.NullMarked;
