/**
 * What may be written at the cursor: the grammar says which words, the plan worked through says
 * which of them make sense and with what numbers.
 */
@NullMarked
package org.handwheel.ide.complete;

import org.jspecify.annotations.NullMarked;
