/** Merging two changes of a file, statement by statement, where nothing can be lost. */
@NullMarked
package org.handwheel.plan.merge;

import org.jspecify.annotations.NullMarked;
