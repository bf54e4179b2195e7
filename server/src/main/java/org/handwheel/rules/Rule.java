package org.handwheel.rules;

import java.util.function.Consumer;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;

/**
 * One kind of mistake. A rule is a pure function of the plan worked through; it keeps no state.
 *
 * <p>To add one: a class here, an entry in {@link Rules#all()}, and a page that explains it with a
 * bad and a good example.
 */
public interface Rule {
  /** Its name in words with dashes, as settings and comments name it: {@code heavy-pass}. */
  String id();

  /** How much its findings weigh unless the shop says otherwise. */
  Severity severity();

  /** Reports what it finds. */
  void check(Checkup checkup, Consumer<Finding> out);
}
