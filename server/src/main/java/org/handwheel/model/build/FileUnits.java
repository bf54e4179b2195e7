package org.handwheel.model.build;

import java.util.Locale;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.UnitsLineContext;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.LengthUnit;

/** The units that bare numbers of a file count in. */
public final class FileUnits {
  private FileUnits() {}

  /** The units the file states; millimetres if it does not. */
  public static LengthUnit of(SyntaxTree tree) {
    for (Section section : tree.sections()) {
      for (ContentContext line : section.lines()) {
        if (line.statement() instanceof UnitsLineContext units && units.lengthUnit() != null) {
          String word = units.lengthUnit().getText().toLowerCase(Locale.ROOT);
          return word.startsWith("in")
              ? LengthUnit.IN
              : word.equals("thou") ? LengthUnit.THOU : LengthUnit.MM;
        }
      }
    }
    return LengthUnit.MM;
  }
}
