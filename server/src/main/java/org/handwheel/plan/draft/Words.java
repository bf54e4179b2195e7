package org.handwheel.plan.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Owned;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Stock;
import org.handwheel.plan.draft.Holds.State;
import org.handwheel.plan.draft.Places.Place;
import org.handwheel.plan.draft.Seating.Upright;
import org.handwheel.plan.draft.Seats.Asked;
import org.handwheel.plan.draft.Seats.Kind;
import org.handwheel.plan.draft.Seats.Seat;
import org.handwheel.work.Workpiece;

/** Titles of setups and the reasons written into them. */
final class Words {
  /** How long a line of comment gets, two blanks and the sign included. */
  private static final int WIDTH = 100;

  private static final Pattern NUMBER_AND_UNIT = Pattern.compile("(\\d) (mm|in|thou)\\b");

  private Words() {}

  static String capital(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  private static String name(Face face) {
    return face.dimension() == PartDimension.LENGTH
        ? capital(face.word()) + " end"
        : capital(face.word());
  }

  static String endTitle(FaceCut cut, Workpiece work, Face fixed, boolean upright) {
    String title = name(cut.face());
    if (upright) {
      title += ", standing up by the square";
    } else if (cut.isSkim() && work.face(fixed).isMachined()) {
      title += ", square to the " + fixed.word();
    } else if (cut.isSkim()) {
      title += ", cleaned";
    }
    return cut.isSkim() ? title : title + ", to " + cut.dimension().word();
  }

  static List<String> endReasons(
      Task task,
      State state,
      FaceCut cut,
      Face fixed,
      Seat seat,
      boolean bar,
      Asked asked,
      Optional<Upright> upright) {
    List<String> why = new ArrayList<>();
    Workpiece work = state.work();
    Face face = cut.face();
    Face under = face.opposite();
    Face moving = fixed.opposite();
    boolean cleanUnder = work.face(under).isMachined();
    boolean cleanFixed = work.face(fixed).isMachined();
    boolean first = state.left().containsAll(task.toCut());
    if (first) {
      boolean datum = task.part().datums().containsValue(face);
      why.add(
          datum
              ? "The first datum comes first: all the others are made from it."
              : "The largest face to cut comes first: the others are made from it.");
    }
    if (cleanFixed) {
      why.add(
          "The clean "
              + fixed.word()
              + " lies on the fixed jaw, which makes the "
              + face.word()
              + " square to it.");
    }
    if (bar) {
      why.add(
          "The bar keeps the "
              + moving.word()
              + (work.face(moving).isMachined()
                  ? ", not yet parallel to it,"
                  : ", still " + work.face(moving).words() + ",")
              + " from pulling it away.");
    } else if (cleanFixed && work.relation(fixed, moving) != null) {
      why.add(capital(fixed.word()) + " and " + moving.word() + " are parallel: no bar.");
    }
    boolean flat = !asked.across().low().isLessThan(asked.up().high().times(3));
    if (flat
        && work.face(face).skin() == Stock.Skin.DRAWN
        && work.face(under).skin() == Stock.Skin.DRAWN) {
      why.add(
          cleanUnder
              ? "With its skin cut through the bar may have bent: see that it lies down."
              : "Drawn bar may bend when its skin is cut through on one side.");
    }
    if (seat.kind() == Kind.SOFT) {
      why.add(
          "The " + under.word() + ", " + work.face(under).words() + ", settles on something soft.");
    } else if (cleanUnder) {
      why.add(
          "Tapped down, the clean "
              + under.word()
              + " makes the "
              + face.word()
              + " parallel to it.");
    }
    if (seat.kind() == Kind.ONE_WITH_BESIDE) {
      why.add(
          "The parallel is as thick as the work and would take the clamping force, so a second"
              + " piece stands beside the work.");
    } else if (seat.kind() == Kind.ONE) {
      why.add("The work is too thin for two parallels, and thicker than this one.");
    }
    upright.ifPresent(
        square ->
            why.add(
                "The raw "
                    + under.word()
                    + " does not keep it upright; the square on the "
                    + square.against().word()
                    + " does."));
    why.add(
        "The jaws grip "
            + task.numbers().inWords(asked.grip(seat.height()))
            + " of "
            + task.numbers().inWords(asked.up().middle())
            + ".");
    return filled(why);
  }

  static String sideTitle(FaceCut cut) {
    String title = name(cut.face()) + ", with the side of the cutter";
    return cut.isSkim() ? title : title + ", to " + cut.dimension().word();
  }

  static List<String> sideReasons(
      Task task,
      FaceCut cut,
      Face up,
      Face fixed,
      Owned.Vise vise,
      Place place,
      Owned.Cutter cutter,
      Workpiece work) {
    List<String> why = new ArrayList<>();
    boolean right =
        Holds.orientation(vise, up, fixed).directionOf(cut.face()) == Direction.OPERATOR_RIGHT;
    why.add(
        "The end stands out at the operator's "
            + (right ? "right" : "left")
            + ", where the cutter pushes the work against the fixed jaw.");
    if (work.face(up.opposite()).isMachined()) {
      why.add(
          "The "
              + up.opposite().word()
              + " on its parallels and the "
              + fixed.word()
              + " on the true jaw make it square both ways.");
    }
    if (place.spacer() == null && task.stock().pieces() > 1) {
      why.add(stop(task));
    }
    if (place.spacer() != null) {
      why.add("The spacer at the other end keeps the moving jaw straight.");
    }
    why.add(
        "`"
            + cutter.name()
            + "` reaches past the lower edge: flutes of "
            + task.numbers().inWords(cutter.flute())
            + ".");
    return filled(why);
  }

  /** Several pieces are cut one after the other on the same zero. */
  static String stop(Task task) {
    return "The stop puts each of the " + task.stock().pieces() + " pieces in the same place.";
  }

  /** Sentences put together into lines of comment. */
  static List<String> filled(List<String> sentences) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    // A number and its unit stay together.
    String text = NUMBER_AND_UNIT.matcher(String.join(" ", sentences)).replaceAll("$1\u00a0$2");
    for (String each : text.split(" ", -1)) {
      String word = each.replace('\u00a0', ' ');
      if (line.length() > 0 && line.length() + 1 + word.length() > WIDTH - 4) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.length() == 0 ? "" : " ").append(word);
    }
    if (line.length() > 0) {
      lines.add(line.toString());
    }
    return lines;
  }
}
