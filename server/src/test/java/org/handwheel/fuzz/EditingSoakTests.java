package org.handwheel.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Collections;
import org.junit.jupiter.api.Test;

/** A short run of the soak; the long one is a program. */
class EditingSoakTests {
  /** Right after the last key, before anything is left to chance. */
  @Test
  void aPlanWrittenKeyByKeyIsFoundAsOneOpenedWhole() throws IOException, InterruptedException {
    EditingSoak.Outcome outcome = new EditingSoak(Path.of("../examples"), 3).run(0);
    assertThat(outcome.written()).isGreaterThan(2000);
    assertThat(outcome.different()).isEmpty();
    assertThat(outcome.faults()).isZero();
  }

  @Test
  void editingLeavesNothingBehind() throws IOException, InterruptedException {
    EditingSoak.Outcome outcome = new EditingSoak(Path.of("../examples"), 3).run(1500);
    assertThat(outcome.different()).isEmpty();
    assertThat(outcome.faults()).isZero();
    assertThat(outcome.growth()).isLessThan(0.5);
    // Workers start when they are first needed; beyond one for each processor there are none.
    assertThat(Collections.max(outcome.threads()) - Collections.min(outcome.threads()))
        .isLessThanOrEqualTo(2 + Runtime.getRuntime().availableProcessors());
  }
}
