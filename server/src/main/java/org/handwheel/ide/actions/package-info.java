/** Changes an editor can offer: mending what was found, and rewriting without changing meaning. */
@NullMarked
package org.handwheel.ide.actions;

import org.jspecify.annotations.NullMarked;
