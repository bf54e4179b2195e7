package org.handwheel.model.build;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
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
import org.handwheel.syntax.Severity;

/** Declares and resolves names; one table of names per kind, upper and lower case alike. */
final class NameTable {
  private final Problems problems;
  private final Map<Kind, Map<String, Declaration>> known = new LinkedHashMap<>();
  private final List<Declaration> own = new ArrayList<>();
  private final List<Use> uses = new ArrayList<>();
  private final Set<String> values = new LinkedHashSet<>();
  private final Set<String> doubtful = new HashSet<>();
  private boolean thingsDoubtful;
  private boolean datumsDoubtful;
  private boolean holesDoubtful;
  private boolean doubtAsked;

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

  /** A value that can be used by this name; the part's sizes are not declared as names. */
  void valueKnown(String name) {
    values.add(name);
  }

  /** A line that may declare this name could not be read: its use is not reported as undefined. */
  void doubt(String name) {
    doubtful.add(key(name));
  }

  /** A shop file could not be read: things it may own are not reported as missing. */
  void doubtThings() {
    thingsDoubtful = true;
  }

  /** Whether a name may be declared by a line that could not be read. */
  boolean isDoubtful(String name) {
    doubtAsked = true;
    return doubtful.contains(key(name));
  }

  /** A line of datums could not be read: any letter may be one. */
  void doubtDatums() {
    datumsDoubtful = true;
  }

  /** A line of a hole could not be read: it may declare any. */
  void doubtHoles() {
    holesDoubtful = true;
  }

  boolean areDatumsDoubtful() {
    doubtAsked = true;
    return datumsDoubtful;
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
    doubtAsked = true;
    boolean ofPlan =
        kind == Kind.VALUE || kind == Kind.HOLE || kind == Kind.FEATURE || kind == Kind.SETUP;
    boolean maybeHole = holesDoubtful && kind == Kind.HOLE;
    if ((thingsDoubtful && !ofPlan) || maybeHole || isDoubtful(name)) {
      return;
    }
    String message = "there is no " + what + " `" + name + "`";
    int dash = kind == Kind.VALUE ? subtraction(name) : -1;
    if (dash > 0) {
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
    Collection<String> names =
        kind == Kind.VALUE ? values : table(kind).values().stream().map(Declaration::name).toList();
    Optional<String> near = Nearest.to(name, names);
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
    problems.error("undefined-name", origin, message);
  }

  private boolean isValue(String name) {
    return values.stream().anyMatch(name::equalsIgnoreCase);
  }

  /** Where a name can be cut in two values, or a value and a number, or -1. */
  private int subtraction(String name) {
    int dash = name.indexOf('-');
    while (dash > 0) {
      String right = name.substring(dash + 1);
      if (isValue(name.substring(0, dash)) && (isValue(right) || right.matches("[0-9]+"))) {
        return dash;
      }
      dash = name.indexOf('-', dash + 1);
    }
    return -1;
  }

  Names names() {
    return new Names(own, uses);
  }

  // ---- For reading a section once and taking what was read over as long as nothing it rests on
  // changes

  /** What lines that could not be read leave open about the names of a file. */
  record Doubts(Set<String> names, boolean things, boolean datums, boolean holes) {
    Doubts {
      names = Set.copyOf(names);
    }
  }

  Doubts doubts() {
    return new Doubts(doubtful, thingsDoubtful, datumsDoubtful, holesDoubtful);
  }

  /** From here on it is noted whether anybody asks for what is doubtful. */
  void watchDoubts() {
    doubtAsked = false;
  }

  /** Whether anybody has asked since. */
  boolean wereDoubtsAsked() {
    return doubtAsked;
  }

  /** Every name that a setup's lines may refer to, in the order of their declaration. */
  List<Declaration> referable() {
    List<Declaration> declarations = new ArrayList<>();
    known.forEach(
        (kind, table) -> {
          if (kind != Kind.SETUP) {
            declarations.addAll(table.values());
          }
        });
    return List.copyOf(declarations);
  }

  int useCount() {
    return uses.size();
  }

  /** The uses noted after the first so many. */
  List<Use> usesFrom(int first) {
    return List.copyOf(uses.subList(first, uses.size()));
  }

  void addUses(List<Use> more) {
    uses.addAll(more);
  }

  private Map<String, Declaration> table(Kind kind) {
    return known.computeIfAbsent(kind, k -> new LinkedHashMap<>());
  }

  private static String key(String name) {
    return name.toLowerCase(Locale.ROOT);
  }
}
