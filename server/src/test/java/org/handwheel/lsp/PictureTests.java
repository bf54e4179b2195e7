package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.handwheel.examples.ExampleFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The request for a setup's picture. */
class PictureTests {
  @TempDir private Path folder;
  private String text = "";
  private String plan = "";

  @BeforeEach
  void copyExamples() throws IOException {
    Files.createDirectories(folder.resolve("shop"));
    Files.copy(
        ExampleFolder.PATH.resolve("shop/inch-mill.shop"), folder.resolve("shop/inch-mill.shop"));
    Files.copy(ExampleFolder.PATH.resolve("bearing-block.plan"), folder.resolve("block.plan"));
    text = Files.readString(folder.resolve("block.plan"));
    plan = folder.resolve("block.plan").toUri().toString();
  }

  /** The line, counted from 0, on which some words first stand. */
  private int line(String words) {
    return (int) text.substring(0, text.indexOf(words)).chars().filter(c -> c == '\n').count();
  }

  @Test
  void isAnnouncedAndDrawsTheSetupOfThePlace() {
    try (LspClient client = LspClient.start()) {
      JsonObject capabilities =
          client.initialize("{}", "[{\"uri\":\"" + folder.toUri() + "\",\"name\":\"w\"}]");
      assertThat(
              capabilities
                  .getAsJsonObject("experimental")
                  .getAsJsonObject("handwheel")
                  .get("picture")
                  .getAsBoolean())
          .isTrue();
      client.notify("initialized", new JsonObject());
      client.open(plan, 7, text);
      int header = line("setup ");
      JsonObject answer =
          client.call("handwheel/picture", LspClient.at(plan, header, 2)).getAsJsonObject();
      assertThat(answer.get("version").getAsInt()).isEqualTo(7);
      String svg = answer.get("svg").getAsString();
      assertThat(svg).startsWith("<svg").contains("<title", "<desc", "data-line=");
      assertThat(answer.getAsJsonArray("places")).isNotEmpty();
      answer
          .getAsJsonArray("places")
          .forEach(
              place -> {
                JsonObject found = place.getAsJsonObject();
                String id = found.get("id").getAsString();
                int line =
                    found.getAsJsonObject("range").getAsJsonObject("start").get("line").getAsInt();
                assertThat(svg).contains("id=\"" + id + "\" data-line=\"" + (line + 1) + "\"");
              });
    }
  }

  /** The setting of the project counts for pictures and sheets. */
  @Test
  void viewsStandAsTheProjectSays() throws IOException {
    Files.writeString(folder.resolve(".handwheel"), "projection: third\npaper: letter\n");
    try (LspClient client = LspClient.start()) {
      client.initialize("{}", "[{\"uri\":\"" + folder.toUri() + "\",\"name\":\"w\"}]");
      client.notify("initialized", new JsonObject());
      client.open(plan, 1, text);
      JsonObject picture =
          client.call("handwheel/picture", LspClient.at(plan, line("setup "), 2)).getAsJsonObject();
      assertThat(picture.get("svg").getAsString())
          .contains("Seen from the right")
          .doesNotContain("Seen from the left");
      JsonObject about = new JsonObject();
      about.addProperty("uri", plan);
      JsonObject params = new JsonObject();
      params.add("textDocument", about);
      JsonObject sheet = client.call("handwheel/sheet", params).getAsJsonObject();
      assertThat(sheet.get("html").getAsString()).contains("Seen from the right", "size: letter");
    }
  }

  @Test
  void outsideOfSetupsThereIsNone() {
    try (LspClient client = LspClient.start()) {
      client.initialize("{}", "[{\"uri\":\"" + folder.toUri() + "\",\"name\":\"w\"}]");
      client.notify("initialized", new JsonObject());
      client.open(plan, 1, text);
      assertThat(client.call("handwheel/picture", LspClient.at(plan, 0, 0)).isJsonNull()).isTrue();
    }
  }
}
