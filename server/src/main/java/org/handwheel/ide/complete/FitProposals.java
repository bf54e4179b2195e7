package org.handwheel.ide.complete;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.shop.fit.Fits;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;

/** Classes of ISO 286 for a bore, each with its limits where the diameter is a plain number. */
final class FitProposals {
  private static final int RANK = 20;

  /** Usual for bores, the most usual first (ISO 286-1, preferred classes; from memory). */
  private static final List<String> USUAL =
      List.of("H7", "H8", "H6", "H9", "H11", "G7", "F8", "E9", "D10", "JS7", "K7", "N7", "P7");

  private final Slot slot;
  private final Situation now;

  FitProposals(Slot slot, Situation now) {
    this.slot = slot;
    this.now = now;
  }

  List<Proposal> all() {
    Optional<Length> dia = dia();
    Fits fits = now.view().tables().fits();
    List<Proposal> proposals = new ArrayList<>();
    for (String code : USUAL) {
      Optional<LengthRange> limits = dia.flatMap(length -> fits.limits(length, code));
      boolean known = dia.isEmpty() || limits.isPresent();
      if (known) {
        proposals.add(
            Proposal.plain(
                code,
                Proposal.Kind.VALUE,
                limits.map(LengthRange::toString).orElse("ISO 286"),
                "fit " + code + " " + dia.map(length -> "" + length.picometres()).orElse("-"),
                RANK + proposals.size()));
      }
    }
    return proposals;
  }

  /** The number before the cursor, with its unit or the file's. */
  private Optional<Length> dia() {
    List<Token> tokens = slot.before();
    int last = tokens.size() - 1;
    LengthUnit unit = now.units();
    if (last >= 0 && ValueProposals.unit(tokens.get(last)) != null) {
      unit = ValueProposals.unit(tokens.get(last));
      last--;
    }
    boolean plain =
        last >= 0
            && (tokens.get(last).getType() == HandwheelLexer.DEC
                || tokens.get(last).getType() == HandwheelLexer.INT);
    if (!plain || unit == null) {
      return Optional.empty();
    }
    String text = tokens.get(last).getText();
    return Optional.of(Length.of(text.startsWith(".") ? "0" + text : text, unit));
  }
}
