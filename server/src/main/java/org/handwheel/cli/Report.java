package org.handwheel.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.handwheel.syntax.Severity;

/**
 * What a check found, in the order it is shown.
 *
 * @param files the files checked, by path
 * @param findings by path, then by place
 * @param known how many more findings are known already and left out
 * @param unreadable files asked for that could not be read, and why
 */
record Report(
    List<CheckedFile> files,
    List<Found> findings,
    int known,
    Map<Path, String> unreadable,
    Times times) {
  Report {
    files = List.copyOf(files);
    findings = List.copyOf(findings);
    unreadable = Map.copyOf(unreadable);
  }

  /** What kind of file it is. */
  enum Kind {
    PLAN,
    SHOP
  }

  /**
   * A file that was checked.
   *
   * @param uses the files it rests on
   * @param time what checking it took, without reading
   */
  record CheckedFile(Path file, Kind kind, List<Path> uses, Duration time) {
    CheckedFile {
      uses = List.copyOf(uses);
    }
  }

  /**
   * A finding with its places.
   *
   * @param fingerprint stays the same while lines move; one of a kind within its file
   */
  record Found(
      String rule,
      String fingerprint,
      Severity severity,
      Path file,
      Place place,
      String message,
      List<Related> related,
      List<Fix> fixes) {
    Found {
      related = List.copyOf(related);
      fixes = List.copyOf(fixes);
    }
  }

  /** A line that has to do with a finding. */
  record Related(Path file, Place place, String message) {}

  /** A change that mends it. */
  record Fix(String title, List<Edit> edits) {
    Fix {
      edits = List.copyOf(edits);
    }
  }

  /** A piece of a change. */
  record Edit(Path file, Place place, String text) {}

  /** Where the time went. */
  record Times(Duration reading, Duration parsing, Duration checking) {}

  /** With fewer findings; those left out are known. */
  Report withOnly(List<Found> some) {
    return new Report(files, some, known + findings.size() - some.size(), unreadable, times);
  }

  long count(Severity severity) {
    return findings.stream().filter(found -> found.severity() == severity).count();
  }

  long count(Kind kind) {
    return files.stream().filter(file -> file.kind() == kind).count();
  }
}
