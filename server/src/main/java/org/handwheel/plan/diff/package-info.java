/**
 * What a machinist would call the difference of two plans or two shop files: sizes, holding, cuts,
 * tools, times and findings. How a file is laid out, its comments and the units a length is written
 * in make no difference.
 *
 * <p>Pure functions over what a check gives. What a record of the model says is read from its
 * components ({@link org.handwheel.plan.diff.Facts}), so that a new kind of statement is compared
 * without a line here.
 */
@NullMarked
package org.handwheel.plan.diff;

import org.jspecify.annotations.NullMarked;
