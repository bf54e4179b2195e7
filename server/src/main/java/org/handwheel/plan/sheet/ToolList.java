package org.handwheel.plan.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.handwheel.model.Hold;
import org.handwheel.model.Inspection;
import org.handwheel.model.Owned;
import org.handwheel.model.Step;
import org.handwheel.plan.sheet.Sheet.Tool;
import org.handwheel.units.LengthText;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.handwheel.work.PlanRun.StepRun;
import org.handwheel.work.hole.Bit;
import org.handwheel.work.hole.HoleRun;
import org.jspecify.annotations.Nullable;

/** What to lay out for a plan, each thing once, in the order it is needed. */
final class ToolList {
  private final Map<String, Tool> tools = new LinkedHashMap<>();

  private ToolList() {}

  static List<Tool> of(PlanRun run, List<SetupRun> setups) {
    ToolList list = new ToolList();
    for (SetupRun setup : setups) {
      list.hold(setup.setup().hold());
      setup.steps().forEach(list::step);
    }
    run.plan().inspections().stream().map(Inspection::instrument).forEach(list::owned);
    return new ArrayList<>(list.tools.values());
  }

  private void add(String name, String words) {
    tools.putIfAbsent(name.toLowerCase(Locale.ROOT) + "\n" + words, new Tool(name, words));
  }

  private void owned(@Nullable Owned thing) {
    if (thing != null) {
      add(thing.name(), words(thing));
    }
  }

  private void hold(@Nullable Hold hold) {
    if (hold == null) {
      return;
    }
    if (hold.rest() instanceof Hold.Rest.InVise vise) {
      owned(vise.vise());
    } else if (hold.rest() instanceof Hold.Rest.OnPlate plate && !plate.name().isEmpty()) {
      add(plate.name(), plate.plate().name().toLowerCase(Locale.ROOT).replace('_', ' '));
    }
    if (hold.support() != null) {
      Hold.Support support = hold.support().value();
      if (support instanceof Hold.Support.Pair pair) {
        owned(pair.parallels());
      } else if (support instanceof Hold.Support.One one) {
        owned(one.parallels());
      } else if (support instanceof Hold.Support.SoftStrip strip) {
        add("soft strip", "soft metal or card, " + LengthText.both(strip.thickness()));
      }
    }
    if (hold.bar() != null) {
      add("round bar", LengthText.both(hold.bar().value().dia()));
    }
    if (hold.beside() != null) {
      add(hold.beside().value().name(), LengthText.both(hold.beside().value().thickness()));
    }
    if (hold.spacer() != null) {
      add("spacer", "a piece " + LengthText.both(hold.spacer().value().width()) + " wide");
    }
    hold.clamps().forEach(clamp -> owned(clamp.clamp()));
  }

  private void step(StepRun run) {
    Step step = run.step();
    if (step instanceof Step.Seat seat) {
      add("soft hammer", "to tap the work down");
      if (seat.upright() != null) {
        owned(seat.upright().square());
      }
    } else if (step instanceof Step.TrueVise vise) {
      owned(vise.instrument());
    } else if (step instanceof Step.UseCutter use) {
      owned(use.cutter());
    } else if (step instanceof Step.Touch touch && touch.paper().isPositive()) {
      add("paper", LengthText.both(touch.paper()) + ", to touch off with");
    } else if (step instanceof Step.Find find) {
      owned(find.finder());
    } else if (step instanceof Step.FeatureCut cut) {
      owned(cut.way().cutter());
    } else if (step instanceof Step.Measure measure) {
      owned(measure.instrument());
    } else if (step instanceof Step.Deburr) {
      add("file or scraper", "to deburr");
    }
    if (run.cut() != null) {
      owned(run.cut().cutter());
    }
    HoleRun holes = run.holes();
    if (holes != null) {
      holes.results().map(HoleRun.Result::bit).distinct().forEach(bit -> bit(bit, holes));
    }
  }

  private void bit(Bit bit, HoleRun holes) {
    String verb = holes.cut().verb().name().toLowerCase(Locale.ROOT);
    String size =
        bit.dia() == null || bit.name().contains(" mm") ? "" : ", " + LengthText.both(bit.dia());
    add(bit.name(), "to " + verb + size + (bit.known() ? "" : "; no such size is in the tables"));
  }

  /** What a thing of the shop is. */
  static String words(Owned thing) {
    if (thing instanceof Owned.Vise vise) {
      return "vise, jaws " + LengthText.both(vise.jawWidth());
    }
    if (thing instanceof Owned.Parallels parallels) {
      return "parallels, "
          + LengthText.both(parallels.thickness())
          + " thick, "
          + LengthText.both(parallels.height())
          + " high";
    }
    if (thing instanceof Owned.Cutter cutter) {
      return cutter.cutterKind().name().toLowerCase(Locale.ROOT).replace('_', ' ')
          + ", "
          + LengthText.both(cutter.dia())
          + ", "
          + cutter.teeth()
          + (cutter.teeth() == 1 ? " tooth, " : " teeth, ")
          + (cutter.madeOf() == Owned.ToolMaterial.HSS ? "high-speed steel" : "carbide")
          + (cutter.hand() == Owned.Hand.LEFT ? ", left-hand" : "");
    }
    if (thing instanceof Owned.Instrument instrument) {
      return instrument.instrumentKind().name().toLowerCase(Locale.ROOT).replace('_', ' ')
          + (instrument.instrumentKind().measuresSizes()
              ? ", reads to " + LengthText.both(instrument.resolution())
              : "");
    }
    return thing instanceof Owned.Finder finder
        ? "edge finder, tip " + LengthText.both(finder.dia())
        : thing.kind().word().replace('-', ' ');
  }
}
