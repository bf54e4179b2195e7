/**
 * What a plan and a shop say: parts, stock, setups and owned things as immutable records, with the
 * place in the text where each was said.
 */
@NullMarked
package org.handwheel.model;

import org.jspecify.annotations.NullMarked;
