package org.handwheel.model;

import java.util.List;
import org.handwheel.syntax.Origin;

/**
 * The names of a file: where each is declared and used.
 *
 * @param uses references, each with the declaration it means
 */
public record Names(List<Declaration> declarations, List<Use> uses) {
  public Names {
    declarations = List.copyOf(declarations);
    uses = List.copyOf(uses);
  }

  /** What a name stands for; names of different kinds do not collide. */
  public enum Kind {
    VALUE,
    HOLE,
    FEATURE,
    SETUP,
    MACHINE,
    VISE,
    PARALLELS,
    CUTTER,
    INSTRUMENT,
    FINDER,
    MATERIAL,
    PIECE
  }

  public record Declaration(Kind kind, String name, Origin origin) {}

  public record Use(Origin origin, Declaration declaration) {}
}
