package org.handwheel.reference;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads the check values; by its own few lines, so that it shares nothing with what it checks. */
public final class CheckTable {
  private CheckTable() {}

  /** Every row by its id. */
  public static Map<String, CheckRow> load() {
    Map<String, CheckRow> rows = new LinkedHashMap<>();
    for (List<String> fields : read("checks.csv")) {
      CheckRow row =
          new CheckRow(
              fields.get(0),
              fields.get(1),
              fields.get(2),
              fields.get(3),
              fields.get(4),
              fields.get(5),
              fields.get(6));
      if (rows.put(row.id(), row) != null) {
        throw new IllegalStateException("two rows " + row.id());
      }
    }
    return rows;
  }

  /** The records of a file beside the check values, without its heading. */
  public static List<List<String>> read(String name) {
    try (InputStream in = CheckTable.class.getResourceAsStream("/checks/" + name)) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return text.lines().skip(1).map(CheckTable::fields).toList();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static List<String> fields(String line) {
    List<String> fields = new ArrayList<>();
    StringBuilder field = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '"' && quoted && line.startsWith("\"\"", i)) {
        field.append('"');
        i++;
      } else if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        fields.add(field.toString());
        field.setLength(0);
      } else {
        field.append(c);
      }
    }
    fields.add(field.toString());
    return fields;
  }
}
