/** Geometry of rounds, ellipses and obrounds cut by steps. */
@NullMarked
package org.handwheel.shop.outline;

import org.jspecify.annotations.NullMarked;
