package org.handwheel.ide.actions;

import java.util.List;
import java.util.Map;
import org.handwheel.ide.complete.CutSizes;
import org.handwheel.ide.complete.Situation;
import org.handwheel.model.Located;
import org.handwheel.model.Step;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.TextEdit;
import org.handwheel.units.Length;
import org.handwheel.work.CutRun;
import org.jspecify.annotations.Nullable;

/** Mendings of the way a cutter goes over a face. */
final class WayFixes {
  /** Lanes this much of the cutter's diameter apart overlap well: common practice, no source. */
  private static final double LANE = 0.7;

  private final FileText text;
  private final Situation now;
  private final Map<String, List<TextEdit>> fixes;

  WayFixes(FileText text, Situation now, Map<String, List<TextEdit>> fixes) {
    this.text = text;
    this.now = now;
    this.fixes = fixes;
  }

  void of(Finding finding, CutRun run) {
    Step.Cut cut = run.cut();
    switch (finding.rule()) {
      case "heavy-climb" -> conventional(cut);
      case "travel-direction" -> {
        leaveOut("Leave the travel out", cut.travel());
        leaveOut("Leave the direction out", cut.direction());
        leaveOut("Leave the offset out", cut.offset());
      }
      case "face-not-covered" -> lanes(run);
      default -> {}
    }
  }

  private void leaveOut(String title, @Nullable Located<?> clause) {
    if (clause != null) {
      fixes.put(title, List.of(text.removeClause(clause.origin())));
    }
  }

  /** A stated travel is the wrong one then: the kind of cut tells which it is. */
  private void conventional(Step.Cut cut) {
    String title = "Cut conventionally";
    Located<?> direction = cut.direction();
    Located<?> travel = cut.travel();
    if (direction != null && travel != null) {
      fixes.put(
          title,
          List.of(
              text.replace(direction.origin(), "conventional"),
              text.removeClause(travel.origin())));
    } else if (direction != null) {
      fixes.put(title, List.of(text.replace(direction.origin(), "conventional")));
    } else if (travel != null) {
      fixes.put(title, List.of(text.replace(travel.origin(), "conventional")));
    } else {
      fixes.put(title, List.of(text.append(cut.origin(), ", conventional")));
    }
  }

  private void lanes(CutRun run) {
    Length step =
        new CutSizes(now)
            .roundedDown(Length.ofMillimetres(run.cutter().dia().millimetres() * LANE));
    String clause = "step over " + now.number(step);
    Located<Length> there = run.cut().stepOver();
    fixes.put(
        "Cut it in lanes " + step + " apart",
        List.of(
            there == null
                ? text.append(run.cut().origin(), ", " + clause)
                : text.replace(there.origin(), clause)));
  }
}
