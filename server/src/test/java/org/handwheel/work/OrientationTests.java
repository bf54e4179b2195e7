package org.handwheel.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.handwheel.model.Axis;
import org.handwheel.model.Direction;
import org.handwheel.model.Face;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Side;
import org.junit.jupiter.api.Test;

class OrientationTests {
  /** Geometry: X = Y x Z, so the face at the right is the one at the back x the one up. */
  @Test
  void frontUpAndTopOnTheFixedJawPutsThePartsLeftAtTheOperatorsLeft() {
    Orientation orientation = Orientation.of(Face.FRONT, Face.TOP, Direction.OPERATOR_BACK);

    assertThat(orientation.facing(Direction.OPERATOR_LEFT)).isEqualTo(Face.LEFT);
  }

  @Test
  void bottomUpAndBackOnTheFixedJawPutsThePartsLeftAtTheOperatorsRight() {
    Orientation orientation = Orientation.of(Face.BOTTOM, Face.BACK, Direction.OPERATOR_BACK);

    assertThat(orientation.facing(Direction.OPERATOR_RIGHT)).isEqualTo(Face.LEFT);
  }

  @Test
  void aFixedJawInFrontTurnsTheWorkRound() {
    Orientation orientation = Orientation.of(Face.TOP, Face.BACK, Direction.OPERATOR_FRONT);

    assertThat(orientation.facing(Direction.OPERATOR_FRONT)).isEqualTo(Face.BACK);
    assertThat(orientation.facing(Direction.OPERATOR_RIGHT)).isEqualTo(Face.LEFT);
  }

  @Test
  void thereAre24OrientationsAllRightHandedAndOneToOne() {
    Set<List<Face>> seen = new HashSet<>();
    for (Face up : Face.all()) {
      for (Face back : Face.all()) {
        if (!up.adjoins(back)) {
          continue;
        }
        Orientation orientation = new Orientation(up, back);
        List<Face> faces = Arrays.stream(Direction.values()).map(orientation::facing).toList();
        assertThat(faces).doesNotHaveDuplicates().hasSize(6);
        assertThat(orientation.facing(Direction.OPERATOR_RIGHT).cross(back)).isEqualTo(up);
        for (Direction direction : Direction.values()) {
          Face face = orientation.facing(direction);
          assertThat(orientation.directionOf(face)).isEqualTo(direction);
          assertThat(orientation.axisOf(face)).isEqualTo(direction.axis());
          assertThat(orientation.facing(direction.opposite())).isEqualTo(face.opposite());
          assertThat(orientation.along(direction.axis())).isEqualTo(face.dimension());
          assertThat(orientation.resolve(new Side.OfPart(face))).isEqualTo(direction);
          assertThat(orientation.resolve(new Side.AtMachine(direction))).isEqualTo(direction);
        }
        seen.add(faces);
      }
    }
    assertThat(seen).hasSize(24);
  }

  @Test
  void sizesLieAlongTheAxes() {
    Orientation orientation = new Orientation(Face.LEFT, Face.TOP);

    assertThat(
            Map.of(
                Axis.X, orientation.along(Axis.X),
                Axis.Y, orientation.along(Axis.Y),
                Axis.Z, orientation.along(Axis.Z)))
        .isEqualTo(
            Map.of(
                Axis.X, PartDimension.WIDTH,
                Axis.Y, PartDimension.HEIGHT,
                Axis.Z, PartDimension.LENGTH));
  }

  @Test
  void aFaceHasNoRelationToItselfAndPairsHaveNoOrder() {
    assertThat(new FacePair(Face.TOP, Face.LEFT)).isEqualTo(new FacePair(Face.LEFT, Face.TOP));
    assertThat(new FacePair(Face.TOP, Face.LEFT).other(Face.TOP)).isEqualTo(Face.LEFT);
    assertThat(new FacePair(Face.TOP, Face.LEFT).other(Face.LEFT)).isEqualTo(Face.TOP);
    assertThat(new FacePair(Face.TOP, Face.LEFT).adjoin()).isTrue();
    assertThat(new FacePair(Face.TOP, Face.BOTTOM).adjoin()).isFalse();
    assertThat(new FacePair(Face.TOP, Face.LEFT).has(Face.RIGHT)).isFalse();
    assertThatThrownBy(() -> new FacePair(Face.TOP, Face.TOP))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
