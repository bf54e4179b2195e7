package org.handwheel.plan.sheet;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.handwheel.model.Face;
import org.handwheel.model.Inspection;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.model.Part.Callout;
import org.handwheel.model.Part.FeatureSpec;
import org.handwheel.model.Part.HoleSpec;
import org.handwheel.model.Part.PatternSpec;
import org.handwheel.model.PartDimension;
import org.handwheel.plan.sheet.Sheet.Check;
import org.handwheel.shop.StandardTables;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthText;
import org.handwheel.work.Drawing;
import org.handwheel.work.PlanRun;
import org.handwheel.work.feature.FeatureSizes;
import org.jspecify.annotations.Nullable;

/** The lines of the inspection: what the plan checks, then what else the drawing asks. */
final class Checks {
  private final PlanRun run;
  private final Part part;
  private final StandardTables tables;
  private final List<Check> checks = new ArrayList<>();
  private final Set<String> done = new HashSet<>();

  private Checks(PlanRun run, Part part, StandardTables tables) {
    this.run = run;
    this.part = part;
    this.tables = tables;
  }

  static List<Check> of(PlanRun run, StandardTables tables) {
    Part part = run.plan().part();
    if (part == null) {
      return List.of();
    }
    Checks all = new Checks(run, part, tables);
    run.plan().inspections().forEach(all::add);
    for (PartDimension dimension : PartDimension.values()) {
      all.dimension(dimension, "");
    }
    part.callouts().forEach(all::callout);
    part.holes().forEach(hole -> all.hole(hole, hole.name(), ""));
    part.features().forEach(feature -> all.feature(feature, ""));
    if (part.brokenEdges() != null) {
      all.put(
          "edges",
          "all edges",
          "broken " + LengthText.both(part.brokenEdges().value()) + ", no burrs",
          null,
          "");
    }
    return all.checks;
  }

  private void put(
      String key, String what, String demand, @Nullable LengthRange limits, String with) {
    if (done.add(key)) {
      checks.add(new Check(what, demand, limits, with));
    }
  }

  private void add(Inspection inspection) {
    String with = with(inspection.instrument());
    if (inspection instanceof Inspection.OfDimension of) {
      dimension(of.dimension(), with);
    } else if (inspection instanceof Inspection.OfFeature of) {
      named(of.name(), with);
    } else if (inspection instanceof Inspection.OfRelation of) {
      relation(of.face(), of.reference(), with);
    } else if (inspection instanceof Inspection.OfFlatness of) {
      Optional<Callout> flat =
          part.callouts().stream()
              .filter(one -> one instanceof Callout.Flat own && own.face() == of.face())
              .findFirst();
      put(
          "flat " + of.face(),
          name(of.face()) + " flat",
          flat.map(callout -> within(callout.zone())).orElse("as flat as the drawing asks"),
          null,
          with);
    }
  }

  private static String with(Owned.Instrument instrument) {
    return instrument.name() + ", " + ToolList.words(instrument);
  }

  private static String within(Length zone) {
    return "within " + LengthText.both(zone);
  }

  private String name(Face face) {
    return part.datums().entrySet().stream()
        .filter(datum -> datum.getValue() == face)
        .map(Map.Entry::getKey)
        .sorted()
        .findFirst()
        .map(letter -> face.word() + " (" + letter + ")")
        .orElse(face.word());
  }

  private void dimension(PartDimension dimension, String with) {
    Drawing.Demand demand = run.drawing().demand(dimension);
    if (demand != null) {
      put(
          dimension.word(),
          dimension.word(),
          LengthText.both(demand.nominal()),
          demand.limits(),
          with);
    }
  }

  private void named(String name, String with) {
    for (PatternSpec pattern : part.patterns()) {
      if (pattern.name().equalsIgnoreCase(name)) {
        find(pattern.hole()).ifPresent(hole -> hole(hole, pattern.name(), with));
        return;
      }
    }
    Optional<HoleSpec> hole = find(name);
    if (hole.isPresent()) {
      hole(hole.get(), hole.get().name(), with);
      return;
    }
    part.features().stream()
        .filter(feature -> feature.name().equalsIgnoreCase(name))
        .findFirst()
        .ifPresent(feature -> feature(feature, with));
  }

  private Optional<HoleSpec> find(String name) {
    return part.holes().stream().filter(hole -> hole.name().equalsIgnoreCase(name)).findFirst();
  }

  private void hole(HoleSpec hole, String name, String with) {
    String key = "hole " + hole.name().toLowerCase(Locale.ROOT);
    if (hole.thread() != null || hole.dia() == null) {
      String thread = hole.thread() == null ? "as drawn" : hole.thread();
      String depth =
          hole.threadDepth() == null ? "" : ", thread " + LengthText.both(hole.threadDepth());
      put(key, "hole " + name, thread + depth, null, with);
      return;
    }
    LengthRange limits = hole.limits();
    String fit = hole.fit();
    if (limits == null && fit != null) {
      limits = tables.fits().limits(hole.dia(), fit).orElse(null);
    }
    put(
        key,
        "hole " + name,
        LengthText.both(hole.dia())
            + (fit == null ? "" : " " + fit)
            + (hole.through() ? ", through" : ""),
        limits,
        with);
  }

  private void feature(FeatureSpec feature, String with) {
    String kind = feature.featureKind().name().toLowerCase(Locale.ROOT);
    List<String> sizes = new ArrayList<>();
    for (@Nullable Length size :
        new Length[] {
          feature.formFirst(),
          feature.formSecond(),
          feature.width(),
          feature.length(),
          feature.depth(),
          feature.radius()
        }) {
      if (size != null) {
        sizes.add(LengthText.both(size));
      }
    }
    String tolerance =
        feature.tolerance() == null ? "" : ", +- " + LengthText.both(feature.tolerance());
    String key = "feature " + feature.name().toLowerCase(Locale.ROOT);
    String name = kind + " " + feature.name();
    put(key, name, String.join(" x ", sizes) + tolerance, null, with);
    if (feature.tolerance() == null) {
      for (FeatureSizes.Size size : FeatureSizes.written(feature)) {
        put(
            key + " " + size.word(),
            name + ", " + size.word(),
            LengthText.both(size.nominal()),
            size.limits().limits(),
            with);
      }
    }
  }

  private void relation(Face face, Face reference, String with) {
    for (Callout callout : part.callouts()) {
      boolean own =
          (callout instanceof Callout.Square square
                  && same(square.face(), square.reference(), face, reference))
              || (callout instanceof Callout.Parallel parallel
                  && same(parallel.face(), parallel.reference(), face, reference));
      if (own || callout instanceof Callout.SquareAll) {
        relation(face, reference, callout.zone(), with);
        return;
      }
    }
  }

  private static boolean same(Face a, Face b, Face c, Face d) {
    return (a == c && b == d) || (a == d && b == c);
  }

  private void relation(Face face, Face reference, Length zone, String with) {
    Face first = face.compareTo(reference) < 0 ? face : reference;
    Face second = first == face ? reference : face;
    put(
        "relation " + first + second,
        name(face) + (face.adjoins(reference) ? " square to " : " parallel to ") + name(reference),
        within(zone),
        null,
        with);
  }

  private void callout(Callout callout) {
    if (callout instanceof Callout.Square square) {
      relation(square.face(), square.reference(), square.zone(), "");
    } else if (callout instanceof Callout.Parallel parallel) {
      relation(parallel.face(), parallel.reference(), parallel.zone(), "");
    } else if (callout instanceof Callout.Flat flat) {
      put("flat " + flat.face(), name(flat.face()) + " flat", within(flat.zone()), null, "");
    } else {
      put("square all", "all faces square and parallel", within(callout.zone()), null, "");
    }
  }
}
