/**
 * Exact lengths, the quantities of the shop and how they are shown to people.
 *
 * <p>The lowest layer: it knows nothing of plans, text positions or editors. A length is a whole
 * number of picometres, so that a millimetre, a thousandth and a 64th of an inch are all exact.
 */
@NullMarked
package org.handwheel.units;

import org.jspecify.annotations.NullMarked;
