package org.handwheel.plan.draft;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.UnitsLineContext;
import org.handwheel.model.Face;
import org.handwheel.model.Limits;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.model.Part.Callout;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.model.Shop;
import org.handwheel.model.Stock;
import org.handwheel.model.Stock.Skin;
import org.handwheel.rules.Checked;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.Dial;
import org.handwheel.work.Drawing;
import org.handwheel.work.Engine;
import org.handwheel.work.PlanRun;
import org.handwheel.work.SizeState;
import org.handwheel.work.Workpiece;
import org.jspecify.annotations.Nullable;

/**
 * What is to be made, of what, and with what.
 *
 * @param toCut the faces that have to be machined
 */
record Task(
    Plan plan,
    Part part,
    Stock stock,
    PlanRun start,
    StandardTables tables,
    Numbers numbers,
    Set<Face> toCut) {
  Task {
    toCut = toCut.isEmpty() ? EnumSet.noneOf(Face.class) : EnumSet.copyOf(toCut);
  }

  static Optional<Task> of(Checked bare, StandardTables tables) {
    Plan plan = bare.plan();
    PlanRun run = bare.run();
    if (plan == null || run == null || plan.part() == null || plan.stock() == null) {
      return Optional.empty();
    }
    Task task =
        new Task(
            plan,
            plan.part(),
            plan.stock(),
            run,
            tables,
            new Numbers(units(bare.tree())),
            EnumSet.noneOf(Face.class));
    Set<Face> toCut = EnumSet.noneOf(Face.class);
    for (PartDimension dimension : PartDimension.values()) {
      toCut.addAll(task.facesToCut(dimension));
    }
    task.addUnproved(toCut);
    return Optional.of(
        new Task(plan, plan.part(), plan.stock(), run, tables, task.numbers(), toCut));
  }

  private static LengthUnit units(SyntaxTree tree) {
    for (Section section : tree.sections()) {
      for (ContentContext line : section.lines()) {
        if (line.statement() instanceof UnitsLineContext units && units.lengthUnit() != null) {
          String word = units.lengthUnit().getText().toLowerCase(Locale.ROOT);
          return word.startsWith("in")
              ? LengthUnit.IN
              : word.equals("thou") ? LengthUnit.THOU : LengthUnit.MM;
        }
      }
    }
    return LengthUnit.MM;
  }

  Shop shop() {
    return plan.shop();
  }

  Limits limits() {
    return plan.shop().limits();
  }

  Drawing.@Nullable Demand demand(PartDimension dimension) {
    return start.drawing().demand(dimension);
  }

  Length skin(Workpiece work, Face face) {
    return work.face(face).isMachined()
        ? Length.ZERO
        : Engine.skinDepth(work.face(face).skin(), limits());
  }

  /** The error that the nearest division of the dial may leave on an axis. */
  Length dialError(org.handwheel.model.Axis axis) {
    Owned.Machine machine = plan.machine();
    Owned.Screw screw = machine == null ? null : machine.screw(axis);
    return screw == null ? Length.ZERO : Dial.worstRounding(screw);
  }

  private Set<Face> facesToCut(PartDimension dimension) {
    Set<Face> faces = EnumSet.noneOf(Face.class);
    Drawing.Demand demand = demand(dimension);
    SizeState size = start.start().size(dimension);
    Set<Face> both = EnumSet.of(Face.of(dimension, 1), Face.of(dimension, -1));
    boolean asBought = size != null && demand != null && isMade(demand, size);
    for (Face face : both) {
      Skin skin = start.start().face(face).skin();
      if (stock.staysOnPurpose(face)) {
        continue;
      }
      boolean machined = start.start().face(face).isMachined();
      boolean raw = !machined && skin != Skin.DRAWN && demand != null && isSaid(face);
      boolean wanted = !machined && isAskedFor(face);
      boolean drawn = skin == Skin.DRAWN && demand != null && !asBought;
      if (raw || wanted || drawn) {
        faces.add(face);
      }
    }
    if (faces.isEmpty() && demand != null && size != null && !asBought) {
      // Both were milled before: one of them is enough to bring the piece to size.
      both.stream().filter(face -> !stock.staysOnPurpose(face)).limit(1).forEach(faces::add);
    }
    return faces;
  }

  /** Of two faces that were milled before nobody knows how they lie: one is cut once more. */
  private void addUnproved(Set<Face> faces) {
    for (Callout callout : part.callouts()) {
      if (callout instanceof Callout.Square square) {
        addUnproved(square.face(), square.reference(), faces);
      } else if (callout instanceof Callout.Parallel parallel) {
        addUnproved(parallel.face(), parallel.reference(), faces);
      } else if (callout instanceof Callout.SquareAll) {
        faces.addAll(Face.all());
      }
    }
  }

  private void addUnproved(Face face, Face reference, Set<Face> faces) {
    if (!faces.contains(face) && !faces.contains(reference)) {
      faces.add(stock.staysOnPurpose(face) ? reference : face);
    }
  }

  /** Whether the stock may have the drawing's size as it is. */
  private boolean isMade(Drawing.Demand demand, SizeState size) {
    return demand.limits().contains(size.range().middle());
  }

  private boolean isSaid(Face face) {
    return stock.skins().containsKey(face);
  }

  /** Whether the drawing asks how the face lies, how flat it is, or how smooth. */
  private boolean isAskedFor(Face face) {
    boolean callout =
        part.callouts().stream()
            .anyMatch(
                one ->
                    one instanceof Callout.SquareAll
                        || (one instanceof Callout.Square square
                            && (square.face() == face || square.reference() == face))
                        || (one instanceof Callout.Parallel parallel
                            && (parallel.face() == face || parallel.reference() == face))
                        || (one instanceof Callout.Flat flat && flat.face() == face));
    return callout || part.surfaces().stream().anyMatch(surface -> surface.value() == face);
  }

  /** The dimension the ends lie across: the longest. */
  PartDimension longest() {
    PartDimension longest = PartDimension.LENGTH;
    for (PartDimension dimension : PartDimension.values()) {
      SizeState size = start.start().size(dimension);
      SizeState most = start.start().size(longest);
      if (size != null && (most == null || size.range().low().isMoreThan(most.range().low()))) {
        longest = dimension;
      }
    }
    return longest;
  }

  /**
   * The faces by their weight as a reference: the datums by their letters, then by area; of equal
   * ones the ends last, so that the work lies along the jaws.
   */
  List<Face> byRank() {
    return Face.all().stream()
        .sorted(
            Comparator.comparing(this::datum)
                .thenComparing(Comparator.comparingDouble(this::area).reversed())
                .thenComparing(face -> face.dimension() == PartDimension.LENGTH)
                .thenComparing(face -> -face.sign()))
        .toList();
  }

  private String datum(Face face) {
    return part.datums().entrySet().stream()
        .filter(entry -> entry.getValue() == face)
        .map(entry -> entry.getKey().toUpperCase(Locale.ROOT))
        .sorted()
        .findFirst()
        .orElse("~");
  }

  private double area(Face face) {
    double area = 1;
    for (PartDimension dimension : PartDimension.values()) {
      SizeState size = start.start().size(dimension);
      if (dimension != face.dimension() && size != null) {
        area *= size.range().middle().millimetres();
      }
    }
    return area;
  }

  /**
   * The instrument to prove a size with: the coarsest that is four times finer than the tolerance
   * (common practice, no source) and leaves room for the dial's own error.
   */
  Optional<Owned.Instrument> instrument(Drawing.Demand demand, Length dialError) {
    Length width = demand.limits().width();
    return measuring(demand.limits())
        .filter(one -> !one.accuracy().times(4).isMoreThan(width))
        .filter(one -> !one.accuracy().plus(dialError).times(2).isMoreThan(width))
        .max(
            Comparator.<Owned.Instrument, Boolean>comparing(
                    one -> numbers.isOwnUnit(one.resolution()))
                .thenComparing(Owned.Instrument::accuracy));
  }

  /** The finest instrument that reaches everything in a range, for sizes on the way. */
  Optional<Owned.Instrument> anyInstrument(LengthRange range) {
    return measuring(range)
        .min(
            Comparator.<Owned.Instrument, Boolean>comparing(
                    one -> !numbers.isOwnUnit(one.resolution()))
                .thenComparing(Owned.Instrument::accuracy));
  }

  /** The instruments that measure everything in a range. */
  Stream<Owned.Instrument> measuring(LengthRange range) {
    return shop().all(Owned.Instrument.class).stream()
        .filter(one -> one.instrumentKind().measuresSizes())
        .filter(one -> one.instrumentKind() != Owned.InstrumentKind.DEPTH_MICROMETER)
        .filter(one -> one.range() == null || one.range().contains(range));
  }

  /** The first instrument of a kind, if the shop has one. */
  Optional<Owned.Instrument> instrument(Owned.InstrumentKind kind) {
    return shop().all(Owned.Instrument.class).stream()
        .filter(one -> one.instrumentKind() == kind)
        .findFirst();
  }
}
