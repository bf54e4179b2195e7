/** Services on whole plans: putting a text into its usual form. */
@NullMarked
package org.handwheel.plan;

import org.jspecify.annotations.NullMarked;
