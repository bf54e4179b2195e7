/**
 * Text to tree: sections, tokens and the parse tree of a file, and findings with their places.
 *
 * <p>Parsing never fails: any text gives a tree that holds every token, and a list of problems. A
 * section is parsed by itself and knows nothing of where it stands in its file, so that an edit
 * leaves the other sections as they are.
 */
@NullMarked
package org.handwheel.syntax;

import org.jspecify.annotations.NullMarked;
