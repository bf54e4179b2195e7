/** Chains of sizes on a drawing: what they leave between two of its points. */
@NullMarked
package org.handwheel.work.chain;

import org.jspecify.annotations.NullMarked;
