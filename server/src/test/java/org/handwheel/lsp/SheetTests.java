package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.handwheel.examples.ExampleFolder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The request for a plan's sheet. */
class SheetTests {
  @TempDir private Path folder;

  @Test
  void isAnnouncedAndGivesThePlanAsHtml() throws IOException {
    Files.createDirectories(folder.resolve("shop"));
    Files.copy(
        ExampleFolder.PATH.resolve("shop/inch-mill.shop"), folder.resolve("shop/inch-mill.shop"));
    Files.copy(ExampleFolder.PATH.resolve("bearing-block.plan"), folder.resolve("block.plan"));
    String plan = folder.resolve("block.plan").toUri().toString();
    String shop = folder.resolve("shop/inch-mill.shop").toUri().toString();
    try (LspClient client = LspClient.start()) {
      JsonObject capabilities =
          client.initialize("{}", "[{\"uri\":\"" + folder.toUri() + "\",\"name\":\"w\"}]");
      assertThat(
              capabilities
                  .getAsJsonObject("experimental")
                  .getAsJsonObject("handwheel")
                  .get("sheet")
                  .getAsBoolean())
          .isTrue();
      client.notify("initialized", new JsonObject());
      client.open(plan, 3, Files.readString(folder.resolve("block.plan")));
      JsonObject answer = client.call("handwheel/sheet", document(plan)).getAsJsonObject();
      assertThat(answer.get("title").getAsString()).isEqualTo("Feed pump bearing block, rev 2");
      assertThat(answer.get("version").getAsInt()).isEqualTo(3);
      assertThat(answer.get("html").getAsString())
          .startsWith("<!doctype html>")
          .contains("Feed pump bearing block", "id=\"setup-8\"");
      client.open(shop, 1, Files.readString(folder.resolve("shop/inch-mill.shop")));
      assertThat(client.call("handwheel/sheet", document(shop)).isJsonNull()).isTrue();
    }
  }

  private static JsonObject document(String uri) {
    JsonObject document = new JsonObject();
    document.addProperty("uri", uri);
    JsonObject params = new JsonObject();
    params.add("textDocument", document);
    return params;
  }
}
