/** Pictures of setups: what lies where, drawn by the rules of technical drawings. */
@NullMarked
package org.handwheel.plan.picture;

import org.jspecify.annotations.NullMarked;
