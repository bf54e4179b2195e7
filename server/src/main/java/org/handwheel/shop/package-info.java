/**
 * The tables and formulas of the shop: materials, drills, threads, tolerances and fits, cutting
 * data, saw kerfs.
 *
 * <p>Pure functions over immutable data. The data lie in comma-separated files beside the classes;
 * each block there says from where its values come and how they are known, and {@link
 * org.handwheel.shop.table.Provenance} carries that to whoever shows a value. Depends on {@code
 * org.handwheel.units} only.
 */
@NullMarked
package org.handwheel.shop;

import org.jspecify.annotations.NullMarked;
