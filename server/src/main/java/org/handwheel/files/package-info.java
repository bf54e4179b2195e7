/**
 * Reads plan and shop files from disk into a workspace. It never writes.
 *
 * <p>What cannot be read becomes a short sentence that says why; only what a person can do nothing
 * about is an exception.
 */
@NullMarked
package org.handwheel.files;

import org.jspecify.annotations.NullMarked;
