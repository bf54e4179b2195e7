package org.handwheel.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** A test class whose tests each check one row of the check values, and are named after it. */
public interface RowChecks {
  /** The checks of this class by the id of the row. */
  Map<String, Consumer<CheckRow>> checks();

  /** Builds the map of {@link #checks}, refusing an id given twice. */
  final class Builder {
    private final Map<String, Consumer<CheckRow>> checks = new LinkedHashMap<>();

    public Builder row(String id, Consumer<CheckRow> check) {
      assertThat(checks.put(id, check)).as("row %s checked twice", id).isNull();
      return this;
    }

    /** The same check for several rows. */
    public Builder rows(Consumer<CheckRow> check, String... ids) {
      for (String id : ids) {
        row(id, check);
      }
      return this;
    }

    public Map<String, Consumer<CheckRow>> build() {
      return checks;
    }
  }

  @TestFactory
  default Stream<DynamicTest> rows() {
    Map<String, CheckRow> table = CheckTable.load();
    return checks().entrySet().stream()
        .map(
            check -> {
              CheckRow row = table.get(check.getKey());
              assertThat(row).as("row %s", check.getKey()).isNotNull();
              return DynamicTest.dynamicTest(
                  row.id() + " " + row.quantity() + " [" + row.source() + "; " + row.how() + "]",
                  () -> check.getValue().accept(row));
            });
  }
}
