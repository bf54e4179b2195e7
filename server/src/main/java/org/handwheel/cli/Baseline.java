package org.handwheel.cli;

import com.google.gson.Gson;
import com.google.gson.JsonParseException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.handwheel.files.TextFile;
import org.jspecify.annotations.Nullable;

/**
 * A file of findings that are known and not to be reported again. Paths in it are relative to the
 * file's own folder.
 */
final class Baseline {
  private static final int VERSION = 1;

  private final List<Entry> entries;

  private Baseline(List<Entry> entries) {
    this.entries = new ArrayList<>(entries);
  }

  private record Root(int version, @Nullable List<Entry> findings) {}

  private record Entry(String path, String rule, String fingerprint) {}

  /**
   * Reads a file.
   *
   * @throws UserException if it cannot be read or is no baseline
   */
  static Baseline read(Path file, String shown) {
    TextFile.Result result = TextFile.read(file);
    if (result instanceof TextFile.Refused refused) {
      throw new UserException(shown + ": " + refused.reason());
    }
    try {
      Root root = new Gson().fromJson(((TextFile.Text) result).text(), Root.class);
      if (root == null || root.findings() == null || root.findings().contains(null)) {
        throw new UserException(shown + ": it is no baseline");
      }
      if (root.version() != VERSION) {
        throw new UserException(
            shown + ": it is a baseline of version " + root.version() + ", not " + VERSION);
      }
      return new Baseline(root.findings());
    } catch (JsonParseException e) {
      throw new UserException(shown + ": it is no baseline");
    }
  }

  /** The findings that are not known; each entry stands for one finding. */
  List<Report.Found> unknown(List<Report.Found> findings, Path folder) {
    List<Entry> left = new ArrayList<>(entries);
    return findings.stream().filter(found -> !left.remove(entry(found, folder))).toList();
  }

  /** Writes all findings of a report as known. */
  static void write(Path file, String shown, Report report) {
    Path folder = folder(file);
    List<Entry> entries =
        report.findings().stream()
            .map(found -> entry(found, folder))
            .sorted(
                Comparator.comparing(Entry::path)
                    .thenComparing(Entry::rule)
                    .thenComparing(Entry::fingerprint))
            .toList();
    NewText.write(file, Json.of(new Root(VERSION, entries)) + "\n", NewText.Existing.REPLACE)
        .ifPresent(
            why -> {
              throw new UserException(shown + ": " + why);
            });
  }

  static Path folder(Path file) {
    Path parent = file.toAbsolutePath().normalize().getParent();
    return parent == null ? file.toAbsolutePath().normalize() : parent;
  }

  private static Entry entry(Report.Found found, Path folder) {
    return new Entry(
        new PathNames(folder).slashed(found.file()), found.rule(), found.fingerprint());
  }
}
