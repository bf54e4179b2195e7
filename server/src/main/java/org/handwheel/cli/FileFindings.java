package org.handwheel.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.handwheel.cli.Report.Found;
import org.handwheel.files.WorkspaceRoot;

/** A file with what was found in it, in the order of the text. */
record FileFindings(Path file, List<Found> findings) {
  FileFindings {
    findings = List.copyOf(findings);
  }

  /** All files that were checked or hold findings, by path. */
  static List<FileFindings> of(Report report) {
    Map<Path, List<Found>> files = new TreeMap<>(Comparator.comparing(WorkspaceRoot::slashed));
    report.files().forEach(file -> files.put(file.file(), new ArrayList<>()));
    report
        .findings()
        .forEach(found -> files.computeIfAbsent(found.file(), key -> new ArrayList<>()).add(found));
    return files.entrySet().stream()
        .map(entry -> new FileFindings(entry.getKey(), entry.getValue()))
        .toList();
  }
}
