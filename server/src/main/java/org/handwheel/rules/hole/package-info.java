/** Rules about holes: where they are, what they meet, and the order they are made in. */
@NullMarked
package org.handwheel.rules.hole;

import org.jspecify.annotations.NullMarked;
