/** Tolerances and fits: ISO 286, ISO 2768, title blocks, stack-up and measuring. */
@NullMarked
package org.handwheel.shop.fit;

import org.jspecify.annotations.NullMarked;
