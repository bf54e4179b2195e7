package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.plan.draft.HoleTools.Stay;
import org.handwheel.units.Length;
import org.handwheel.work.Orientation;
import org.jspecify.annotations.Nullable;

/** The lines that find two edges of the work and make the openings of a face from them. */
final class OpeningLines {
  private final Task task;

  OpeningLines(Task task) {
    this.task = task;
  }

  /** What they are, for a title. */
  static String what(List<Opening> openings) {
    String cuts = kinds(openings.stream().filter(one -> one.cut() != null).toList());
    String holes = kinds(openings.stream().filter(one -> one.work() != null).toList());
    return cuts.isEmpty() ? holes : holes.isEmpty() ? cuts : cuts + " and " + lower(holes);
  }

  private static String kinds(List<Opening> openings) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    for (Opening one : openings) {
      String word = one.cut() == null ? "hole" : one.cut().substring(0, one.cut().indexOf(' '));
      counts.merge(word, one.cut() == null && one.several() ? 2 : 1, Integer::sum);
    }
    List<String> words = new ArrayList<>();
    counts.forEach((word, count) -> words.add(count > 1 ? word + "s" : word));
    return Words.capital(String.join(", ", words));
  }

  static String lower(String text) {
    return text.toLowerCase(Locale.ROOT);
  }

  /**
   * Adds all lines, from the finder to the deburring.
   *
   * @param inSpindle the cutter that was used last
   * @return the cutter that was used last then
   */
  @Nullable String add(
      Face face,
      List<Opening> openings,
      Orientation orientation,
      Owned.Finder finder,
      @Nullable String inSpindle,
      List<String> lines) {
    for (Face edge : edges(openings, orientation)) {
      lines.add(find(edge, orientation, finder));
    }
    String cutter = slots(face, openings, inSpindle, lines);
    holes(openings, lines);
    lines.add("deburr all edges");
    return cutter;
  }

  /** The line that finds an edge of the work as it lies. */
  static String find(Face edge, Orientation orientation, Owned.Finder finder) {
    Direction from = orientation.directionOf(edge);
    return "find "
        + edge.word()
        + " from "
        + from.name().toLowerCase(Locale.ROOT).replace('_', '-')
        + " with finder "
        + finder.name()
        + ", zero "
        + from.axis().word()
        + " at edge";
  }

  /** The two edges that the first opening is measured from. */
  static List<Face> edges(List<Opening> openings, Orientation orientation) {
    List<Face> edges = new ArrayList<>();
    List<Face> corner =
        openings.stream()
            .map(one -> one.extent().corner())
            .filter(faces -> faces.size() == 2)
            .findFirst()
            .orElse(List.of());
    for (Axis axis : new Axis[] {Axis.X, Axis.Y}) {
      Face negative = Face.of(orientation.along(axis), -1);
      edges.add(
          corner.stream()
              .filter(face -> face.dimension() == orientation.along(axis))
              .findFirst()
              .orElse(negative));
    }
    return edges;
  }

  private @Nullable String slots(
      Face face, List<Opening> openings, @Nullable String inSpindle, List<String> lines) {
    String cutter = inSpindle;
    for (Opening one : openings) {
      if (one.cut() == null || one.cutter() == null) {
        continue;
      }
      if (!one.cutter().name().equals(cutter)) {
        cutter = one.cutter().name();
        lines.add("cutter " + cutter);
      }
      lines.add(
          "touch "
              + face.word()
              + " with paper "
              + task.numbers().write(task.numbers().usual("0.05", "0.002"))
              + ", zero z");
      lines.add(one.cut());
    }
    return cutter;
  }

  private void holes(List<Opening> openings, List<String> lines) {
    List<Opening> holes = openings.stream().filter(one -> one.work() != null).toList();
    if (holes.isEmpty()) {
      return;
    }
    lines.add("spot " + String.join(", ", holes.stream().map(Opening::name).toList()));
    // Free holes of one drill together; then each that the spindle has to stay over.
    Map<String, List<String>> together = new LinkedHashMap<>();
    for (Opening hole : holes) {
      if (hole.work() != null && hole.work().stay() == Stay.FREE) {
        together.computeIfAbsent(drillWords(hole), words -> new ArrayList<>()).add(hole.name());
      }
    }
    together.forEach((words, names) -> lines.add("drill " + String.join(", ", names) + words));
    for (Opening hole : holes) {
      HoleTools.Work work = hole.work();
      if (work == null) {
        continue;
      }
      boolean stays = work.stay() == Stay.OVER_THE_HOLE;
      if (stays) {
        lines.add("drill " + hole.name() + drillWords(hole));
      }
      boolean lock = stays && !hole.several();
      if (lock) {
        lines.add("lock x y");
      }
      work.further().forEach(next -> lines.add(next[0] + " " + hole.name() + next[1]));
      if (lock) {
        lines.add("unlock x y");
      }
    }
    if (lines.get(lines.size() - 1).equals("unlock x y")) {
      lines.remove(lines.size() - 1);
    }
  }

  /** Sizes of the drills, and pecking where the hole is deeper than three times the drill. */
  private String drillWords(Opening hole) {
    HoleTools.Work work = hole.work();
    if (work == null) {
      return "";
    }
    Numbers numbers = task.numbers();
    List<String> sizes = work.sizes().stream().map(numbers::write).toList();
    boolean deep = hole.depth().isMoreThan(work.sizes().get(0).times(3));
    String peck =
        deep
            ? ", peck "
                + numbers.write(
                    Length.max(
                        numbers.down(work.sizes().get(0), "1", "0.05"), numbers.usual("1", "0.05")))
            : "";
    return " " + String.join(" then ", sizes) + peck;
  }
}
