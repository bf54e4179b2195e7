package org.handwheel.shop.thread;

import org.handwheel.units.LengthUnit;

/** The series of screw threads the tables hold. */
public enum ThreadSeries {
  ISO_COARSE("M coarse", "ISO metric coarse", ThreadForm.ISO_60, "M", LengthUnit.MM),
  ISO_FINE("M fine", "ISO metric fine", ThreadForm.ISO_60, "M", LengthUnit.MM),
  UNC("UNC", "Unified coarse", ThreadForm.ISO_60, "inch", LengthUnit.IN),
  UNF("UNF", "Unified fine", ThreadForm.ISO_60, "inch", LengthUnit.IN),
  BSW("BSW", "British Standard Whitworth", ThreadForm.WHITWORTH_55, "inch", LengthUnit.IN),
  BSF("BSF", "British Standard Fine", ThreadForm.WHITWORTH_55, "inch", LengthUnit.IN),
  BA("BA", "British Association", ThreadForm.BA_47_5, "BA", LengthUnit.MM),
  ME("ME", "model engineers' fine", ThreadForm.WHITWORTH_55, "inch", LengthUnit.IN),
  BSP("BSP", "British Standard Pipe, parallel", ThreadForm.WHITWORTH_55, "BSP", LengthUnit.MM);

  private final String tableName;
  private final String words;
  private final ThreadForm form;
  private final String screwFamily;
  private final LengthUnit majorUnit;

  ThreadSeries(
      String tableName, String words, ThreadForm form, String screwFamily, LengthUnit majorUnit) {
    this.tableName = tableName;
    this.words = words;
    this.form = form;
    this.screwFamily = screwFamily;
    this.majorUnit = majorUnit;
  }

  static ThreadSeries ofTable(String name) {
    for (ThreadSeries series : values()) {
      if (series.tableName.equals(name)) {
        return series;
      }
    }
    throw new IllegalArgumentException("no series " + name);
  }

  public String words() {
    return words;
  }

  public ThreadForm form() {
    return form;
  }

  /** Whether the series counts threads per inch instead of giving the pitch in millimetres. */
  public boolean countsPerInch() {
    return screwFamily.equals("inch") || screwFamily.equals("BSP");
  }

  /** The key of the tables of clearance holes and heads. */
  String screwFamily() {
    return screwFamily;
  }

  /** The unit the tables give diameters of this series in. */
  LengthUnit majorUnit() {
    return majorUnit;
  }
}
