package org.handwheel.cli;

/** One way to print a review; each is one class. */
interface DiffFormat {
  /** Prints it. */
  void print(Review review);
}
