/** Rules about sizes: what is left on, what is taken off, and whether it can be measured. */
@NullMarked
package org.handwheel.rules.size;

import org.jspecify.annotations.NullMarked;
