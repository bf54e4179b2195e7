package org.handwheel.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.model.Names.Declaration;
import org.handwheel.model.Names.Kind;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;

/** Giving something another name, in every file of the workspace that names it. */
public final class Rename {
  private final Project project;

  public Rename(Project project) {
    this.project = project;
  }

  /** A change of names, or why it is refused. */
  public sealed interface Outcome {}

  /** The places to write the new name in. */
  public record Changes(String name, List<Origin> places) implements Outcome {
    public Changes {
      places = List.copyOf(places);
    }
  }

  /** Why it cannot be renamed, in one sentence. */
  public record Refused(String reason) implements Outcome {}

  /** The name at an offset, if it can be renamed. */
  public Outcome prepare(SyntaxTree tree, int offset) {
    Optional<Spot> spot = Spot.at(tree, offset);
    if (spot.isEmpty()) {
      return new Refused("there is no name here");
    }
    Optional<Declaration> declaration = References.declaration(project, tree, spot.get());
    return declaration.isEmpty()
        ? new Refused(whyNot(tree, spot.get()))
        : new Changes(spot.get().origin().text(), List.of(spot.get().origin()));
  }

  private static String whyNot(SyntaxTree tree, Spot spot) {
    if (DrawingNames.at(tree, spot).isPresent()) {
      return spot.origin().text().length() == 1
          ? "datum letters are the drawing's; change them in the `datum` line"
          : "length, width and height are always the part's own sizes";
    }
    if (spot.nearest(HandwheelParser.FaceContext.class).isPresent()) {
      return "the faces of a part have fixed names";
    }
    if (spot.nearest(HandwheelParser.MaterialRefContext.class).isPresent()) {
      return "materials of the tables have fixed names";
    }
    return spot.nearest(HandwheelParser.NameContext.class).isPresent()
        ? "nothing of this name is declared"
        : "only names can be renamed: values, holes, features, setups and things of the shop";
  }

  /** The change that gives what is at an offset a new name. */
  public Outcome rename(SyntaxTree tree, int offset, String newName) {
    Outcome prepared = prepare(tree, offset);
    if (prepared instanceof Refused) {
      return prepared;
    }
    Declaration declaration =
        Spot.at(tree, offset)
            .flatMap(spot -> References.declaration(project, tree, spot))
            .orElseThrow();
    Optional<String> problem = problem(declaration, newName);
    if (problem.isPresent()) {
      return new Refused(problem.get());
    }
    List<Origin> places = new ArrayList<>();
    places.add(declaration.origin());
    project.uses(declaration).stream().filter(use -> !places.contains(use)).forEach(places::add);
    return new Changes(newName, places);
  }

  private Optional<String> problem(Declaration declaration, String newName) {
    if (declaration.kind() == Kind.VALUE && Hovers.dimension(newName).isPresent()) {
      return Optional.of("`" + newName + "` is always the part's own size");
    }
    if (!isName(newName, declaration.kind())) {
      return Optional.of(
          "`"
              + newName
              + "` cannot be a name here: a name is a letter, then letters, digits and `_`, with `-`"
              + " between parts, and no word the language keeps for itself");
    }
    String wanted = newName.toLowerCase(Locale.ROOT);
    if (wanted.equals(declaration.name().toLowerCase(Locale.ROOT))) {
      return Optional.empty();
    }
    for (Project.NamedFile file : project.knowing(declaration)) {
      Optional<Declaration> other =
          Stream.concat(
                  file.names().declarations().stream(),
                  file.names().uses().stream().map(use -> use.declaration()))
              .filter(known -> known.kind() == declaration.kind())
              .filter(known -> known.name().toLowerCase(Locale.ROOT).equals(wanted))
              .findFirst();
      if (other.isPresent()) {
        return Optional.of(
            "there is already a "
                + declaration.kind().name().toLowerCase(Locale.ROOT)
                + " `"
                + other.get().name()
                + "` in "
                + other.get().origin().section().path());
      }
    }
    return Optional.empty();
  }

  /** Whether the grammar takes a text as a name where such names are declared. */
  private static boolean isName(String text, Kind kind) {
    if (text.isBlank() || !text.equals(text.strip()) || text.lines().count() != 1) {
      return false;
    }
    String line =
        switch (kind) {
          case VALUE -> "let " + text + " = 1";
          case HOLE -> "drill " + text;
          case FEATURE -> "slot " + text;
          case SETUP -> "setup " + text;
          default -> "cutter " + text;
        };
    SyntaxTree tree = SyntaxTree.parse("name.plan", line);
    for (Section section : tree.sections()) {
      if (!section.problems().isEmpty()) {
        return false;
      }
    }
    int at = line.indexOf(text, line.indexOf(' '));
    return Spot.at(tree, at)
        .filter(spot -> spot.origin().text().equals(text))
        .flatMap(spot -> spot.nearest(HandwheelParser.NameContext.class))
        .isPresent();
  }
}
