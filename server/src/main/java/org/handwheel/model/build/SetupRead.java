package org.handwheel.model.build;

import java.util.List;
import org.handwheel.model.Names.Use;
import org.handwheel.model.Setup;
import org.handwheel.syntax.Finding;

/**
 * A setup as it was read from its section, with what else came of the reading.
 *
 * @param ground what the reading rested on
 * @param doubts whether what is doubtful mattered
 * @param uses the names its lines use
 * @param findings what is wrong with its lines
 */
record SetupRead(
    SetupGround ground, Doubts doubts, Setup setup, List<Use> uses, List<Finding> findings) {

  /** Whether a reading asked for names that no line declares, so that broken lines matter. */
  enum Doubts {
    ASKED,
    NOT_ASKED
  }
}
