package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Several folders, which come and go. */
@Timeout(300)
final class FolderTests {
  private static String folders(Path folder) {
    return "[{\"uri\":\"" + folder.toUri() + "\",\"name\":\"f\"}]";
  }

  private static void change(LspClient client, String added, String removed) {
    client.notify(
        "workspace/didChangeWorkspaceFolders",
        JsonParser.parseString(
            "{\"event\":{\"added\":" + added + ",\"removed\":" + removed + "}}"));
  }

  private static String all(LspClient client) {
    return client
        .call("workspace/diagnostic", LspClient.object("previousResultIds", new JsonArray()))
        .toString();
  }

  @Test
  void filesOfAFolderCountWhileItIsThere(@TempDir Path bow, @TempDir Path stern)
      throws IOException {
    Files.writeString(bow.resolve("bow.plan"), "rubbish\n");
    Files.writeString(stern.resolve("stern.plan"), "rubbish\n");
    try (LspClient client = LspClient.start()) {
      client.initialize(Clients.PULL, folders(bow));
      client.notify("initialized", JsonParser.parseString("{}"));
      assertThat(all(client)).contains("bow.plan").doesNotContain("stern.plan");
      change(client, folders(stern), "[]");
      assertThat(all(client)).contains("bow.plan").contains("stern.plan");
      change(client, "[]", folders(bow));
      assertThat(all(client)).doesNotContain("bow.plan").contains("stern.plan");
    }
  }
}
