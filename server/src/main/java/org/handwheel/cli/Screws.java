package org.handwheel.cli;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.apache.commons.numbers.fraction.BigFraction;
import org.handwheel.files.FolderSearch;
import org.handwheel.files.WorkspaceLoader;
import org.handwheel.files.WorkspaceLoader.Loaded;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.model.Axis;
import org.handwheel.model.Owned.Machine;
import org.handwheel.model.Owned.Screw;
import org.handwheel.model.Shop;
import org.handwheel.model.build.ShopFiles;
import org.handwheel.syntax.Nearest;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.Length;
import org.jspecify.annotations.Nullable;

/**
 * The screws whose dials are asked for.
 *
 * @param screws in the order of their axes; none if no dial is asked for
 * @param machine whose they are, or nothing if only lead and divisions are known
 */
record Screws(List<Screw> screws, @Nullable Machine machine) {
  private static final BigFraction HALF = BigFraction.of(1, 2);

  static final Screws NONE = new Screws(List.of(), null);

  Screws {
    screws = List.copyOf(screws);
  }

  /** A screw known by its lead and its dial alone. */
  static Screws of(Length lead, BigFraction divisions) {
    return new Screws(
        List.of(new Screw(Axis.X, lead, divisions, Length.ZERO, null, null, null, HALF)), null);
  }

  /**
   * The screws of a machine.
   *
   * @param shop the shop file that owns it; without it, all shop files below the current folder
   * @param axis the only axis wanted
   * @throws UserException if there is no such machine, or no such screw
   */
  static Screws ofMachine(
      String name, @Nullable String shop, @Nullable Axis axis, Surroundings surroundings) {
    List<Machine> machines = new ArrayList<>();
    List<String> trouble = new ArrayList<>();
    for (Path file : shopFiles(shop, surroundings)) {
      machines.addAll(machines(file, trouble, surroundings));
    }
    List<Machine> named =
        machines.stream().filter(machine -> machine.name().equalsIgnoreCase(name)).toList();
    if (named.isEmpty()) {
      throw new UserException(missing(name, machines, trouble));
    }
    if (named.size() > 1 && named.stream().map(Machine::screws).distinct().count() > 1) {
      throw new UserException(
          "several shop files have a machine '" + name + "'; say which with --shop");
    }
    List<Screw> screws =
        Arrays.stream(Axis.values())
            .filter(candidate -> axis == null || candidate == axis)
            .flatMap(candidate -> Optional.ofNullable(named.get(0).screw(candidate)).stream())
            .toList();
    if (screws.isEmpty()) {
      throw new UserException(
          "the shop does not say the lead and the divisions of "
              + (axis == null ? "any axis" : axis.word())
              + " of '"
              + name
              + "'");
    }
    return new Screws(screws, named.get(0));
  }

  private static String missing(String name, List<Machine> machines, List<String> trouble) {
    if (machines.isEmpty() && !trouble.isEmpty()) {
      return trouble.get(0);
    }
    List<String> names = machines.stream().map(Machine::name).distinct().sorted().toList();
    if (names.isEmpty()) {
      return "no shop file here has a machine; name one with --shop";
    }
    return "there is no machine '"
        + name
        + "'"
        + Nearest.to(name, names)
            .map(near -> "; did you mean '" + near + "'?")
            .orElse("; there is " + String.join(", ", names));
  }

  private static List<Path> shopFiles(@Nullable String shop, Surroundings surroundings) {
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

  private static List<Machine> machines(
      Path file, List<String> trouble, Surroundings surroundings) {
    WorkspaceRoot root = WorkspaceRoot.of(file, surroundings.workingDirectory());
    String path = root.workspacePath(file);
    LongSupplier clock = surroundings.nanoClock();
    Loaded loaded = new WorkspaceLoader(root, clock).load(List.of(path), Map.of());
    SyntaxTree tree = loaded.workspace().files().get(path);
    if (tree == null) {
      trouble.add(
          new PathNames(surroundings.workingDirectory()).shown(file)
              + ": "
              + loaded.workspace().unreadable().get(path));
      return List.of();
    }
    Shop shop = ShopFiles.build(tree).shop();
    return shop.all(Machine.class);
  }

  /** An axis by its letter. */
  static Axis axis(String letter) {
    try {
      return Axis.valueOf(letter.toUpperCase(Locale.ROOT));
    } catch (IllegalArgumentException e) {
      throw new UserException("--axis: the axes are x, y and z");
    }
  }
}
