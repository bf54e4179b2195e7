/**
 * From parse tree to model: values are computed, names resolved, and what makes no sense reported.
 */
@NullMarked
package org.handwheel.model.build;

import org.jspecify.annotations.NullMarked;
