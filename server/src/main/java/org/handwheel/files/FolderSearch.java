package org.handwheel.files;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Finds files by their ending below a folder. Folders behind links are not entered. */
public final class FolderSearch {
  /** Folders that hold what programs made or fetched, not what a person wrote. */
  private static final Set<String> SKIPPED = Set.of("node_modules", "target");

  private FolderSearch() {}

  /**
   * What was found.
   *
   * @param files in the order of their paths
   * @param unreadable folders and files that could not be looked at, and why
   */
  public record Found(List<Path> files, Map<Path, String> unreadable) {
    public Found {
      files = List.copyOf(files);
      unreadable = Map.copyOf(unreadable);
    }
  }

  /**
   * Searches a folder and those below it, leaving out hidden ones.
   *
   * @param ending such as {@code .plan}; capitals do not matter
   */
  public static Found endingIn(String ending, Path folder) throws IOException {
    List<Path> files = new ArrayList<>();
    Map<Path, String> unreadable = new TreeMap<>();
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path at, BasicFileAttributes attributes)
              throws IOException {
            return !at.equals(folder) && isSkipped(at)
                ? FileVisitResult.SKIP_SUBTREE
                : FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            if (hasEnding(file, ending) && !isHidden(file) && !Files.isDirectory(file)) {
              files.add(file);
            }
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFileFailed(Path file, IOException e) {
            unreadable.put(file, TextFile.reason(e));
            return FileVisitResult.CONTINUE;
          }
        });
    files.sort(Comparator.comparing(WorkspaceRoot::slashed));
    return new Found(files, unreadable);
  }

  /** Whether a file's name ends so; capitals do not matter. */
  public static boolean hasEnding(Path file, String ending) {
    return name(file).toLowerCase(Locale.ROOT).endsWith(ending);
  }

  /** Whether a search would pass over a file because of a folder above it or its own name. */
  public static boolean isSkipped(String path) {
    List<String> names = List.of(path.split("/", -1));
    return names.stream().anyMatch(name -> name.startsWith("."))
        || names.subList(0, names.size() - 1).stream().anyMatch(SKIPPED::contains);
  }

  private static boolean isSkipped(Path folder) {
    return SKIPPED.contains(name(folder)) || isHidden(folder);
  }

  private static boolean isHidden(Path file) {
    if (name(file).startsWith(".")) {
      return true;
    }
    try {
      return Files.isHidden(file);
    } catch (IOException e) {
      return false;
    }
  }

  private static String name(Path file) {
    Path name = file.getFileName();
    return name == null ? "" : name.toString();
  }
}
