package org.handwheel.model;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Severity;
import org.jspecify.annotations.Nullable;

/**
 * All that a plan can use: the things of the shop files it names, and the settings in force.
 *
 * @param things owned things in the order of the files
 * @param severities rules whose weight the shop changes
 */
public record Shop(List<Owned> things, Limits limits, Map<String, Located<Severity>> severities) {
  public static final Shop EMPTY = new Shop(List.of(), Limits.DEFAULTS, Map.of());

  public Shop {
    things = List.copyOf(things);
    severities = Map.copyOf(severities);
  }

  /** The thing of a type with this name; names do not tell upper from lower case. */
  public <T extends Owned> Optional<T> find(Class<T> type, String name) {
    return all(type).stream().filter(thing -> sameName(thing.name(), name)).findFirst();
  }

  public <T extends Owned> List<T> all(Class<T> type) {
    return things.stream().filter(type::isInstance).map(type::cast).toList();
  }

  public Optional<Owned.Piece> findPiece(OwnKind kind, String name) {
    return all(Owned.Piece.class).stream()
        .filter(piece -> piece.kind() == kind && sameName(piece.name(), name))
        .findFirst();
  }

  private static boolean sameName(String a, String b) {
    return a.toLowerCase(Locale.ROOT).equals(b.toLowerCase(Locale.ROOT));
  }

  /** One shop file's own sections, before several files are put together. */
  public record ShopFile(
      String path, Shop shop, Names names, List<UsedFile> uses, List<Finding> findings) {
    public ShopFile {
      uses = List.copyOf(uses);
      findings = List.copyOf(findings);
    }
  }

  /** A {@code use} line: the path as written, and the workspace path it means if it is allowed. */
  public record UsedFile(String written, @Nullable String path, Origin origin) {}
}
