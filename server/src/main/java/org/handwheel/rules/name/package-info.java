/** Rules about names. */
@NullMarked
package org.handwheel.rules.name;

import org.jspecify.annotations.NullMarked;
