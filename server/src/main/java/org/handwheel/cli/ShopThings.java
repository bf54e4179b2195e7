package org.handwheel.cli;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.handwheel.files.FolderSearch;
import org.handwheel.files.WorkspaceLoader;
import org.handwheel.files.WorkspaceLoader.Loaded;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.model.Limits;
import org.handwheel.model.Owned;
import org.handwheel.model.Shop;
import org.handwheel.model.build.ShopFiles;
import org.handwheel.syntax.Nearest;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;

/** What the shop files at hand own: the one named, or all below the current folder. */
final class ShopThings {
  private final List<Shop> shops = new ArrayList<>();
  private final List<String> trouble = new ArrayList<>();

  private ShopThings() {}

  /**
   * Reads shop files.
   *
   * @param shop the only one wanted, or nothing for all below the current folder
   */
  static ShopThings load(@Nullable String shop, Surroundings surroundings) {
    ShopThings things = new ShopThings();
    for (Path file : files(shop, surroundings)) {
      things.read(file, surroundings);
    }
    return things;
  }

  private static List<Path> files(@Nullable String shop, Surroundings surroundings) {
    Path folder = surroundings.workingDirectory().toAbsolutePath().normalize();
    try {
      return shop == null
          ? FolderSearch.endingIn(".shop", folder).files()
          : List.of(folder.resolve(shop).normalize());
    } catch (InvalidPathException e) {
      throw new UserException(shop + ": no file can have this name here");
    } catch (IOException e) {
      throw new UserException("this folder cannot be read");
    }
  }

  private void read(Path file, Surroundings surroundings) {
    WorkspaceRoot root = WorkspaceRoot.of(file, surroundings.workingDirectory());
    String path = root.workspacePath(file);
    Loaded loaded =
        new WorkspaceLoader(root, surroundings.nanoClock()).load(List.of(path), Map.of());
    SyntaxTree tree = loaded.workspace().files().get(path);
    if (tree == null) {
      trouble.add(
          new PathNames(surroundings.workingDirectory()).shown(file)
              + ": "
              + loaded.workspace().unreadable().get(path));
    } else {
      shops.add(ShopFiles.build(tree).shop());
    }
  }

  /** The shops in the order of their files. */
  List<Shop> shops() {
    return List.copyOf(shops);
  }

  /** Refuses to go on if a file could not be read. */
  ShopThings orRefuse() {
    if (!trouble.isEmpty()) {
      throw new UserException(trouble.get(0));
    }
    return this;
  }

  /**
   * The thing of a name.
   *
   * @param word what it is, for messages: {@code machine}
   * @param same what two of one name must have in common to be the same
   * @throws UserException if there is none, or several that differ
   */
  <T extends Owned> T find(Class<T> type, String word, String name, Function<T, Object> same) {
    List<T> all = shops.stream().flatMap(shop -> shop.all(type).stream()).toList();
    List<T> named = all.stream().filter(thing -> thing.name().equalsIgnoreCase(name)).toList();
    if (named.isEmpty()) {
      throw new UserException(missing(word, name, all.stream().map(Owned::name).toList()));
    }
    if (named.stream().map(same).distinct().count() > 1) {
      throw new UserException(
          "several shop files have a " + word + " '" + name + "'; say which with --shop");
    }
    return named.get(0);
  }

  private String missing(String word, String name, List<String> all) {
    if (all.isEmpty() && !trouble.isEmpty()) {
      return trouble.get(0);
    }
    List<String> names = all.stream().distinct().sorted().toList();
    if (names.isEmpty()) {
      return "no shop file here has a " + word + "; name one with --shop";
    }
    return "there is no "
        + word
        + " '"
        + name
        + "'"
        + Nearest.to(name, names)
            .map(near -> "; did you mean '" + near + "'?")
            .orElse("; there is " + String.join(", ", names));
  }

  /** The limits of the shop that owns a thing. */
  Limits limitsOf(Owned thing) {
    return shops.stream()
        .filter(shop -> shop.things().contains(thing))
        .findFirst()
        .map(Shop::limits)
        .orElse(Limits.DEFAULTS);
  }
}
