package org.handwheel.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelParser.AxisContext;
import org.handwheel.grammar.HandwheelParser.FaceContext;
import org.handwheel.model.Names.Declaration;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.SyntaxTree;

/** Where a name is declared and used. */
public final class References {
  private References() {}

  /**
   * Where a name leads.
   *
   * @param from the name under the cursor
   * @param to the name where it is declared
   * @param line the whole line of the declaration, without blanks at its ends
   */
  public record Link(Origin from, Origin to, Origin line) {}

  /** How a place touches a name. */
  public enum Touch {
    /** It declares it. */
    WRITE,
    /** It uses it. */
    READ
  }

  /** A place of the file that names the same thing. */
  public record Mark(Origin origin, Touch touch) {}

  /** The declaration of the name at an offset. */
  public static Optional<Link> definition(View view, int offset) {
    Optional<Spot> spot = Spot.at(view.tree(), offset);
    return spot.flatMap(
        place ->
            NameIndex.of(view)
                .at(place)
                .map(declaration -> link(place.origin(), declaration.origin()))
                .or(() -> drawing(view.tree(), place)));
  }

  private static Optional<Link> drawing(SyntaxTree tree, Spot spot) {
    return DrawingNames.at(tree, spot)
        .flatMap(
            mention ->
                DrawingNames.of(tree, mention.word()).stream()
                    .filter(DrawingNames.Mention::declares)
                    .findFirst()
                    .map(found -> link(mention.origin(), found.origin())));
  }

  private static Link link(Origin from, Origin to) {
    var source = to.section().source();
    int line = source.lineAt(to.start());
    int start = source.lineStart(line);
    int end = source.lineEnd(line);
    while (start < to.start() && Character.isWhitespace(source.text().charAt(start))) {
      start++;
    }
    return new Link(from, to, new Origin(to.section(), start, Math.max(end, to.end())));
  }

  /** All places of this file that name what is at an offset; also faces and axes of one setup. */
  public static List<Mark> highlights(View view, int offset) {
    Optional<Spot> spot = Spot.at(view.tree(), offset);
    if (spot.isEmpty()) {
      return List.of();
    }
    NameIndex names = NameIndex.of(view);
    Optional<Declaration> declaration = names.at(spot.get());
    List<Mark> marks = new ArrayList<>();
    if (declaration.isPresent()) {
      if (view.tree().contains(declaration.get().origin())) {
        marks.add(new Mark(declaration.get().origin(), Touch.WRITE));
      }
      names.uses(declaration.get()).forEach(use -> marks.add(new Mark(use, Touch.READ)));
      return marks;
    }
    Optional<DrawingNames.Mention> mention = DrawingNames.at(view.tree(), spot.get());
    if (mention.isPresent()) {
      for (DrawingNames.Mention same : DrawingNames.of(view.tree(), mention.get().word())) {
        marks.add(new Mark(same.origin(), same.declares() ? Touch.WRITE : Touch.READ));
      }
      return marks;
    }
    return sameWord(spot.get());
  }

  /** A face or an axis is marked within its section: there it lies one way. */
  private static List<Mark> sameWord(Spot spot) {
    if (spot.nearest(FaceContext.class).isEmpty() && spot.nearest(AxisContext.class).isEmpty()) {
      return List.of();
    }
    List<Mark> marks = new ArrayList<>();
    for (Token token : spot.section().tokens()) {
      if (token.getType() == spot.token().getType()) {
        marks.add(new Mark(spot.section().origin(token), Touch.READ));
      }
    }
    return marks;
  }

  /** What to list of the places that name something. */
  public enum Listing {
    WITH_DECLARATION,
    USES_ONLY
  }

  /**
   * All places of the workspace that name what is at an offset.
   *
   * @param tree the file of the offset, as the project has it
   */
  public static List<Origin> all(Project project, SyntaxTree tree, int offset, Listing listing) {
    Optional<Spot> spot = Spot.at(tree, offset);
    Optional<Declaration> declaration = spot.flatMap(place -> declaration(project, tree, place));
    List<Origin> places = new ArrayList<>();
    if (declaration.isPresent()) {
      if (listing == Listing.WITH_DECLARATION) {
        places.add(declaration.get().origin());
      }
      places.addAll(project.uses(declaration.get()));
      return places;
    }
    spot.flatMap(place -> DrawingNames.at(tree, place))
        .ifPresent(
            mention ->
                DrawingNames.of(tree, mention.word()).stream()
                    .filter(same -> listing == Listing.WITH_DECLARATION || !same.declares())
                    .forEach(same -> places.add(same.origin())));
    return places;
  }

  static Optional<Declaration> declaration(Project project, SyntaxTree tree, Spot spot) {
    return project.files().stream()
        .filter(file -> file.tree() == tree)
        .findFirst()
        .flatMap(file -> new NameIndex(file.names()).at(spot));
  }
}
