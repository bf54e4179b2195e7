package org.handwheel.plan.diff;

/**
 * One thing that a statement says.
 *
 * @param key equal for equal meaning, whatever the unit it is written in
 * @param shown for people
 */
record Fact(String key, String shown) {
  static Fact of(String words) {
    return new Fact(words, words);
  }
}
