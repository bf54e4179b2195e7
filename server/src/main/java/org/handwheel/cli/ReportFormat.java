package org.handwheel.cli;

/** One way to print what a check found; each is one class. */
interface ReportFormat {
  /** Prints it. */
  void print(Report report);
}
