/**
 * What an editor asks of a plan, as plain data: offsets, labels and texts. Knows no protocol.
 *
 * <p>Every feature is a pure function of a {@link org.handwheel.ide.View} and an offset.
 */
@NullMarked
package org.handwheel.ide;

import org.jspecify.annotations.NullMarked;
