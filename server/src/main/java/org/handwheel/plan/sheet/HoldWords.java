package org.handwheel.plan.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.handwheel.model.Direction;
import org.handwheel.model.Hold;
import org.handwheel.model.Hold.Rest;
import org.handwheel.model.Hold.Support;
import org.handwheel.model.Owned;
import org.handwheel.plan.sheet.Sheet.Fact;
import org.handwheel.units.LengthText;
import org.handwheel.work.Grip;
import org.handwheel.work.Orientation;
import org.handwheel.work.PlanRun.SetupRun;
import org.jspecify.annotations.Nullable;

/** How the work is held, in words. */
final class HoldWords {
  private HoldWords() {}

  static String action(Hold hold) {
    StringBuilder words = new StringBuilder("Lay the work ");
    words.append(in(hold.rest()));
    if (hold.up() != null) {
      words.append(", ").append(hold.up().value().word()).append(" up");
    }
    if (hold.fixed() != null) {
      words.append(", ").append(hold.fixed().value().word());
      words.append(
          hold.rest() instanceof Rest.InVise ? " against the fixed jaw" : " against the plate");
    }
    return words.toString();
  }

  private static String in(Rest rest) {
    if (rest instanceof Rest.InVise vise) {
      return "in vise " + vise.vise().name();
    }
    Rest.OnPlate plate = (Rest.OnPlate) rest;
    String kind = plate.plate().name().toLowerCase(Locale.ROOT).replace('_', ' ');
    return "on the " + kind + (plate.name().isEmpty() ? "" : " " + plate.name());
  }

  static List<Fact> facts(Hold hold, SetupRun run) {
    List<Fact> facts = new ArrayList<>();
    Orientation lies = run.orientation();
    if (lies != null) {
      facts.add(
          new Fact(
              "Lies",
              lies.facing(Direction.OPERATOR_LEFT).word()
                  + " to the left, "
                  + lies.facing(Direction.OPERATOR_FRONT).word()
                  + " toward you, "
                  + lies.facing(Direction.DOWN).word()
                  + " down"));
    }
    if (hold.support() != null) {
      facts.add(new Fact("Rests on", support(hold.support().value())));
    }
    if (hold.bar() != null) {
      Hold.Bar bar = hold.bar().value();
      String at =
          bar.height() == null
              ? "halfway up the grip"
              : LengthText.both(bar.height()) + " above the bed";
      facts.add(new Fact("Moving jaw", "round bar " + LengthText.both(bar.dia()) + ", " + at));
    }
    if (hold.beside() != null) {
      Hold.Beside beside = hold.beside().value();
      facts.add(new Fact("Beside it", beside.name() + ", " + LengthText.both(beside.thickness())));
    }
    if (hold.spacer() != null) {
      Hold.Spacer spacer = hold.spacer().value();
      facts.add(
          new Fact(
              "Spacer",
              LengthText.both(spacer.width())
                  + " between the jaws at "
                  + Words.place(spacer.at())
                  + ", so that the moving jaw stays straight"));
    }
    if (hold.overhang() != null) {
      Hold.Overhang over = hold.overhang().value();
      facts.add(
          new Fact(
              "Stands out",
              Words.side(over.end())
                  + " end, "
                  + LengthText.both(over.length())
                  + " beyond the jaws"));
    }
    if (hold.place() != null) {
      facts.add(new Fact("At", Words.place(hold.place().value()) + " end of the jaws"));
    }
    if (hold.stop() != null) {
      facts.add(new Fact("Work stop", "at " + Words.place(hold.stop().value())));
    }
    for (Hold.Clamping clamp : hold.clamps()) {
      facts.add(
          new Fact(
              "Clamp",
              clamp.clamp().name()
                  + " at "
                  + LengthText.both(clamp.x())
                  + " from the left, "
                  + LengthText.both(clamp.y())
                  + " from your side"));
    }
    grip(run.grip(), facts);
    return facts;
  }

  private static void grip(@Nullable Grip grip, List<Fact> facts) {
    if (grip != null) {
      facts.add(
          new Fact(
              "Jaws grip",
              LengthText.range(grip.depth())
                  + "; the work stands "
                  + LengthText.range(grip.proud())
                  + " above them"));
    }
  }

  static String support(Support support) {
    if (support instanceof Support.Pair pair) {
      return "the pair " + size(pair.parallels());
    }
    if (support instanceof Support.One one) {
      return "one of " + size(one.parallels());
    }
    return support instanceof Support.SoftStrip strip
        ? "a strip of soft metal or card, " + LengthText.both(strip.thickness())
        : "the bed of the vise";
  }

  private static String size(Owned.Parallels parallels) {
    return parallels.name()
        + ", "
        + LengthText.both(parallels.thickness())
        + " thick, "
        + LengthText.both(parallels.height())
        + " high";
  }
}
