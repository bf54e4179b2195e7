package org.handwheel.shop.fit;

import org.handwheel.shop.table.Provenance;
import org.handwheel.units.Length;

/**
 * A measuring instrument.
 *
 * @param name as a plan writes it
 * @param words its name in the trade
 * @param resolution the least step it shows
 * @param uncertainty how far a careful reading may be out, plus or minus
 * @param provenance where the figures come from
 */
public record Instrument(
    String name, String words, Length resolution, Length uncertainty, Provenance provenance) {}
