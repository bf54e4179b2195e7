package org.handwheel.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * What should not happen to a server, but does: the editor dies, floods it or cancels everything,
 * and files vanish under it.
 */
@Timeout(value = 300, unit = TimeUnit.SECONDS)
class KillTests {
  @TempDir private Path folder;
  private String root = "";
  private String uri = "";
  private String plan = "";

  @BeforeEach
  void example() throws IOException {
    root = folder.toUri().toString();
    uri = root + "bearing-block.plan";
    plan = Files.readString(Path.of("../examples/bearing-block.plan"));
    Files.createDirectories(folder.resolve("shop"));
    Files.copy(Path.of("../examples/shop/inch-mill.shop"), shop());
  }

  private Path shop() {
    return folder.resolve("shop/inch-mill.shop");
  }

  private JsonObject ofFile() {
    JsonObject params = new JsonObject();
    params.add("textDocument", WireSession.file(uri));
    return params;
  }

  @Test
  void anEditorThatDiesTakesTheServerWithIt() throws IOException, InterruptedException {
    WireSession session = WireSession.begin(root);
    session.open(uri, 1, plan);
    session.request("textDocument/hover", ofFile());
    session.breakOff();
    assertThat(session.exitCode()).isEqualTo(1);
  }

  @Test
  void inputThatEndsInTheMiddleOfAMessageEndsTheServer() throws IOException, InterruptedException {
    for (String half : List.of("Content-Le", "Content-Length: 500\r\n\r\n{\"jsonrpc\":")) {
      WireSession session = WireSession.begin(root);
      session.sendRaw(half.getBytes(StandardCharsets.UTF_8));
      session.breakOff();
      assertThat(session.exitCode()).isEqualTo(1);
    }
  }

  @Test
  void everyQuestionOfAStormIsAnsweredOnce() throws IOException, InterruptedException {
    WireSession session = WireSession.begin(root);
    session.open(uri, 1, plan);
    session.findings(uri, 1);
    long before = session.messageCount();
    List<Integer> asked = new ArrayList<>();
    for (int i = 0; i < 500; i++) {
      int id = session.request("textDocument/documentSymbol", ofFile());
      asked.add(id);
      JsonObject cancel = new JsonObject();
      cancel.addProperty("id", id);
      session.notify("$/cancelRequest", cancel);
    }
    for (int id : asked) {
      JsonObject answer = session.answer(id);
      boolean cancelled =
          answer.has("error") && answer.getAsJsonObject("error").get("code").getAsInt() == -32800;
      assertThat(answer.has("result") || cancelled).as(answer.toString()).isTrue();
    }
    assertThat(session.messageCount() - before).isEqualTo(500);
    assertThat(session.end()).isZero();
  }

  @Test
  void aFloodOfKeysEndsInTheFindingsOfTheLastText() throws IOException, InterruptedException {
    WireSession session = WireSession.begin(root);
    session.open(uri, 1, plan);
    String text = plan;
    int at = text.indexOf("leaving 0.25") + 8;
    long next = System.nanoTime();
    int version = 1;
    for (int i = 0; i < 1000; i++) {
      boolean puts = i % 2 == 0;
      String before = text;
      text = puts ? text.substring(0, at) + "9" + text.substring(at) : plan;
      session.change(uri, ++version, before, at, puts ? at : at + 1, puts ? "9" : "");
      next += TimeUnit.MILLISECONDS.toNanos(1);
      while (System.nanoTime() < next) {
        Thread.onSpinWait();
      }
    }
    JsonArray found = session.findings(uri, version);
    WireSession anew = WireSession.begin(root);
    anew.open(uri, 1, text);
    assertThat(found).isEqualTo(anew.findings(uri, 1));
    anew.end();
    assertThat(session.end()).isZero();
  }

  @Test
  void usedFilesThatCannotBeReadAreFindings() throws IOException, InterruptedException {
    String shop = Files.readString(shop());
    WireSession session = WireSession.begin(root);
    session.open(uri, 1, plan);
    int version = 1;
    String clean = session.findings(uri, version).toString();
    Files.delete(shop());
    assertThat(after(session, ++version)).contains("there is no such file");
    Files.createDirectory(shop());
    assertThat(after(session, ++version)).contains("it is a folder");
    Files.delete(shop());
    Files.write(shop(), new byte[] {'o', 'w', 'n', (byte) 0xC3, '('});
    assertThat(after(session, ++version)).contains("it is not UTF-8");
    Files.write(shop(), new byte[] {0});
    assertThat(after(session, ++version)).contains("it is not text");
    Files.delete(shop());
    Path outside = Files.createTempFile("outside", ".shop");
    Files.writeString(outside, shop);
    Files.createSymbolicLink(shop(), outside);
    assertThat(after(session, ++version)).contains("a link leads outside the workspace");
    Files.delete(shop());
    Files.createSymbolicLink(shop(), shop());
    assertThat(after(session, ++version)).contains("cannot read");
    Files.delete(shop());
    Files.writeString(shop(), shop);
    assertThat(after(session, ++version)).isEqualTo(clean);
    Files.delete(outside);
    assertThat(session.end()).isZero();
  }

  /** The findings after a change of nothing, which makes the server look at the disk again. */
  private String after(WireSession session, int version) throws IOException {
    session.change(uri, version, plan, 0, 0, "");
    return session.findings(uri, version).toString();
  }

  @Test
  void anOpenTextOutlivesItsFileAndItsFolder() throws IOException, InterruptedException {
    Path file = folder.resolve("bearing-block.plan");
    Files.writeString(file, plan);
    WireSession session = WireSession.begin(root);
    session.open(uri, 1, plan);
    String clean = session.findings(uri, 1).toString();
    Files.writeString(file, "something else altogether");
    assertThat(after(session, 2)).isEqualTo(clean);
    Files.delete(file);
    assertThat(after(session, 3)).isEqualTo(clean);
    Files.delete(shop());
    Files.delete(folder.resolve("shop"));
    assertThat(after(session, 4)).contains("there is no such file");
    assertThat(session.answer(session.request("textDocument/documentSymbol", ofFile())))
        .extracting(answer -> answer.has("result"))
        .isEqualTo(true);
    session.close(uri);
    assertThat(session.end()).isZero();
  }
}
