package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.handwheel.syntax.SourceText;

/** Any series of edits leaves the server where opening the final text would have put it. */
final class EditScriptTests {
  private static final String START =
      """
      language 1
      plan "Keep \ud83d\udea2 \u00e9"
        units mm
        let rib = 3 mm
      part
        length (40 + rib)
        height 19 +0/-0.04
      stock
        size 50 x 30 x 22
      setup one "Top"
        hold in V80, up top, fixed back
        clean top at 0.4, at most 1   # ignore heavy-pass: soft
      log "first"
        in one: read height 19.2 with mic25
      """;

  /** An edit by fractions of the text it meets. */
  record Edit(double from, double length, String text) {}

  @Provide
  Arbitrary<List<Edit>> scripts() {
    Arbitrary<String> texts =
        Arbitraries.of(
            "",
            "x",
            "\n",
            "\r\n",
            "\r",
            "part\n",
            "setup two\n",
            "# note",
            "\"",
            "\\\n",
            "\ud83d\udea2",
            "\u00e9",
            "  length 4",
            "log\n",
            " ",
            "rib",
            "units in");
    Arbitrary<Edit> edit =
        Combinators.combine(
                Arbitraries.doubles().between(0, 1), Arbitraries.doubles().between(0, 0.2), texts)
            .as(Edit::new);
    return edit.list().ofMinSize(1).ofMaxSize(12);
  }

  @Property(tries = 40)
  void incrementalEqualsFresh(@ForAll("scripts") List<Edit> script) {
    check(Clients.PLAIN, script);
  }

  @Property(tries = 20)
  void incrementalEqualsFreshInBytes(@ForAll("scripts") List<Edit> script) {
    check(Clients.UTF8, script);
  }

  private static void check(String capabilities, List<Edit> script) {
    try (LspClient client = LspClient.initialized(capabilities)) {
      boolean bytes = capabilities.equals(Clients.UTF8);
      client.open("untitled:a.plan", 0, START);
      String text = START;
      int version = 0;
      for (Edit edit : script) {
        int start = whole(text, (int) Math.round(edit.from() * text.length()));
        int end =
            whole(text, Math.min(text.length(), start + (int) Math.round(edit.length() * 40)));
        client.change("untitled:a.plan", ++version, change(text, start, end, edit.text(), bytes));
        text = text.substring(0, start) + edit.text() + text.substring(end);
      }
      client.open("untitled:b.plan", 0, text);
      JsonArray edited = client.diagnostics("untitled:a.plan", version);
      JsonArray fresh = client.diagnostics("untitled:b.plan", 0);
      assertThat(withoutRelated(edited)).isEqualTo(withoutRelated(fresh));
      assertThat(
              client
                  .call("textDocument/documentSymbol", LspClient.document("untitled:a.plan"))
                  .toString()
                  .replace("untitled:a.plan", "untitled:b.plan"))
          .isEqualTo(
              client
                  .call("textDocument/documentSymbol", LspClient.document("untitled:b.plan"))
                  .toString());
    }
  }

  private static List<String> withoutRelated(JsonArray diagnostics) {
    List<String> all = new ArrayList<>();
    diagnostics.forEach(
        found -> {
          JsonObject copy = found.deepCopy().getAsJsonObject();
          copy.remove("relatedInformation");
          all.add(copy.toString());
        });
    return all;
  }

  /** Never between the halves of a letter, nor within a CRLF, as no editor edits there. */
  private static int whole(String text, int at) {
    if (at > 0 && at < text.length()) {
      boolean halves = Character.isLowSurrogate(text.charAt(at));
      boolean ending = text.charAt(at) == '\n' && text.charAt(at - 1) == '\r';
      return halves || ending ? at - 1 : at;
    }
    return at;
  }

  private static JsonObject change(String text, int start, int end, String insert, boolean bytes) {
    SourceText source = new SourceText(text);
    int[] from = position(source, start, bytes);
    int[] to = position(source, end, bytes);
    return LspClient.edit(from[0], from[1], to[0], to[1], insert);
  }

  private static int[] position(SourceText source, int offset, boolean bytes) {
    int line = source.lineAt(offset);
    String before = source.text().substring(source.lineStart(line), offset);
    return new int[] {
      line, bytes ? before.getBytes(StandardCharsets.UTF_8).length : before.length()
    };
  }
}
