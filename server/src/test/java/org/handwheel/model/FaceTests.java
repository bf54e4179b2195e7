package org.handwheel.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Source of the frame: vector geometry, a right-handed frame of right, back and top. */
class FaceTests {
  /** The outward normals, written out again so that the test does not share the code's tables. */
  private static final Map<Face, int[]> NORMALS =
      Map.of(
          Face.LEFT, new int[] {-1, 0, 0},
          Face.RIGHT, new int[] {1, 0, 0},
          Face.FRONT, new int[] {0, -1, 0},
          Face.BACK, new int[] {0, 1, 0},
          Face.BOTTOM, new int[] {0, 0, -1},
          Face.TOP, new int[] {0, 0, 1});

  @ParameterizedTest
  @CsvSource({
    "RIGHT, BACK, TOP", "BACK, TOP, RIGHT", "TOP, RIGHT, BACK",
    "TOP, FRONT, RIGHT", "BACK, BOTTOM, LEFT", "LEFT, BACK, BOTTOM"
  })
  void theCrossProductIsRightHanded(Face a, Face b, Face product) {
    assertThat(a.cross(b)).isEqualTo(product);
  }

  @Test
  void theCrossProductIsTheOneOfTheNormals() {
    for (Face a : Face.all()) {
      for (Face b : Face.all()) {
        if (!a.adjoins(b)) {
          assertThatThrownBy(() -> a.cross(b)).isInstanceOf(IllegalArgumentException.class);
          continue;
        }
        int[] u = NORMALS.get(a);
        int[] v = NORMALS.get(b);
        int[] w = {u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]};
        assertThat(NORMALS.get(a.cross(b))).containsExactly(w);
        assertThat(b.cross(a)).isEqualTo(a.cross(b).opposite());
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Face.class)
  void anOppositeFaceLooksTheOtherWay(Face face) {
    int[] normal = NORMALS.get(face);
    int[] turned = Arrays.stream(normal).map(i -> -i).toArray();
    assertThat(NORMALS.get(face.opposite())).containsExactly(turned);
    assertThat(face.opposite().opposite()).isEqualTo(face);
    assertThat(face.adjoins(face.opposite())).isFalse();
    assertThat(Face.of(face.dimension(), face.sign())).isEqualTo(face);
    assertThat(Face.all().stream().filter(face::adjoins)).hasSize(4);
  }

  @ParameterizedTest
  @EnumSource(Direction.class)
  void aDirectionIsAnAxisAndASign(Direction direction) {
    assertThat(Direction.of(direction.axis(), direction.sign())).isEqualTo(direction);
    assertThat(direction.opposite().axis()).isEqualTo(direction.axis());
    assertThat(direction.opposite().sign()).isEqualTo(-direction.sign());
  }
}
