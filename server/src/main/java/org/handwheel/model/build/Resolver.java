package org.handwheel.model.build;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.antlr.v4.runtime.tree.ParseTree;
import org.antlr.v4.runtime.tree.TerminalNode;
import org.handwheel.grammar.HandwheelParser.AxisContext;
import org.handwheel.grammar.HandwheelParser.DimensionContext;
import org.handwheel.grammar.HandwheelParser.FaceContext;
import org.handwheel.grammar.HandwheelParser.FacesContext;
import org.handwheel.grammar.HandwheelParser.PlaceContext;
import org.handwheel.grammar.HandwheelParser.SideContext;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Located;
import org.handwheel.model.Names.Kind;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Owned;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Shop;
import org.handwheel.model.Side;
import org.handwheel.syntax.Section;
import org.jspecify.annotations.Nullable;

/** Words of the tree to faces, places, axes and owned things. */
final class Resolver {
  private final FileBuilder file;
  private final Shop shop;

  /** Many lines of a plan ask for the same few things. */
  private final Map<Class<? extends Owned>, Map<String, @Nullable Owned>> found = new HashMap<>();

  private int missing;

  Resolver(FileBuilder file, Shop shop) {
    this.file = file;
    this.shop = shop;
  }

  static Face face(FaceContext context) {
    return Face.valueOf(context.getText().toUpperCase(Locale.ROOT));
  }

  /** The faces a line names one by one, or all six by the word `all`, each with its place. */
  static List<Located<Face>> faces(
      Section section, @Nullable TerminalNode all, @Nullable FacesContext named) {
    if (all != null) {
      return Face.all().stream().map(face -> new Located<>(face, section.origin(all))).toList();
    }
    return named == null
        ? List.of()
        : named.face().stream()
            .map(context -> new Located<>(face(context), section.origin(context)))
            .toList();
  }

  static Axis axis(AxisContext context) {
    String text = context.getText().toUpperCase(Locale.ROOT);
    return text.equals("Y") ? Axis.Y : text.equals("Z") ? Axis.Z : Axis.X;
  }

  static Set<Axis> axes(List<AxisContext> contexts) {
    Set<Axis> axes = EnumSet.noneOf(Axis.class);
    contexts.forEach(context -> axes.add(axis(context)));
    return axes;
  }

  static PartDimension dimension(DimensionContext context) {
    return PartDimension.valueOf(context.getText().toUpperCase(Locale.ROOT));
  }

  /** A place at the machine; nothing for the centre. */
  static @Nullable Direction place(PlaceContext context) {
    if (context.operatorPlace() == null) {
      return null;
    }
    String word = context.getText().toUpperCase(Locale.ROOT).replace('-', '_');
    return Direction.valueOf(word);
  }

  @Nullable Side side(Section section, SideContext context) {
    if (context.face() != null) {
      return new Side.OfPart(face(context.face()));
    }
    Direction direction = place(context.place());
    if (direction == null) {
      file.problems()
          .error("bad-value", section.origin(context), "name a side here, not the centre");
      return null;
    }
    return new Side.AtMachine(direction);
  }

  Owned.@Nullable Machine machine(Section section, ParseTree name) {
    return thing(section, name, Kind.MACHINE, Owned.Machine.class, "machine");
  }

  Owned.@Nullable Vise vise(Section section, ParseTree name) {
    return thing(section, name, Kind.VISE, Owned.Vise.class, "vise");
  }

  Owned.@Nullable Parallels parallels(Section section, ParseTree name) {
    return thing(section, name, Kind.PARALLELS, Owned.Parallels.class, "set of parallels");
  }

  Owned.@Nullable Cutter cutter(Section section, ParseTree name) {
    return thing(section, name, Kind.CUTTER, Owned.Cutter.class, "cutter");
  }

  Owned.@Nullable Instrument instrument(Section section, ParseTree name) {
    return thing(section, name, Kind.INSTRUMENT, Owned.Instrument.class, "instrument");
  }

  Owned.@Nullable Finder finder(Section section, ParseTree name) {
    return thing(section, name, Kind.FINDER, Owned.Finder.class, "edge finder");
  }

  Owned.@Nullable Piece piece(Section section, ParseTree name, OwnKind kind) {
    String text = name.getText();
    Owned.Piece piece = shop.findPiece(kind, text).orElse(null);
    boolean known =
        file.names().use(Kind.PIECE, kind.word(), text, section.origin(name)).isPresent();
    if (known && piece == null) {
      shop.all(Owned.Piece.class).stream()
          .filter(other -> other.name().equalsIgnoreCase(text))
          .findFirst()
          .ifPresent(
              other ->
                  file.problems()
                      .error(
                          "undefined-name",
                          section.origin(name),
                          "`" + text + "` is " + other.kind().words() + ", not " + kind.words()));
    }
    return counted(piece);
  }

  /** A tool for holes: a cutter, or a drill, reamer or tap. */
  @Nullable Owned tool(Section section, ParseTree name) {
    String text = name.getText();
    boolean isCutter = file.names().knows(Kind.CUTTER, text);
    file.names().use(isCutter ? Kind.CUTTER : Kind.PIECE, "tool", text, section.origin(name));
    Owned tool =
        isCutter
            ? shop.find(Owned.Cutter.class, text).orElse(null)
            : shop.find(Owned.Piece.class, text).orElse(null);
    return counted(tool);
  }

  boolean knowsPiece(OwnKind kind, String name) {
    return shop.findPiece(kind, name).isPresent();
  }

  boolean knowsParallels(String name) {
    return shop.find(Owned.Parallels.class, name).isPresent();
  }

  private <T extends Owned> @Nullable T thing(
      Section section, ParseTree name, Kind kind, Class<T> type, String words) {
    String text = name.getText();
    file.names().use(kind, words, text, section.origin(name));
    Map<String, @Nullable Owned> things = found.computeIfAbsent(type, key -> new HashMap<>());
    Owned thing = things.computeIfAbsent(text, key -> shop.find(type, key).orElse(null));
    return counted(type.cast(thing));
  }

  private <T extends Owned> @Nullable T counted(@Nullable T thing) {
    if (thing == null) {
      missing++;
    }
    return thing;
  }

  /**
   * How many things were asked for that are not known or not soundly described; not each of them is
   * reported where it is used.
   */
  int missing() {
    return missing;
  }
}
