package org.handwheel.model.build;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.grammar.HandwheelParser.HoldAtContext;
import org.handwheel.grammar.HandwheelParser.HoldBarContext;
import org.handwheel.grammar.HandwheelParser.HoldBesideContext;
import org.handwheel.grammar.HandwheelParser.HoldClampContext;
import org.handwheel.grammar.HandwheelParser.HoldClauseContext;
import org.handwheel.grammar.HandwheelParser.HoldFixedContext;
import org.handwheel.grammar.HandwheelParser.HoldInViseLineContext;
import org.handwheel.grammar.HandwheelParser.HoldOnBedContext;
import org.handwheel.grammar.HandwheelParser.HoldOnLineContext;
import org.handwheel.grammar.HandwheelParser.HoldOnOneContext;
import org.handwheel.grammar.HandwheelParser.HoldOnPairContext;
import org.handwheel.grammar.HandwheelParser.HoldOnSoftStripContext;
import org.handwheel.grammar.HandwheelParser.HoldOverhangContext;
import org.handwheel.grammar.HandwheelParser.HoldSpacerContext;
import org.handwheel.grammar.HandwheelParser.HoldStopContext;
import org.handwheel.grammar.HandwheelParser.HoldUpContext;
import org.handwheel.grammar.HandwheelParser.PlaceContext;
import org.handwheel.grammar.HandwheelParser.RestContext;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.model.Hold.Support;
import org.handwheel.model.Located;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Owned;
import org.handwheel.model.Side;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/** Builds a {@code hold} line. */
final class HoldBuilder {
  private final FileBuilder file;
  private final Resolver resolver;
  private final Section section;
  private final ClauseOnce once;
  private final List<Hold.Clamping> clamps = new ArrayList<>();
  private @Nullable Located<Face> up;
  private @Nullable Located<Face> fixed;
  private @Nullable Located<Support> support;
  private @Nullable Located<Hold.Bar> bar;
  private @Nullable Located<Hold.Beside> beside;
  private @Nullable Located<Hold.Spacer> spacer;
  private @Nullable Located<Hold.Overhang> overhang;
  private @Nullable Located<Direction> place;
  private @Nullable Located<Direction> stop;

  HoldBuilder(FileBuilder file, Resolver resolver, Section section) {
    this.file = file;
    this.resolver = resolver;
    this.section = section;
    this.once = new ClauseOnce(file, section);
  }

  @Nullable Hold inVise(HoldInViseLineContext line) {
    Owned.Vise vise = resolver.vise(section, line.viseRef());
    Origin origin = section.origin(line);
    line.holdClause().forEach(this::read);
    requireFaces(origin);
    return vise == null ? null : hold(origin, new Hold.Rest.InVise(vise));
  }

  @Nullable Hold onPlate(HoldOnLineContext line) {
    RestContext rest = line.rest();
    Hold.PlateKind plate;
    if (rest.ANGLE_PLATE() != null) {
      plate = Hold.PlateKind.ANGLE_PLATE;
      resolver.piece(section, rest.name(), OwnKind.ANGLE_PLATE);
    } else if (rest.V_BLOCK() != null) {
      plate = Hold.PlateKind.V_BLOCK;
      resolver.piece(section, rest.name(), OwnKind.V_BLOCK);
    } else if (rest.SUBPLATE() != null) {
      plate = Hold.PlateKind.SUBPLATE;
      resolver.piece(section, rest.name(), OwnKind.SUBPLATE);
    } else {
      plate = Hold.PlateKind.TABLE;
    }
    Origin origin = section.origin(line);
    line.holdClause().forEach(this::read);
    if (up == null) {
      file.problems().error("missing-clause", origin, "say which face is up: `up top`");
    } else if (fixed != null) {
      requireFixedBeside(up.value(), fixed);
    } else if (plate == Hold.PlateKind.ANGLE_PLATE) {
      file.problems()
          .error("missing-clause", origin, "say which face is against the plate: `fixed back`");
    }
    String name = rest.name() == null ? "table" : rest.name().getText();
    return hold(origin, new Hold.Rest.OnPlate(plate, name));
  }

  private Hold hold(Origin origin, Hold.Rest rest) {
    return new Hold(
        origin, rest, up, fixed, support, bar, beside, spacer, overhang, place, stop, clamps);
  }

  private void requireFaces(Origin origin) {
    if (up == null || fixed == null) {
      file.problems()
          .error(
              "missing-clause",
              origin,
              "say which face is up and which is against the fixed jaw: `up top, fixed back`");
    } else {
      requireFixedBeside(up.value(), fixed);
      requireEndOverhangs(up.value());
    }
  }

  private void requireFixedBeside(Face above, Located<Face> against) {
    if (!above.adjoins(against.value())) {
      file.problems()
          .error(
              "bad-value",
              against.origin(),
              "with the "
                  + above.word()
                  + " up the "
                  + against.value().word()
                  + " cannot be against the fixed jaw");
      fixed = null;
    }
  }

  /** Only what looks along the jaws can stand out beyond them. */
  private void requireEndOverhangs(Face above) {
    if (overhang == null || fixed == null) {
      return;
    }
    Side end = overhang.value().end();
    boolean along =
        end instanceof Side.OfPart part
            ? part.face().adjoins(above) && part.face().adjoins(fixed.value())
            : end instanceof Side.AtMachine place && isEnd(place.direction());
    if (!along) {
      file.problems()
          .error(
              "bad-value",
              overhang.origin(),
              "only what lies at the operator-left or operator-right end of the jaws can stand"
                  + " out beyond them");
      overhang = null;
    }
  }

  private static boolean isEnd(Direction direction) {
    return direction == Direction.OPERATOR_LEFT || direction == Direction.OPERATOR_RIGHT;
  }

  private void read(HoldClauseContext clause) {
    Origin origin = section.origin(clause);
    if (!(clause instanceof HoldClampContext) && !once.check(clause)) {
      return;
    }
    if (clause instanceof HoldUpContext c) {
      up = new Located<>(Resolver.face(c.face()), origin);
    } else if (clause instanceof HoldFixedContext c) {
      fixed = new Located<>(Resolver.face(c.face()), origin);
    } else if (clause instanceof HoldOnPairContext c) {
      Owned.Parallels parallels = resolver.parallels(section, c.parallelsRef());
      if (parallels != null) {
        support(new Support.Pair(parallels), origin);
        if (parallels.count() < 2) {
          file.problems()
              .error("bad-value", origin, "the shop has only one `" + parallels.name() + "`");
        }
      }
    } else if (clause instanceof HoldOnOneContext c) {
      Owned.Parallels parallels = resolver.parallels(section, c.parallelsRef());
      if (parallels != null) {
        support(new Support.One(parallels), origin);
      }
    } else if (clause instanceof HoldOnBedContext) {
      support(new Support.Bed(), origin);
    } else if (clause instanceof HoldOnSoftStripContext c) {
      Length thickness = file.values().positiveLength(section, c.lengthValue());
      if (thickness != null) {
        support(new Support.SoftStrip(thickness), origin);
      }
    } else if (clause instanceof HoldBarContext c) {
      readBar(c, origin);
    } else if (clause instanceof HoldBesideContext c) {
      readBeside(c, origin);
    } else if (clause instanceof HoldSpacerContext c) {
      readSpacer(c, origin);
    } else if (clause instanceof HoldOverhangContext c) {
      Side side = resolver.side(section, c.side());
      Length length = file.values().positiveLength(section, c.lengthValue());
      if (side != null && length != null) {
        overhang = new Located<>(new Hold.Overhang(side, length), origin);
      }
    } else if (clause instanceof HoldAtContext c) {
      place = end(Resolver.place(c.place()), origin);
    } else if (clause instanceof HoldStopContext c) {
      stop = oneEnd(c.place());
    } else if (clause instanceof HoldClampContext c) {
      readClamp(c, origin);
    }
  }

  private void support(Support value, Origin origin) {
    if (support != null) {
      file.problems()
          .repeated(
              "repeated-clause",
              origin,
              "the work already rests on something else",
              support.origin());
      return;
    }
    support = new Located<>(value, origin);
  }

  /** An end of the jaws; the centre is the same as saying nothing. */
  private @Nullable Located<Direction> end(@Nullable Direction direction, Origin origin) {
    if (direction == null) {
      return null;
    }
    if (!isEnd(direction)) {
      file.problems()
          .error("bad-value", origin, "the jaws have an operator-left and an operator-right end");
      return null;
    }
    return new Located<>(direction, origin);
  }

  /** An end of the jaws where the centre makes no sense. */
  private @Nullable Located<Direction> oneEnd(PlaceContext place) {
    Origin origin = section.origin(place);
    Direction direction = Resolver.place(place);
    if (direction == null) {
      file.problems().error("bad-value", origin, "name an end: operator-left or operator-right");
      return null;
    }
    return end(direction, origin);
  }

  private void readBar(HoldBarContext clause, Origin origin) {
    Length dia = file.values().positiveLength(section, clause.lengthValue());
    boolean aside = clause.barHeight() != null && clause.barHeight().MID_GRIP() == null;
    Length height = aside ? file.values().positiveLength(section, clause.barHeight()) : null;
    if (dia != null && (!aside || height != null)) {
      bar = new Located<>(new Hold.Bar(dia, height), origin);
    }
  }

  private void readBeside(HoldBesideContext clause, Origin origin) {
    String name = clause.packingRef().getText();
    boolean packing = resolver.knowsPiece(OwnKind.PACKING, name) && !resolver.knowsParallels(name);
    if (packing) {
      Owned.Piece piece = resolver.piece(section, clause.packingRef(), OwnKind.PACKING);
      Length thickness = piece == null ? null : piece.size("thickness");
      if (thickness != null) {
        beside = new Located<>(new Hold.Beside(name, thickness), origin);
      }
      return;
    }
    Owned.Parallels parallels = resolver.parallels(section, clause.packingRef());
    if (parallels != null) {
      beside = new Located<>(new Hold.Beside(name, parallels.thickness()), origin);
    }
  }

  private void readSpacer(HoldSpacerContext clause, Origin origin) {
    Length width = file.values().positiveLength(section, clause.lengthValue());
    Located<Direction> at = oneEnd(clause.place());
    if (width != null && at != null) {
      spacer = new Located<>(new Hold.Spacer(width, at.value()), origin);
    }
  }

  private void readClamp(HoldClampContext clause, Origin origin) {
    Owned.Piece clamp = resolver.piece(section, clause.clampRef(), OwnKind.CLAMP);
    List<Length> point = file.values().lengths(section, clause.point().expr());
    if (clamp != null && point != null) {
      clamps.add(new Hold.Clamping(clamp, point.get(0), point.get(1), origin));
    }
  }
}
