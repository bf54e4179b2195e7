package org.handwheel.cli;

import java.util.List;
import java.util.Locale;
import org.handwheel.model.Axis;
import org.handwheel.model.Limits;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.Dial;
import org.handwheel.work.DialMove;
import org.handwheel.work.feature.CrankPath;
import org.handwheel.work.feature.FeatureRun.Result;
import org.handwheel.work.feature.FeatureTable;
import org.handwheel.work.feature.OpeningSize;
import org.handwheel.work.feature.Remainder;
import org.handwheel.work.hole.AxisZero;
import org.handwheel.work.outline.StepTable;
import org.handwheel.work.outline.StepTable.Station;
import org.jspecify.annotations.Nullable;

/** Step tables and the ways through slots and pockets as JSON. */
final class StepsJson {
  private static final List<String> SOURCES =
      List.of("geometry: the true parallel curve; rounding toward metal left on: common practice");

  private StepsJson() {}

  private record Document(
      int version, List<String> sources, String plan, List<Cut> cuts, Against against) {}

  /** The work after the last setup against the drawing. */
  private record Against(List<Layer> left, List<Layer> over) {}

  private record Layer(String face, Size from, Size to, Size first, Size second, double mm2) {}

  private record Opening(
      String size, Size drawn, Size least, Size most, Size becomesLeast, Size becomesMost) {}

  private record Size(double mm, double in) {
    static Size of(Length length) {
      return new Size(
          Double.parseDouble(LengthText.number(length, LengthUnit.MM, 4, 0)),
          Double.parseDouble(LengthText.number(length, LengthUnit.IN, 5, 0)));
    }
  }

  private record Cut(
      String setup,
      String kind,
      String name,
      @Nullable String cutter,
      @Nullable String none,
      @Nullable String direction,
      @Nullable Integer steps,
      long levels,
      @Nullable Size left,
      @Nullable Size ridge,
      @Nullable Size bound,
      @Nullable Middle middle,
      @Nullable String wayDown,
      List<Opening> openings,
      List<Stop> stations) {}

  private record Middle(Place x, Place y) {}

  private record Place(Size at, double divisions, double reads, String from) {}

  private record Stop(
      Mark x, Mark y, @Nullable String first, @Nullable String purpose, List<String> turnsRound) {}

  private record Mark(Size at, double divisions, double reads) {}

  static String of(String plan, List<FeatureTable> cuts, Remainder remainder, Limits limits) {
    return Json.of(
        new Document(
            2,
            SOURCES,
            plan,
            cuts.stream().map(table -> cut(table, limits)).toList(),
            new Against(layers(remainder.left()), layers(remainder.over()))));
  }

  private static List<Layer> layers(List<Remainder.Layer> layers) {
    return layers.stream().map(StepsJson::layer).toList();
  }

  private static Layer layer(Remainder.Layer layer) {
    var middle = layer.region().getCentroid().getCoordinate();
    return new Layer(
        layer.face().word(),
        Size.of(layer.depth().low()),
        Size.of(layer.depth().high()),
        Size.of(Length.ofMillimetres(middle.x)),
        Size.of(Length.ofMillimetres(middle.y)),
        Math.round(layer.area() * 100) / 100.0);
  }

  private static Opening opening(OpeningSize size) {
    return new Opening(
        size.size().word(),
        Size.of(size.size().nominal()),
        Size.of(size.limits().low()),
        Size.of(size.limits().high()),
        Size.of(size.reached().low()),
        Size.of(size.reached().high()));
  }

  private static Cut cut(FeatureTable table, Limits limits) {
    Result result = table.run().result();
    if (result instanceof Result.Steps steps) {
      StepTable found = steps.table();
      return cut(
          table,
          null,
          found.direction().name(),
          found.steps(),
          found.ridge(),
          List.of(),
          found.stations().stream().map(StepsJson::stop).toList());
    } else if (result instanceof Result.Lines lines) {
      CrankPath path = lines.path();
      return cut(
          table,
          null,
          path.direction().name(),
          path.moves(),
          path.ridge(),
          OpeningSize.of(table, limits).stream().map(StepsJson::opening).toList(),
          table.rows().stream().map(StepsJson::stop).toList());
    }
    String none = result instanceof Result.None refused ? refused.reason() : null;
    return cut(table, none, null, null, null, List.of(), List.of());
  }

  private static Cut cut(
      FeatureTable table,
      @Nullable String none,
      @Nullable String direction,
      @Nullable Integer steps,
      @Nullable Length ridge,
      List<Opening> openings,
      List<Stop> stations) {
    boolean isWound = direction != null;
    return new Cut(
        table.setup().setup().words(),
        word(table.run().spec().featureKind().name()),
        table.run().spec().name(),
        table.run().cutter() == null ? null : table.run().cutter().name(),
        none,
        direction == null ? null : word(direction),
        steps,
        table.run().levels(),
        isWound ? Size.of(table.run().left()) : null,
        ridge == null ? null : Size.of(ridge),
        isWound ? Size.of(table.bound()) : null,
        table.middle() == null
            ? null
            : new Middle(
                place(table.middle().atX(), table.middle().x()),
                place(table.middle().atY(), table.middle().y())),
        isWound
            ? table.down().map(way -> word(way.kind().name()).replace('_', '-')).orElse(null)
            : null,
        openings,
        stations);
  }

  private static Place place(DialMove.Stop stop, AxisZero zero) {
    return new Place(
        Size.of(stop.asked()),
        stop.divisions().doubleValue(),
        stop.reading().doubleValue(),
        zero.words());
  }

  private static Stop stop(Station station) {
    return new Stop(
        mark(station.x(), station.dialX()),
        mark(station.y(), station.dialY()),
        word(station.first().name()),
        null,
        words(station.turnsRound()));
  }

  private static Mark mark(Length length, Dial.Setting dial) {
    return new Mark(Size.of(length), dial.divisions(), dial.reading().doubleValue());
  }

  private static Stop stop(FeatureTable.Row row) {
    return new Stop(
        mark(row.x()),
        mark(row.y()),
        row.first() == null ? null : word(row.first().name()),
        word(row.purpose().name()),
        words(row.turnsRound()));
  }

  private static Mark mark(DialMove.Stop stop) {
    return new Mark(
        Size.of(stop.reached()), stop.divisions().doubleValue(), stop.reading().doubleValue());
  }

  private static List<String> words(List<Axis> axes) {
    return axes.stream().map(axis -> word(axis.name())).toList();
  }

  private static String word(String name) {
    return name.toLowerCase(Locale.ROOT);
  }
}
