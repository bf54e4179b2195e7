/**
 * The language server: a thin binding of {@link org.handwheel.ide} to the Language Server Protocol.
 *
 * <p>State changes only on the thread that reads messages; answers are computed elsewhere from the
 * immutable state of the moment the question was read.
 */
@NullMarked
package org.handwheel.lsp;

import org.jspecify.annotations.NullMarked;
