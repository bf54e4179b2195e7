package org.handwheel.shop.table;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A comma-separated table in UTF-8 kept as a resource beside the class that uses it.
 *
 * <p>The first line that is neither blank nor a comment names the columns. Lines opening with
 * {@code #} are comments; {@code # source:} and {@code # how:} say where the rows after them come
 * from and how they are known, until the next such line, and no row may come before both. A field
 * holding a comma stands in double quotes, a double quote within is doubled.
 */
public final class Table {
  private static final String SOURCE = "# source:";
  private static final String HOW = "# how:";

  private final List<Row> rows;

  private Table(List<Row> rows) {
    this.rows = List.copyOf(rows);
  }

  /**
   * Reads the resource {@code name} beside {@code owner}.
   *
   * @throws IllegalStateException if it is missing or malformed: the program is then built wrong
   */
  public static Table read(Class<?> owner, String name) {
    try (InputStream in = owner.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("no table " + name + " beside " + owner.getName());
      }
      return parse(name, new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException("cannot read table " + name, e);
    }
  }

  /** Reads a table from its text; {@code name} is for messages. */
  public static Table parse(String name, String text) {
    @Nullable List<String> columns = null;
    String source = "";
    String how = "";
    @Nullable Provenance provenance = null;
    List<Row> rows = new ArrayList<>();
    int number = 0;
    for (String line : text.lines().toList()) {
      number++;
      String place = name + " line " + number;
      if (line.startsWith(SOURCE)) {
        source = line.substring(SOURCE.length()).strip();
        provenance = null;
      } else if (line.startsWith(HOW)) {
        how = line.substring(HOW.length()).strip();
        provenance = null;
      } else if (!line.isBlank() && !line.startsWith("#")) {
        List<String> fields = fields(place, line);
        if (columns == null) {
          columns = fields;
        } else {
          if (fields.size() != columns.size()) {
            throw new IllegalStateException(
                place + ": " + fields.size() + " fields for " + columns.size() + " columns");
          }
          if (source.isEmpty() || how.isEmpty()) {
            throw new IllegalStateException(place + ": a row before its source and how");
          }
          if (provenance == null) {
            provenance = new Provenance(source, how);
          }
          rows.add(new Row(place, columns, fields, provenance));
        }
      }
    }
    return new Table(rows);
  }

  private static List<String> fields(String place, String line) {
    List<String> fields = new ArrayList<>();
    if (line.indexOf('"') < 0) {
      int start = 0;
      for (int end = line.indexOf(','); end >= 0; end = line.indexOf(',', start)) {
        fields.add(line.substring(start, end).strip());
        start = end + 1;
      }
      fields.add(line.substring(start).strip());
      return List.copyOf(fields);
    }
    StringBuilder field = new StringBuilder();
    int i = 0;
    while (i <= line.length()) {
      if (i == line.length() || line.charAt(i) == ',') {
        fields.add(field.toString().strip());
        field.setLength(0);
        i++;
      } else if (line.charAt(i) == '"') {
        i = quoted(place, line, i + 1, field);
      } else {
        field.append(line.charAt(i));
        i++;
      }
    }
    return List.copyOf(fields);
  }

  private static int quoted(String place, String line, int start, StringBuilder field) {
    int i = start;
    while (i < line.length()) {
      if (line.charAt(i) != '"') {
        field.append(line.charAt(i));
        i++;
      } else if (line.startsWith("\"\"", i)) {
        field.append('"');
        i += 2;
      } else {
        return i + 1;
      }
    }
    throw new IllegalStateException(place + ": a quoted field does not end");
  }

  /** The rows in the order of the file. */
  public List<Row> rows() {
    return rows;
  }

  /** Every row turned into something, in the order of the file. */
  public <T> List<T> map(Function<Row, T> reader) {
    return rows.stream().map(reader).toList();
  }

  /**
   * The rows by what stands in a column.
   *
   * @throws IllegalStateException if two rows have the same there
   */
  public Map<String, Row> by(String column) {
    Map<String, Row> found = new HashMap<>();
    for (Row row : rows) {
      if (found.put(row.text(column), row) != null) {
        throw new IllegalStateException("two rows for " + row.text(column));
      }
    }
    return found;
  }
}
