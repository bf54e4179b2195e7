package org.handwheel.shop.stock;

import org.handwheel.shop.table.Provenance;
import org.handwheel.units.LengthRange;

/**
 * A way of sawing stock.
 *
 * @param name as a plan writes it
 * @param words its name in the trade
 * @param kerf the usual width of its cut
 * @param provenance where that comes from
 */
public record Saw(String name, String words, LengthRange kerf, Provenance provenance) {}
