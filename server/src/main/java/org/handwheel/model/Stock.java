package org.handwheel.model;

import java.util.Map;
import org.handwheel.syntax.Origin;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * The piece to start from.
 *
 * @param sizes its sizes by the part's dimensions; empty if not said
 * @param sizeOrigin the line that says them
 * @param skins what each face is to begin with
 */
public record Stock(
    Origin origin,
    Map<PartDimension, Length> sizes,
    @Nullable Origin sizeOrigin,
    Map<Face, Located<Skin>> skins,
    @Nullable Located<Length> kerf,
    @Nullable Located<Length> wander,
    int pieces,
    @Nullable Located<String> material) {
  public Stock {
    sizes = Map.copyOf(sizes);
    skins = Map.copyOf(skins);
  }

  /** Whether a comment at a face's line says that it stays as it was bought. */
  public boolean staysOnPurpose(Face face) {
    Located<Skin> skin = skins.get(face);
    return skin != null
        && skin.origin().section().ignores().stream()
            .anyMatch(
                ignore ->
                    ignore.rule().equals("face-never-squared") && ignore.isAbout(skin.origin()));
  }

  /** How a face of the stock was made. */
  public enum Skin {
    SAWN("as sawn"),
    ROLLED("as rolled"),
    CAST("as cast"),
    DRAWN("as drawn"),
    MILLED("milled before"),
    GROUND("ground before");

    private final String words;

    Skin(String words) {
      this.words = words;
    }

    /** How a message names it: "as sawn". */
    public String words() {
      return words;
    }

    /** Whether the face is already machined, so that it can serve as a reference. */
    public boolean isMachined() {
      return this == MILLED || this == GROUND;
    }
  }
}
