package org.handwheel.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.ParserRuleContext;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.SyntaxTree;

/** Ever larger pieces of a text round a place: word, clause, statement, section, file. */
public final class Selections {
  private Selections() {}

  /** A piece of the file. */
  public record Piece(int start, int end) {}

  /** The pieces round an offset, smallest first; each holds the one before and is larger. */
  public static List<Piece> around(SyntaxTree tree, int offset) {
    List<Piece> pieces = new ArrayList<>();
    Optional<Spot> spot = Spot.at(tree, offset);
    if (spot.isPresent()) {
      add(pieces, piece(tree, spot.get().origin()));
      List<ParserRuleContext> path = spot.get().path();
      for (int i = path.size() - 1; i >= 0; i--) {
        add(pieces, piece(tree, spot.get().section().origin(path.get(i))));
      }
      int base = tree.base(spot.get().section());
      add(pieces, new Piece(base, base + spot.get().section().text().length()));
    }
    add(pieces, new Piece(0, tree.source().length()));
    return pieces;
  }

  private static Piece piece(SyntaxTree tree, Origin origin) {
    return new Piece(tree.start(origin), tree.end(origin));
  }

  private static void add(List<Piece> pieces, Piece next) {
    if (pieces.isEmpty()) {
      pieces.add(next);
      return;
    }
    Piece last = pieces.get(pieces.size() - 1);
    boolean larger = next.start() <= last.start() && next.end() >= last.end() && !next.equals(last);
    if (larger) {
      pieces.add(next);
    }
  }
}
