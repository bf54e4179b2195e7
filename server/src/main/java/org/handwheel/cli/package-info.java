/**
 * The command line: the only layer that prints and the only one that knows picocli.
 *
 * <p>It may use every other layer. Exit codes: 0 nothing found, 1 findings, 2 wrong usage or an
 * internal error.
 */
@NullMarked
package org.handwheel.cli;

import org.jspecify.annotations.NullMarked;
