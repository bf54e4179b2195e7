package org.handwheel.model.build;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.handwheel.model.Names;
import org.handwheel.model.Names.Declaration;
import org.handwheel.model.Names.Kind;
import org.handwheel.model.Names.Use;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Finding.Related;
import org.handwheel.syntax.Nearest;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.Severity;

/** Declares and resolves names; one table of names per kind, upper and lower case alike. */
final class NameTable {
  private final Problems problems;
  private final Map<Kind, Map<String, Declaration>> known = new LinkedHashMap<>();
  private final List<Declaration> own = new ArrayList<>();
  private final List<Use> uses = new ArrayList<>();
  private final Set<String> doubtful = new HashSet<>();
  private boolean thingsDoubtful;

  NameTable(Problems problems) {
    this.problems = problems;
  }

  /** Declares a name of this file; reports a second declaration and keeps the first. */
  void declare(Kind kind, String name, Origin origin) {
    Declaration declaration = new Declaration(kind, name, origin);
    Declaration before = table(kind).putIfAbsent(key(name), declaration);
    if (before != null) {
      problems.add(
          new Finding(
              "duplicate-name",
              Severity.ERROR,
              origin,
              "`" + name + "` is already declared",
              List.of(new Related(before.origin(), "`" + before.name() + "` is declared here")),
              List.of()));
      return;
    }
    own.add(declaration);
  }

  /** Makes a name of another file known. */
  void bringIn(Declaration declaration) {
    table(declaration.kind()).putIfAbsent(key(declaration.name()), declaration);
  }

  /** A shop file could not be read: things it may own are not reported as missing. */
  void doubtThings() {
    thingsDoubtful = true;
  }

  /** A line could not be read: the words in it may be names it would have declared. */
  void doubt(Section section) {
    for (Finding problem : section.problems()) {
      String line = section.source().line(section.source().lineAt(problem.origin().start()));
      for (String word : line.split("[^\\p{L}\\p{N}_-]+", -1)) {
        doubt(word);
      }
    }
  }

  /** A name whose value could not be worked out, which has been reported. */
  void doubt(String name) {
    doubtful.add(key(name));
  }

  /** Whether a name may be declared by a line that could not be read. */
  boolean isDoubtful(String name) {
    return doubtful.contains(key(name));
  }

  boolean knows(Kind kind, String name) {
    return table(kind).containsKey(key(name));
  }

  /** Notes that a name is used, and reports it if nothing of the kind has it. */
  Optional<Declaration> use(Kind kind, String what, String name, Origin origin) {
    Declaration declaration = table(kind).get(key(name));
    if (declaration == null) {
      undefined(kind, what, name, origin);
      return Optional.empty();
    }
    uses.add(new Use(origin, declaration));
    return Optional.of(declaration);
  }

  private void undefined(Kind kind, String what, String name, Origin origin) {
    boolean ofPlan =
        kind == Kind.VALUE || kind == Kind.HOLE || kind == Kind.FEATURE || kind == Kind.SETUP;
    if ((thingsDoubtful && !ofPlan) || isDoubtful(name)) {
      return;
    }
    List<String> names = table(kind).values().stream().map(Declaration::name).toList();
    Optional<String> near = Nearest.to(name, names);
    String message = "there is no " + what + " `" + name + "`";
    if (near.isPresent()) {
      problems.add(
          new Finding(
                  "undefined-name",
                  Severity.ERROR,
                  origin,
                  message + "; did you mean `" + near.get() + "`?")
              .withFix(Fix.replace("Write `" + near.get() + "`", origin, near.get())));
      return;
    }
    int dash = name.indexOf('-');
    if (kind == Kind.VALUE && dash > 0 && knows(kind, name.substring(0, dash))) {
      String spaced = name.substring(0, dash) + " - " + name.substring(dash + 1);
      problems.add(
          new Finding(
                  "undefined-name",
                  Severity.ERROR,
                  origin,
                  message + "; to subtract, write blanks around `-`: `" + spaced + "`")
              .withFix(Fix.replace("Write `" + spaced + "`", origin, spaced)));
      return;
    }
    problems.error("undefined-name", origin, message);
  }

  Names names() {
    return new Names(own, uses);
  }

  private Map<String, Declaration> table(Kind kind) {
    return known.computeIfAbsent(kind, k -> new LinkedHashMap<>());
  }

  private static String key(String name) {
    return name.toLowerCase(Locale.ROOT);
  }
}
