package org.handwheel.rules;

import java.util.function.Consumer;
import org.handwheel.syntax.Finding;

/**
 * Marks a rule that looks at one setup at a time: what it finds in a setup follows from the setup
 * worked through and from the part, the stock, the shop, the tables and the faces that are
 * finished, not from other setups.
 *
 * <p>Such a rule is shown each setup alone, as a plan worked through that has no other, up to and
 * with the first that could not be read, or all if it says so. What it found stays valid as long as
 * none of that changes, so that an edit costs the setups it touches. A rule without the mark sees
 * the whole plan and runs each time; when in doubt, leave the mark out.
 */
public interface EachSetup {
  /** Which setups a rule is shown. */
  enum Reach {
    /** Those at whose start the state of the work is known. */
    KNOWN,
    /** All, also those after one that could not be read. */
    ALL
  }

  default Reach reach() {
    return Reach.KNOWN;
  }

  /** What the rule finds besides in the plan as a whole; this part runs each time. */
  default void checkPlan(Checkup checkup, Consumer<Finding> out) {}
}
