/**
 * The rules: what is wrong with a plan that was worked through, one class a rule, and the one
 * function that checks a file.
 *
 * <p>A rule's page, {@code pages/ID.md} beside the compiled classes, explains it; the page's
 * examples are its tests.
 */
@NullMarked
package org.handwheel.rules;

import org.jspecify.annotations.NullMarked;
