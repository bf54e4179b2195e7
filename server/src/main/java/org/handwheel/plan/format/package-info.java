/**
 * The usual form of a plan's or shop's text.
 *
 * <p>Formatting changes blanks, empty lines, line ends, commas that the grammar leaves free and the
 * spelling of keywords and signs; never a number, a name, a comment's words, the order of clauses
 * or a line whose grammar is broken.
 */
@NullMarked
package org.handwheel.plan.format;

import org.jspecify.annotations.NullMarked;
