/** Sawing, cut lists and the mass of stock. */
@NullMarked
package org.handwheel.shop.stock;

import org.jspecify.annotations.NullMarked;
