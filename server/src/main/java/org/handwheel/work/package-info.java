/**
 * The engine: the workpiece through the plan, the geometry of each holding, each cut and each dial.
 *
 * <p>Pure functions over immutable records; nothing here judges, the rules do.
 */
@NullMarked
package org.handwheel.work;

import org.jspecify.annotations.NullMarked;
