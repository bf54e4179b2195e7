package org.handwheel.rules.name;

import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.handwheel.model.Names;
import org.handwheel.model.Names.Declaration;
import org.handwheel.model.Names.Kind;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;

/** A value given with {@code let} that nothing uses. */
public final class UnusedName extends SimpleRule {
  public UnusedName() {
    super("unused-name", Severity.INFO);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    if (!checkup.isWhole() || !isSound(checkup)) {
      return;
    }
    Names names = checkup.plan().names();
    List<Declaration> values =
        names.declarations().stream()
            .filter(declaration -> declaration.kind() == Kind.VALUE)
            .toList();
    if (values.isEmpty()) {
      return;
    }
    Set<Declaration> used =
        names.uses().stream()
            .map(Names.Use::declaration)
            .filter(declaration -> declaration.kind() == Kind.VALUE)
            .collect(Collectors.toSet());
    for (Declaration declaration : values) {
      if (!used.contains(declaration)) {
        out.accept(finding(declaration.origin(), "`" + declaration.name() + "` is never used"));
      }
    }
  }

  /** Lines that could not be read may be the ones that use it. */
  private static boolean isSound(Checkup checkup) {
    return checkup.plan().findings().stream()
        .noneMatch(finding -> finding.severity() == Severity.ERROR);
  }
}
