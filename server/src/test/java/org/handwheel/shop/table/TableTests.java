package org.handwheel.shop.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.handwheel.units.Length;
import org.handwheel.units.LengthUnit;
import org.junit.jupiter.api.Test;

class TableTests {
  private static final String HEAD = "# source: a book\n# how: from memory\n";

  private static Row only(String text) {
    List<Row> rows = Table.parse("test.csv", text).rows();
    assertThat(rows).hasSize(1);
    return rows.get(0);
  }

  @Test
  void readsQuotedFieldsWithCommasAndQuotes() {
    Row row = only("a,b,c\n" + HEAD + "\"one, two\", x ,\"say \"\"hold\"\"\"\n");
    assertThat(row.text("a")).isEqualTo("one, two");
    assertThat(row.text("b")).isEqualTo("x");
    assertThat(row.text("c")).isEqualTo("say \"hold\"");
  }

  @Test
  void givesEachRowTheSourceAboveIt() {
    List<Row> rows =
        Table.parse("t", "a\n" + HEAD + "1\n# source: ISO 1\n# how: read in a copy\n2\n").rows();
    assertThat(rows.get(0).provenance()).isEqualTo(new Provenance("a book", "from memory"));
    assertThat(rows.get(1).provenance().how()).isEqualTo(HowKnown.READ);
  }

  @Test
  void readsDecimalsAndFractionsExactly() {
    Row row = only("a,b,c\n" + HEAD + "0.190,5/16,1-1/4\n");
    assertThat(row.length("a", LengthUnit.IN)).isEqualTo(Length.mm("4.826"));
    assertThat(row.length("b", LengthUnit.IN)).isEqualTo(Length.mm("7.9375"));
    assertThat(row.length("c", LengthUnit.IN)).isEqualTo(Length.mm("31.75"));
  }

  @Test
  void refusesARowWithoutASource() {
    assertThatThrownBy(() -> Table.parse("t", "a\n1\n"))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("t line 2");
  }

  @Test
  void refusesAWrongCountOfFields() {
    assertThatThrownBy(() -> Table.parse("t", "a,b\n" + HEAD + "1\n"))
        .hasMessageContaining("t line 4: 1 fields for 2 columns");
  }

  @Test
  void refusesAQuoteThatDoesNotEnd() {
    assertThatThrownBy(() -> Table.parse("t", "a\n" + HEAD + "\"1\n"))
        .hasMessageContaining("does not end");
  }

  @Test
  void namesThePlaceOfAMalformedNumber() {
    Row row = only("a\n" + HEAD + "x\n");
    assertThatThrownBy(() -> row.number("a")).hasMessage("test.csv line 4, a: cannot read \"x\"");
  }

  @Test
  void refusesAnUnknownColumnAndAMissingResource() {
    Row row = only("a\n" + HEAD + "1\n");
    assertThatThrownBy(() -> row.text("b")).hasMessageContaining("no column b");
    assertThatThrownBy(() -> Table.read(TableTests.class, "nowhere.csv"))
        .hasMessageContaining("nowhere.csv");
  }

  @Test
  void refusesANoteThatDoesNotSayHow() {
    assertThatThrownBy(() -> new Provenance("a book", "surely"))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
