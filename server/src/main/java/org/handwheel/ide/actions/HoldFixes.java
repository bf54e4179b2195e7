package org.handwheel.ide.actions;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.handwheel.ide.complete.CutSizes;
import org.handwheel.ide.complete.Situation;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.Hold;
import org.handwheel.model.Located;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Owned;
import org.handwheel.model.Step;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.TextEdit;
import org.handwheel.units.Length;
import org.handwheel.work.Grip;
import org.handwheel.work.Holding;
import org.handwheel.work.PlanRun.SetupRun;

/** Mendings of how the work is held. */
final class HoldFixes {
  /** Spacers are made, or turned, to a twentieth of a millimetre below the work's width. */
  private static final Length SPACER_STEP = Length.mm("0.05");

  private final FileText text;
  private final SetupRun setup;
  private final Situation now;

  HoldFixes(FileText text, SetupRun setup, Situation now) {
    this.text = text;
    this.setup = setup;
    this.now = now;
  }

  void of(Finding finding, Map<String, List<TextEdit>> fixes) {
    Grip grip = setup.grip();
    if (grip == null) {
      return;
    }
    Hold hold = grip.hold();
    switch (finding.rule()) {
      case "burr-under-work" -> burrs(grip, finding, fixes);
      case "jaw-cocks", "spacer-too-wide" -> spacer(grip, fixes);
      case "grips-parallels" -> {
        beside(grip, fixes);
        thinner(grip, fixes);
      }
      case "bar-missing" ->
          put(
              fixes,
              "Put a bar at the moving jaw",
              text.append(hold.origin(), ", bar " + now.number(Length.mm("8")) + " at mid-grip"));
      case "bar-not-needed" -> {
        if (hold.bar() != null) {
          put(fixes, "Leave the bar out", text.removeClause(hold.bar().origin()));
        }
      }
      case "parallels-too-tall", "too-low-grip" -> lower(grip, fixes);
      case "jaw-opening" -> wider(grip, fixes);
      case "seat-not-proved" -> seat(hold, grip, fixes);
      default -> {}
    }
  }

  private static void put(Map<String, List<TextEdit>> fixes, String title, TextEdit edit) {
    fixes.put(title, List.of(edit));
  }

  private void burrs(Grip grip, Finding finding, Map<String, List<TextEdit>> fixes) {
    List<String> all = new ArrayList<>();
    for (Face face : Face.all()) {
      boolean touches =
          face == grip.fixedFace() || face == grip.movingFace() || face == grip.underFace();
      if (touches && setup.before().face(face).burr() != null) {
        all.add(face.word());
      }
    }
    for (String face : all) {
      if (finding.message().startsWith("the " + face + " ")) {
        put(
            fixes,
            "Deburr the " + face + " before the work is held",
            text.lineBefore(grip.hold().origin(), "deburr edges of " + face));
      }
    }
    if (all.size() > 1) {
      String faces = String.join(" ", all);
      put(
          fixes,
          "Deburr " + faces + " before the work is held",
          text.lineBefore(grip.hold().origin(), "deburr edges of " + faces));
    }
  }

  private void spacer(Grip grip, Map<String, List<TextEdit>> fixes) {
    Length width = CutSizes.roundedDown(grip.gripped().low(), SPACER_STEP);
    String place = grip.offCentre().isPositive() ? "operator-left" : "operator-right";
    String clause = "spacer " + now.number(width) + " at " + place;
    Located<Hold.Spacer> there = grip.hold().spacer();
    if (there == null) {
      put(
          fixes,
          "Put a spacer as wide as the work at the other end",
          text.append(grip.hold().origin(), ", " + clause));
    } else {
      boolean right =
          (there.value().at() == Direction.OPERATOR_LEFT) == grip.offCentre().isPositive();
      put(
          fixes,
          right ? "Make the spacer " + width : "Put the spacer at the other end",
          text.replace(there.origin(), clause));
    }
  }

  /** A second parallel or a packing piece beside the work takes the force with it. */
  private void beside(Grip grip, Map<String, List<TextEdit>> fixes) {
    if (grip.hold().beside() != null) {
      return;
    }
    Length parallels = Holding.parallelsThickness(grip);
    for (Owned thing : now.shop().things()) {
      Length thickness = null;
      if (thing instanceof Owned.Parallels set) {
        boolean used = grip.parallels().filter(set::equals).isPresent();
        int left = set.count() - (used ? grip.parallelCount() : 0);
        thickness = left > 0 ? set.thickness() : null;
      } else if (thing instanceof Owned.Piece piece && piece.kind() == OwnKind.PACKING) {
        thickness = piece.size("thickness");
      }
      boolean fits =
          thickness != null
              && parallels.isLessThan(grip.gripped().low().plus(thickness))
              && !grip.opening().plus(thickness).isMoreThan(grip.vise().opening());
      if (fits) {
        put(
            fixes,
            "Put " + thing.name() + " beside the work",
            text.append(grip.hold().origin(), ", beside " + thing.name()));
      }
    }
  }

  private void thinner(Grip grip, Map<String, List<TextEdit>> fixes) {
    Located<Hold.Support> support = grip.hold().support();
    if (support == null) {
      return;
    }
    String count = grip.parallelCount() == 1 ? "one" : "pair";
    for (Owned.Parallels set : now.shop().all(Owned.Parallels.class)) {
      boolean fits =
          grip.parallels().isPresent()
              && set.thickness().isLessThan(grip.parallels().get().thickness())
              && set.count() >= grip.parallelCount();
      if (fits) {
        put(
            fixes,
            "Take the thinner " + set.name(),
            text.replace(support.origin(), "on " + count + " " + set.name()));
      }
    }
  }

  /** Parallels as the work stands on, lower than those; the highest of them first. */
  private void lower(Grip grip, Map<String, List<TextEdit>> fixes) {
    Located<Hold.Support> support = grip.hold().support();
    if (support == null || grip.parallels().isEmpty()) {
      return;
    }
    String count = grip.parallelCount() == 1 ? "one" : "pair";
    Length height = grip.parallels().get().height();
    now.shop().all(Owned.Parallels.class).stream()
        .filter(set -> set.height().isLessThan(height) && set.count() >= grip.parallelCount())
        .sorted((a, b) -> b.height().compareTo(a.height()))
        .forEach(
            set ->
                put(
                    fixes,
                    "Take the lower " + set.name(),
                    text.replace(support.origin(), "on " + count + " " + set.name())));
  }

  /** Another vise of the shop that opens wide enough. */
  private void wider(Grip grip, Map<String, List<TextEdit>> fixes) {
    String words = grip.hold().origin().text();
    int at = words.indexOf(grip.vise().name());
    if (at < 0) {
      return;
    }
    int start = grip.hold().origin().start() + at;
    Origin name =
        new Origin(grip.hold().origin().section(), start, start + grip.vise().name().length());
    for (Owned.Vise vise : now.shop().all(Owned.Vise.class)) {
      if (!grip.opening().isMoreThan(vise.opening())) {
        put(fixes, "Hold it in " + vise.name(), text.replace(name, vise.name()));
      }
    }
  }

  private void seat(Hold hold, Grip grip, Map<String, List<TextEdit>> fixes) {
    String seat = grip.parallelCount() == 2 ? "seat tapped, both parallels tight" : "seat tapped";
    for (Step step : setup.setup().steps()) {
      if (step instanceof Step.Seat there) {
        put(fixes, "Say `" + seat + "`", text.replace(there.origin(), seat));
        return;
      }
    }
    put(fixes, "Say `" + seat + "`", text.lineAfter(hold.origin(), seat));
  }
}
