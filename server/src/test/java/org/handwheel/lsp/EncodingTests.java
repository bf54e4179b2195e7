package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Positions in both encodings, with letters outside the basic plane and CRLF. */
@Timeout(300)
final class EncodingTests {
  // The title holds U+2699 (1 UTF-16 unit, 3 bytes) and U+1F6A2 (2 units, 4 bytes).
  private static final String TEXT =
      "plan \"\u2699\ud83d\udea2\"   rubbish\r\n  units mm\r\npart\r\n  lenght 3\r\n";

  @ParameterizedTest
  @CsvSource({"utf-16, 13", "utf-8, 17"})
  void columnsCountInTheAgreedUnits(String encoding, int column) {
    try (LspClient client = LspClient.start()) {
      JsonObject capabilities =
          client.initialize(
              "{\"general\": {\"positionEncodings\": [\"" + encoding + "\"]}}", "null");
      assertThat(capabilities.get("positionEncoding").getAsString()).isEqualTo(encoding);
      client.open("untitled:a.plan", 1, TEXT);
      JsonArray found = client.diagnostics("untitled:a.plan", 1);
      assertThat(found).hasSize(2);
      JsonObject start =
          found.get(0).getAsJsonObject().getAsJsonObject("range").getAsJsonObject("start");
      assertThat(start).isEqualTo(LspClient.position(0, column));
      assertThat(found.get(1).getAsJsonObject().get("range"))
          .isEqualTo(LspClient.range(3, 2, 3, 8));
      // An edit behind the odd letters hits the right place in both encodings.
      client.change(
          "untitled:a.plan",
          2,
          LspClient.edit(0, column - 3, 0, column + 7, ""),
          LspClient.edit(3, 2, 3, 8, "length"));
      assertThat(client.diagnostics("untitled:a.plan", 2)).isEmpty();
    }
  }

  @Test
  void anEditorThatNamesNoneGetsUtf16() {
    try (LspClient client = LspClient.start()) {
      assertThat(client.initialize(Clients.PLAIN, "null").get("positionEncoding").getAsString())
          .isEqualTo("utf-16");
    }
  }

  @Test
  void anEditorThatOnlyKnowsOthersGetsUtf16() {
    try (LspClient client = LspClient.start()) {
      assertThat(
              client
                  .initialize("{\"general\": {\"positionEncodings\": [\"utf-32\"]}}", "null")
                  .get("positionEncoding")
                  .getAsString())
          .isEqualTo("utf-16");
    }
  }

  @Test
  void severalEditsOfOneChangeApplyInTheirOrder() {
    try (LspClient client = LspClient.initialized(Clients.PLAIN)) {
      client.open("untitled:a.plan", 1, "x\r\ny\r\n");
      client.change(
          "untitled:a.plan",
          2,
          LspClient.edit(0, 0, 0, 1, "plan \"A\""),
          LspClient.edit(1, 0, 1, 1, "  units mm"),
          LspClient.edit(1, 10, 2, 0, "\n"));
      assertThat(client.diagnostics("untitled:a.plan", 2)).isEmpty();
    }
  }
}
