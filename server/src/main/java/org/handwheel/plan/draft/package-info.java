/** Works out a whole plan from the part, the stock and the shop alone. */
@NullMarked
package org.handwheel.plan.draft;

import org.jspecify.annotations.NullMarked;
