/** Reading the tables kept beside the program, and where their values come from. */
@NullMarked
package org.handwheel.shop.table;

import org.jspecify.annotations.NullMarked;
