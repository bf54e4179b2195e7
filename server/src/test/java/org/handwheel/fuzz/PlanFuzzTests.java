package org.handwheel.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** A short run of {@link PlanFuzz}. */
final class PlanFuzzTests {
  private static final int TEXTS = 300;

  @Test
  void damagedTextsDoNoHarm() {
    assertThat(new PlanFuzz().run(0, TEXTS)).isEmpty();
  }
}
