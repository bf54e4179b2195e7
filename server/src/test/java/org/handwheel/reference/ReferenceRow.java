package org.handwheel.reference;

import java.util.List;

/**
 * One check value of {@code reference.csv}.
 *
 * @param id {@code R} and a number
 * @param kind what is asked, a case of {@link ReferenceRowTests}
 * @param inputs what it is asked for
 * @param expected one value or more
 * @param tolerance what may lie between expected and actual value; zero for no difference at all
 * @param source standard and table, handbook and chapter, or formula
 * @param how how the value is known
 */
record ReferenceRow(
    String id,
    String kind,
    List<String> inputs,
    List<String> expected,
    double tolerance,
    String source,
    String how) {
  static List<ReferenceRow> load() {
    return CheckTable.read("reference.csv").stream().map(ReferenceRow::of).toList();
  }

  private static ReferenceRow of(List<String> fields) {
    return new ReferenceRow(
        fields.get(0),
        fields.get(1),
        List.of(fields.get(2).split("; ", -1)),
        List.of(fields.get(3).split("; ", -1)),
        Double.parseDouble(fields.get(4)),
        fields.get(5),
        fields.get(6));
  }

  String input(int index) {
    return inputs.get(index);
  }

  /** The number an input opens with, without its unit. */
  double number(int index) {
    return Double.parseDouble(inputs.get(index).split(" ", 2)[0]);
  }

  @Override
  public String toString() {
    return id + " " + kind + " " + inputs + " is " + expected + " [" + source + "; " + how + "]";
  }
}
