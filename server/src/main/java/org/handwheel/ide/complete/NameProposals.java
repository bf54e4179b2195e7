package org.handwheel.ide.complete;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.model.Names;
import org.handwheel.model.Names.Declaration;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Plan;
import org.handwheel.shop.drill.Drill;
import org.handwheel.shop.thread.ScrewThread;
import org.handwheel.shop.thread.ThreadSeries;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthText;
import org.jspecify.annotations.Nullable;

/** Names of the kind that a place asks for. */
final class NameProposals {
  private static final int RANK = 100;

  private final Situation now;

  NameProposals(Situation now) {
    this.now = now;
  }

  /** The names for the innermost rule that says what kind of name it is. */
  List<Proposal> of(List<Integer> rules) {
    for (int i = rules.size() - 1; i >= 0; i--) {
      List<Proposal> found = of(rules.get(i));
      if (found != null) {
        return found;
      }
    }
    return List.of();
  }

  private @Nullable List<Proposal> of(int rule) {
    return switch (rule) {
      case HandwheelParser.RULE_viseRef ->
          things(
              Owned.Vise.class, vise -> mm(vise.jawWidth()) + " jaws, opens " + mm(vise.opening()));
      case HandwheelParser.RULE_parallelsRef -> parallels();
      case HandwheelParser.RULE_packingRef -> {
        List<Proposal> all = new ArrayList<>(parallels());
        all.addAll(pieces(OwnKind.PACKING));
        yield all;
      }
      case HandwheelParser.RULE_clampRef -> pieces(OwnKind.CLAMP);
      case HandwheelParser.RULE_cutterRef -> cutters();
      case HandwheelParser.RULE_toolRef -> {
        List<Proposal> all = new ArrayList<>(pieces(OwnKind.DRILL));
        all.addAll(pieces(OwnKind.DRILLS));
        all.addAll(pieces(OwnKind.REAMER));
        all.addAll(pieces(OwnKind.TAP));
        all.addAll(cutters());
        yield all;
      }
      case HandwheelParser.RULE_instrumentRef -> instruments();
      case HandwheelParser.RULE_finderRef ->
          things(Owned.Finder.class, finder -> "tip " + mm(finder.dia()));
      case HandwheelParser.RULE_machineRef -> things(Owned.Machine.class, machine -> "machine");
      case HandwheelParser.RULE_materialRef -> materials();
      case HandwheelParser.RULE_holeRef, HandwheelParser.RULE_furtherHoleRef ->
          declared(Names.Kind.HOLE, "hole");
      case HandwheelParser.RULE_checkRef -> {
        List<Proposal> all = new ArrayList<>(declared(Names.Kind.HOLE, "hole"));
        all.addAll(declared(Names.Kind.FEATURE, "feature"));
        yield all;
      }
      case HandwheelParser.RULE_featureTarget -> declared(Names.Kind.FEATURE, "feature");
      case HandwheelParser.RULE_setupRef -> declared(Names.Kind.SETUP, "setup");
      case HandwheelParser.RULE_faceOrDatum -> datums();
      case HandwheelParser.RULE_rest -> plates();
      case HandwheelParser.RULE_thread -> threads();
      case HandwheelParser.RULE_nominal,
          HandwheelParser.RULE_factor,
          HandwheelParser.RULE_divisor ->
          values();
      default -> null;
    };
  }

  private <T extends Owned> List<Proposal> things(Class<T> type, Function<T, String> detail) {
    List<Proposal> proposals = new ArrayList<>();
    for (T thing : now.shop().all(type)) {
      proposals.add(
          Proposal.plain(
              thing.name(),
              Proposal.Kind.NAME,
              detail.apply(thing),
              "thing " + thing.kind().word() + " " + thing.name(),
              RANK + proposals.size()));
    }
    return proposals;
  }

  private List<Proposal> parallels() {
    return things(
        Owned.Parallels.class,
        set -> mm(set.thickness()) + " thick, " + mm(set.height()) + " high");
  }

  private List<Proposal> cutters() {
    return things(
        Owned.Cutter.class,
        cutter ->
            mm(cutter.dia())
                + " "
                + cutter.cutterKind().name().toLowerCase(Locale.ROOT).replace('_', ' ')
                + ", "
                + cutter.teeth()
                + " teeth");
  }

  private List<Proposal> pieces(OwnKind kind) {
    return things(Owned.Piece.class, piece -> sizes(piece)).stream()
        .filter(proposal -> proposal.topic().startsWith("thing " + kind.word() + " "))
        .toList();
  }

  private static String sizes(Owned.Piece piece) {
    Length first =
        piece.size("dia") != null
            ? piece.size("dia")
            : piece.size("thickness") != null ? piece.size("thickness") : piece.size("width");
    return piece.kind().word() + (first == null ? "" : ", " + mm(first));
  }

  private List<Proposal> instruments() {
    return things(
        Owned.Instrument.class,
        instrument -> {
          LengthRange range = instrument.range();
          return (range == null
                  ? ""
                  : LengthText.mm(range.low()) + " to " + mm(range.high()) + ", ")
              + "+-"
              + mm(instrument.accuracy());
        });
  }

  private List<Proposal> materials() {
    List<Proposal> proposals =
        new ArrayList<>(
            things(Owned.Material.class, material -> "the shop's own").stream()
                .map(proposal -> proposal.lower(-50))
                .toList());
    now.view()
        .tables()
        .materials()
        .all()
        .forEach(
            material ->
                proposals.add(
                    Proposal.plain(
                        material.name(),
                        Proposal.Kind.NAME,
                        material.words(),
                        "material " + material.name(),
                        RANK)));
    return proposals;
  }

  private List<Proposal> declared(Names.Kind kind, String detail) {
    Plan plan = now.view().plan();
    List<Proposal> proposals = new ArrayList<>();
    if (plan != null) {
      for (Declaration declaration : plan.names().declarations()) {
        if (declaration.kind() == kind) {
          proposals.add(
              Proposal.plain(
                  declaration.name(), Proposal.Kind.NAME, detail, RANK + proposals.size()));
        }
      }
    }
    return proposals;
  }

  private List<Proposal> values() {
    List<Proposal> proposals = new ArrayList<>(declared(Names.Kind.VALUE, "value"));
    if (now.view().plan() != null) {
      for (PartDimension dimension : PartDimension.values()) {
        proposals.add(
            Proposal.plain(dimension.word(), Proposal.Kind.NAME, size(dimension), RANK + 50));
      }
    }
    return proposals;
  }

  private String size(PartDimension dimension) {
    Plan plan = now.view().plan();
    Part part = plan == null ? null : plan.part();
    Part.DimensionSpec spec = part == null ? null : part.dimension(dimension);
    return spec == null ? "the part's" : LengthText.both(spec.nominal());
  }

  private List<Proposal> datums() {
    Plan plan = now.view().plan();
    if (plan == null || plan.part() == null) {
      return List.of();
    }
    return plan.part().datums().entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .map(
            datum ->
                Proposal.plain(
                    datum.getKey(),
                    Proposal.Kind.NAME,
                    "datum, the " + datum.getValue().word(),
                    RANK))
        .toList();
  }

  private List<Proposal> plates() {
    List<Proposal> all = new ArrayList<>(pieces(OwnKind.ANGLE_PLATE));
    all.addAll(pieces(OwnKind.V_BLOCK));
    all.addAll(pieces(OwnKind.SUBPLATE));
    return all;
  }

  private List<Proposal> threads() {
    List<Proposal> proposals = new ArrayList<>();
    for (ScrewThread thread : now.view().tables().threads().all()) {
      boolean usual = thread.series() == ThreadSeries.ISO_COARSE;
      Drill tap = thread.tapDrill();
      proposals.add(
          Proposal.plain(
              thread.designation(),
              Proposal.Kind.VALUE,
              mm(thread.major())
                  + ", pitch "
                  + mm(thread.pitch())
                  + ", tapping drill "
                  + tap.words(),
              "thread " + thread.designation(),
              RANK + (usual ? 0 : 100) + proposals.size()));
    }
    return proposals;
  }

  private static String mm(Length length) {
    return LengthText.both(length);
  }
}
