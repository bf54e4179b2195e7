/** Rules about how the work is held and what it rests on. */
@NullMarked
package org.handwheel.rules.hold;

import org.jspecify.annotations.NullMarked;
