/** Speeds, feeds, chip thickness, power, force and deflection in milling. */
@NullMarked
package org.handwheel.shop.cutting;

import org.jspecify.annotations.NullMarked;
