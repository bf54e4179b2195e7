package org.handwheel.ide.complete;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelLexer;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.model.Face;
import org.handwheel.work.FaceState;
import org.handwheel.work.Orientation;

/** The faces that make sense, the likeliest first. */
final class FaceProposals {
  private static final int RANK = 60;

  private final Slot slot;
  private final Situation now;

  FaceProposals(Slot slot, Situation now) {
    this.slot = slot;
    this.now = now;
  }

  List<Proposal> of(List<Integer> rules) {
    List<Proposal> proposals = new ArrayList<>();
    for (Face face : Face.all()) {
      if (!isOut(face, rules)) {
        String state = now.face(face).map(FaceState::words).orElse("");
        proposals.add(Proposal.plain(face.word(), Proposal.Kind.FACE, state, RANK + weight(face)));
      }
    }
    return proposals;
  }

  /** Whether the face cannot be meant. */
  private boolean isOut(Face face, List<Integer> rules) {
    int verb = slot.firstType();
    int before = slot.type(1);
    if (before == HandwheelLexer.UP || before == HandwheelLexer.FIXED) {
      int other = before == HandwheelLexer.UP ? HandwheelLexer.FIXED : HandwheelLexer.UP;
      return faceAfter(other).filter(stated -> !face.adjoins(stated)).isPresent();
    }
    Orientation orientation = now.orientation();
    boolean cuts =
        slot.before().size() == 1
            && (verb == HandwheelLexer.CLEAN
                || verb == HandwheelLexer.ROUGH
                || verb == HandwheelLexer.FINISH
                || verb == HandwheelLexer.TOUCH);
    if (orientation != null && cuts) {
      return face == orientation.up().opposite();
    }
    if (verb == HandwheelLexer.SQUARE || verb == HandwheelLexer.PARALLEL) {
      Optional<Face> first =
          slot.before().size() > 1 ? Situation.face(slot.before().get(1)) : Optional.empty();
      boolean second = before == HandwheelLexer.TO && first.isPresent();
      boolean parallel = verb == HandwheelLexer.PARALLEL;
      return second && (parallel ? face != first.get().opposite() : !face.adjoins(first.get()));
    }
    boolean list = rules.contains(HandwheelParser.RULE_faces);
    return (list || rules.contains(HandwheelParser.RULE_corner)) && given().contains(face);
  }

  private Optional<Face> faceAfter(int type) {
    for (int i = 0; i + 1 < slot.before().size(); i++) {
      if (slot.before().get(i).getType() == type) {
        return Situation.face(slot.before().get(i + 1));
      }
    }
    return Optional.empty();
  }

  /** Faces named just before, without anything else between. */
  private Set<Face> given() {
    Set<Face> given = new HashSet<>();
    for (int i = slot.before().size() - 1; i >= 0; i--) {
      Token token = slot.before().get(i);
      Optional<Face> face = Situation.face(token);
      if (face.isEmpty() && token.getType() != HandwheelLexer.COMMA) {
        break;
      }
      face.ifPresent(given::add);
    }
    return given;
  }

  /** 0 for the faces that are most likely meant. */
  private int weight(Face face) {
    boolean machined = now.face(face).map(FaceState::isMachined).orElse(false);
    boolean burr = now.face(face).map(state -> state.burr() != null).orElse(false);
    int verb = slot.firstType();
    if (slot.type(1) == HandwheelLexer.FIXED) {
      return machined ? 0 : 1;
    }
    if (verb == HandwheelLexer.DEBURR) {
      return burr ? 0 : 1;
    }
    Orientation orientation = now.orientation();
    boolean up = orientation != null && orientation.up() == face;
    return switch (verb) {
      case HandwheelLexer.TOUCH, HandwheelLexer.SET -> up ? 0 : 1;
      case HandwheelLexer.CLEAN -> machined ? 2 : up ? 0 : 1;
      case HandwheelLexer.HOLD, HandwheelLexer.ROUGH, HandwheelLexer.FINISH ->
          (up ? 0 : 1) + (machined ? 2 : 0);
      default -> 0;
    };
  }
}
