/** Materials and what is known of cutting them. */
@NullMarked
package org.handwheel.shop.material;

import org.jspecify.annotations.NullMarked;
