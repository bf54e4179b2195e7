/** Twist drills by number, letter, fraction and millimetre, their points, feeds and reamers. */
@NullMarked
package org.handwheel.shop.drill;

import org.jspecify.annotations.NullMarked;
