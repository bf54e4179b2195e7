package org.handwheel.ide.complete;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.antlr.v4.runtime.Token;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.model.Face;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Owned;
import org.handwheel.model.PartDimension;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.Drawing.Demand;
import org.handwheel.work.SizeState;
import org.jspecify.annotations.Nullable;

/** Numbers that fit a place, worked out from the plan as far as it goes. */
final class ValueProposals {
  private static final int RANK = 20;

  private final Slot slot;
  private final Situation now;
  private final CutSizes sizes;
  private final List<Proposal> proposals = new ArrayList<>();

  ValueProposals(Slot slot, Situation now) {
    this.slot = slot;
    this.now = now;
    this.sizes = new CutSizes(now);
  }

  List<Proposal> all() {
    Optional<Face> cut = cutFace();
    switch (slot.type(1)) {
      case HandwheelLexer.LEAVING -> leaving();
      case HandwheelLexer.PASS -> cut.ifPresent(this::pass);
      case HandwheelLexer.OF -> {
        if (slot.has(HandwheelLexer.PASSES)) {
          cut.ifPresent(this::pass);
        }
      }
      case HandwheelLexer.BY -> cut.ifPresent(this::count);
      case HandwheelLexer.AT -> {
        if (slot.firstType() == HandwheelLexer.CLEAN) {
          cut.ifPresent(face -> length(depthOfSkim(face), "a light skim"));
        }
      }
      case HandwheelLexer.MOST ->
          cut.flatMap(sizes::mostToClean).ifPresent(most -> length(most, "what is over the size"));
      case HandwheelLexer.TO -> cut.ifPresent(this::target);
      case HandwheelLexer.SPACER -> spacer();
      case HandwheelLexer.BAR -> bar();
      case HandwheelLexer.SOFT_STRIP -> length(Length.mm("1.5"), "soft metal or card");
      case HandwheelLexer.PAPER -> length(Length.mm("0.05"), "cigarette paper");
      case HandwheelLexer.HEAD -> text("0.02 over 150", "usual");
      case HandwheelLexer.SPEED -> speeds();
      default -> {
        if (slot.type(2) == HandwheelLexer.OVERHANG) {
          overhang();
        } else if (slot.firstType() == HandwheelLexer.TRUE
            && slot.has(HandwheelLexer.WITH)
            && !slot.has(HandwheelLexer.OVER)) {
          text("0.02 over 100", "usual");
        }
      }
    }
    return List.copyOf(proposals);
  }

  /** The face the line's cut is on. */
  private Optional<Face> cutFace() {
    return switch (slot.firstType()) {
      case HandwheelLexer.CLEAN, HandwheelLexer.ROUGH, HandwheelLexer.FINISH ->
          slot.before().size() > 1 ? Situation.face(slot.before().get(1)) : Optional.empty();
      default -> Optional.empty();
    };
  }

  private void text(String text, String detail) {
    proposals.add(Proposal.plain(text, Proposal.Kind.VALUE, detail, RANK + proposals.size()));
  }

  /** A length as a bare number of the file's units; the detail gives it in both. */
  private void length(Length length, String detail) {
    text(now.number(length), LengthText.both(length) + ", " + detail);
  }

  private void leaving() {
    text(now.units() == LengthUnit.MM ? "0.25 mm" : "10 thou", "usual for the finishing pass");
    text(now.units() == LengthUnit.MM ? "10 thou" : "0.25 mm", "usual for the finishing pass");
  }

  private void pass(Face face) {
    Length limit = sizes.passLimit(face);
    Optional<Length> removal = removal(face);
    if (removal.isPresent()) {
      long passes = CutSizes.passes(removal.get(), limit);
      length(
          sizes.evenPass(removal.get(), limit),
          passes + (passes == 1 ? " pass" : " equal passes") + " for " + removal.get());
    }
    length(sizes.roundedDown(limit), "the deepest the shop's limits allow");
  }

  private void count(Face face) {
    removal(face)
        .ifPresent(
            removal ->
                text(
                    Long.toString(CutSizes.passes(removal, sizes.passLimit(face))),
                    "passes for " + removal));
  }

  private Optional<Length> removal(Face face) {
    Length leaving =
        slot.firstType() == HandwheelLexer.ROUGH
            ? after(HandwheelLexer.LEAVING).orElse(Length.ZERO)
            : Length.ZERO;
    return sizes.removal(face, leaving);
  }

  /** The length written behind a word of the line, if it is a plain number. */
  private Optional<Length> after(int type) {
    List<Token> tokens = slot.before();
    for (int i = 0; i + 1 < tokens.size(); i++) {
      Token number = tokens.get(i + 1);
      boolean plain =
          number.getType() == HandwheelLexer.DEC || number.getType() == HandwheelLexer.INT;
      if (tokens.get(i).getType() == type && plain) {
        LengthUnit unit = i + 2 < tokens.size() ? unit(tokens.get(i + 2)) : null;
        String text = number.getText();
        return Optional.of(
            Length.of(text.startsWith(".") ? "0" + text : text, unit == null ? now.units() : unit));
      }
    }
    return Optional.empty();
  }

  static @Nullable LengthUnit unit(Token token) {
    return switch (token.getType()) {
      case HandwheelLexer.MM -> LengthUnit.MM;
      case HandwheelLexer.IN -> LengthUnit.IN;
      case HandwheelLexer.THOU -> LengthUnit.THOU;
      case HandwheelLexer.TENTHS -> LengthUnit.TENTH;
      case HandwheelLexer.UM -> LengthUnit.UM;
      default -> null;
    };
  }

  private Length depthOfSkim(Face face) {
    Length usual =
        now.units() == LengthUnit.MM ? Length.mm("0.4") : Length.of("15", LengthUnit.THOU);
    return Length.min(usual, sizes.passLimit(face));
  }

  private void target(Face face) {
    proposals.add(
        Proposal.plain(face.dimension().word(), Proposal.Kind.VALUE, goal(face.dimension()), RANK));
  }

  private String goal(PartDimension dimension) {
    Demand demand = now.view().run() == null ? null : now.view().run().drawing().demand(dimension);
    return demand == null ? "the drawing's size" : LengthText.both(demand.aim());
  }

  private Optional<Face> stated(int word) {
    List<Token> tokens = slot.before();
    for (int i = 0; i + 1 < tokens.size(); i++) {
      if (tokens.get(i).getType() == word) {
        return Situation.face(tokens.get(i + 1));
      }
    }
    return Optional.empty();
  }

  /** As wide as the work between the jaws, a little less rather than more. */
  private void spacer() {
    stated(HandwheelLexer.FIXED)
        .map(fixed -> now.work() == null ? null : now.work().size(fixed.dimension()))
        .map(SizeState::range)
        .ifPresent(
            range ->
                length(
                    CutSizes.roundedDown(range.low(), Length.mm("0.05")),
                    "as wide as the work, " + LengthText.range(range)));
  }

  private void bar() {
    for (Owned.Piece bar : now.shop().all(Owned.Piece.class)) {
      Length dia = bar.size("dia");
      if (bar.kind() == OwnKind.BAR && dia != null) {
        length(dia, bar.name());
      }
    }
    if (proposals.isEmpty()) {
      length(Length.mm("8"), "a round bar");
    }
  }

  /**
   * A third of the gripped length at most, that is a quarter of the whole, and not more than the
   * height.
   */
  private void overhang() {
    Optional<Face> end = Situation.face(slot.before().get(slot.before().size() - 1));
    Optional<Face> up = stated(HandwheelLexer.UP);
    if (end.isEmpty() || up.isEmpty() || now.work() == null) {
      return;
    }
    SizeState along = now.work().size(end.get().dimension());
    SizeState high = now.work().size(up.get().dimension());
    if (along == null || high == null) {
      return;
    }
    Length most = Length.min(along.range().low().times(BigFraction.of(1, 4)), high.range().low());
    length(
        CutSizes.roundedDown(Length.min(most, Length.mm("10")), Length.mm("1")),
        "at most " + most + " stands firm");
  }

  private void speeds() {
    Owned.Machine machine = now.view().plan() == null ? null : now.view().plan().machine();
    if (machine != null) {
      for (double speed : machine.speeds()) {
        String number = Double.toString(speed).replaceAll("\\.0$", "");
        text(number.toLowerCase(Locale.ROOT) + " rpm", "a step of " + machine.name());
      }
    }
  }
}
