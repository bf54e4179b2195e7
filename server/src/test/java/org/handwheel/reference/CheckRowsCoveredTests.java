package org.handwheel.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** No row of the shop's sections goes unchecked, and none is checked twice. */
class CheckRowsCoveredTests {
  private static final String SECTIONS = "SMDTWK";

  /** The classes that check rows of the shop's sections. */
  static final List<RowChecks> CLASSES =
      List.of(
          new SpeedRowTests(),
          new CuttingRowTests(),
          new DrillAndThreadRowTests(),
          new ToleranceRowTests(),
          new StockRowTests());

  @Test
  void everyRowOfTheShopsSectionsHasItsTest() {
    List<String> checked =
        CLASSES.stream().flatMap(checks -> checks.checks().keySet().stream()).toList();
    Set<String> wanted =
        CheckTable.load().keySet().stream()
            .filter(id -> SECTIONS.indexOf(id.charAt(0)) >= 0)
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(wanted).hasSizeGreaterThan(150);
    assertThat(checked).doesNotHaveDuplicates();
    assertThat(new TreeSet<>(checked)).isEqualTo(wanted);
  }
}
