package org.handwheel.model.build;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.handwheel.model.Limit;
import org.handwheel.model.Limits;
import org.handwheel.model.Located;
import org.handwheel.model.Names.Kind;
import org.handwheel.model.Owned;
import org.handwheel.model.Shop;
import org.handwheel.model.Shop.ShopFile;
import org.handwheel.model.Shop.UsedFile;
import org.handwheel.model.Workspace;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * Follows the {@code use} lines of a file to the shop files they lead to, and puts them together.
 */
final class UsedShops {
  private static final int DEEPEST_USE = 8;

  private final Workspace workspace;
  private final FileBuilder file;
  private final Map<SyntaxTree, ShopFile> known;
  private final Map<SyntaxTree, ShopFile> files = new HashMap<>();
  private final Set<String> usedPaths = new LinkedHashSet<>();
  private final Shop shop;

  private UsedShops(Workspace workspace, FileBuilder file, Map<SyntaxTree, ShopFile> known) {
    this.workspace = workspace;
    this.file = file;
    this.known = known;
    this.shop = readShops();
  }

  /** Reads them; what is wrong on the way is reported at the file's own {@code use} lines. */
  static UsedShops read(Workspace workspace, FileBuilder file) {
    return new UsedShops(workspace, file, Map.of());
  }

  /** As {@link #read(Workspace, FileBuilder)}, taking over files that were read before. */
  static UsedShops read(Workspace workspace, FileBuilder file, Map<SyntaxTree, ShopFile> known) {
    return new UsedShops(workspace, file, known);
  }

  /** The files read, by their trees. */
  Map<SyntaxTree, ShopFile> files() {
    return files;
  }

  /** All things and settings of the files together. */
  Shop shop() {
    return shop;
  }

  /** The workspace paths met, those of files that are not there too. */
  List<String> paths() {
    return List.copyOf(usedPaths);
  }

  /** One file still to be read, with the way that led to it. */
  private record Visit(UsedFile used, List<String> way) {}

  private Shop readShops() {
    List<Owned> things = new ArrayList<>();
    Map<Limit, Quantity> limits = new LinkedHashMap<>();
    Map<String, Located<Severity>> severities = new HashMap<>();
    Set<String> seen = new HashSet<>();
    Deque<Visit> open = new ArrayDeque<>();
    for (UsedFile used : file.uses()) {
      open.add(new Visit(used, List.of(file.tree().path())));
    }
    while (!open.isEmpty()) {
      Visit visit = open.remove();
      ShopFile found = load(visit);
      if (found == null || !seen.add(found.path())) {
        continue;
      }
      if (found.findings().stream().anyMatch(UsedShops::breaksAHeader)) {
        file.names().doubtThings();
      }
      things.addAll(found.shop().things());
      found.shop().limits().set().forEach(limits::putIfAbsent);
      found.shop().severities().forEach(severities::putIfAbsent);
      found.names().declarations().stream()
          .filter(declaration -> declaration.kind() != Kind.VALUE)
          .forEach(file.names()::bringIn);
      List<String> way = new ArrayList<>(visit.way());
      way.add(found.path());
      found.uses().forEach(used -> open.add(new Visit(used, List.copyOf(way))));
    }
    return new Shop(things, new Limits(limits), severities);
  }

  /** Whether the name of an owned thing could not be read. */
  private static boolean breaksAHeader(Finding finding) {
    Section section = finding.origin().section();
    return section.kind() == SectionKind.OWN
        && finding.rule().equals("syntax")
        && section.source().lineAt(finding.origin().start()) == 0;
  }

  private @Nullable ShopFile load(Visit visit) {
    String path = visit.used().path();
    boolean direct = visit.way().size() == 1;
    if (path == null) {
      file.names().doubtThings();
      return null;
    }
    usedPaths.add(path);
    if (visit.way().contains(path)) {
      reportUse(visit, "use-cycle", "the files use each other in a circle: " + circle(visit, path));
      return null;
    }
    if (visit.way().size() > DEEPEST_USE) {
      reportUse(visit, "use-path", "files use each other more than " + DEEPEST_USE + " deep");
      return null;
    }
    SyntaxTree tree = workspace.file(path).orElse(null);
    if (tree == null) {
      file.names().doubtThings();
      String why = workspace.unreadable().getOrDefault(path, "there is no such file");
      reportUse(
          visit,
          "use-path",
          direct
              ? "cannot read \"" + visit.used().written() + "\": " + why
              : "a shop file uses \"" + visit.used().written() + "\", but: " + why);
      return null;
    }
    ShopFile before = known.get(tree);
    ShopFile found = before == null ? ShopFiles.build(tree) : before;
    files.put(tree, found);
    return found;
  }

  /** Reports at the file's own {@code use} line that leads there. */
  private void reportUse(Visit visit, String rule, String message) {
    Origin origin = visit.used().origin();
    if (!file.tree().contains(origin)) {
      String first = visit.way().get(1);
      origin =
          file.uses().stream()
              .filter(used -> first.equals(used.path()))
              .map(UsedFile::origin)
              .findFirst()
              .orElse(file.tree().sections().get(0).header());
    }
    file.problems().error(rule, origin, message);
  }

  private static String circle(Visit visit, String path) {
    List<String> way = visit.way().subList(visit.way().indexOf(path), visit.way().size());
    return String.join(" -> ", way) + " -> " + path;
  }
}
