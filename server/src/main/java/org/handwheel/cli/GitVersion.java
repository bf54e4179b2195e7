package org.handwheel.cli;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A version of git, and what it can do.
 *
 * @param major the first number
 * @param minor the second number; 0 if there is none
 */
record GitVersion(int major, int minor) {
  private static final Pattern NUMBERS = Pattern.compile("(\\d{1,6})(?:\\.(\\d{1,6}))?");

  /** Of what {@code git version} says; 0.0, which can nothing, if that has no number. */
  static GitVersion of(String words) {
    Matcher numbers = NUMBERS.matcher(words);
    if (!numbers.find()) {
      return new GitVersion(0, 0);
    }
    int minor = numbers.group(2) == null ? 0 : Integer.parseInt(numbers.group(2));
    return new GitVersion(Integer.parseInt(numbers.group(1)), minor);
  }

  /** Whether it knows {@code trustExitCode}, since 2.46 (from memory). */
  boolean trustsExitCodes() {
    return isSince(2, 46);
  }

  /** Whether it tells a merge driver the labels of the sides, since 2.44 (from memory). */
  boolean labelsMerges() {
    return isSince(2, 44);
  }

  private boolean isSince(int wantedMajor, int wantedMinor) {
    return major > wantedMajor || (major == wantedMajor && minor >= wantedMinor);
  }
}
