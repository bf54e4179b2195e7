package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Links from findings to the pages of their rules. */
@Timeout(300)
final class RuleLinksTests {
  @Test
  void aDistributionHasThemBesideItsLibraries(@TempDir Path home) throws IOException {
    Path jar =
        Files.createFile(Files.createDirectory(home.resolve("lib")).resolve("handwheel.jar"));
    Path page =
        Files.createFile(Files.createDirectory(home.resolve("rules")).resolve("overcut.md"));
    assertThat(RuleLinks.beside(jar).page("overcut")).contains(page.toUri().toString());
    assertThat(RuleLinks.beside(jar).page("heavy-pass")).isEmpty();
  }

  @Test
  void aCheckoutHasThemAmongItsSources(@TempDir Path module) throws IOException {
    Path pages =
        Files.createDirectories(module.resolve("src/main/resources/org/handwheel/rules/pages"));
    Path page = Files.createFile(pages.resolve("overcut.md"));
    Path target = Files.createDirectory(module.resolve("target"));
    for (String code : new String[] {"classes", "handwheel.jar"}) {
      assertThat(RuleLinks.beside(target.resolve(code)).page("overcut"))
          .contains(page.toUri().toString());
    }
  }

  @Test
  void aProgramAloneHasNone(@TempDir Path folder) {
    assertThat(RuleLinks.beside(folder.resolve("lib/handwheel.jar")).page("overcut")).isEmpty();
  }

  @Test
  void findingsCarryThemWhereTheEditorShowsThem(@TempDir Path folder) {
    String uri = folder.resolve("a.plan").toUri().toString();
    try (LspClient client = LspClient.initialized(Clients.PUSH)) {
      client.open(uri, 1, "rubbish\n");
      JsonObject found = only(client.diagnostics(uri, 1));
      String href = found.getAsJsonObject("codeDescription").get("href").getAsString();
      assertThat(Path.of(URI.create(href)))
          .hasFileName(found.get("code").getAsString() + ".md")
          .content()
          .startsWith("# ");
    }
    try (LspClient client = LspClient.initialized(Clients.PLAIN)) {
      client.open(uri, 1, "rubbish\n");
      assertThat(only(client.diagnostics(uri, 1)).has("codeDescription")).isFalse();
    }
  }

  @Test
  void aRuleNamedInAFileLeadsToItsPage(@TempDir Path folder) {
    String plan = folder.resolve("a.plan").toUri().toString();
    String shop = folder.resolve("b.shop").toUri().toString();
    try (LspClient client = LspClient.initialized(Clients.PLAIN)) {
      client.open(plan, 1, "plan \"a\"\n  units mm  # ignore overcut: the stock is long\n");
      JsonObject link = only(links(client, plan));
      assertThat(link.getAsJsonObject("range")).isEqualTo(LspClient.range(1, 21, 1, 28));
      assertThat(link.get("target").getAsString()).endsWith("/overcut.md");
      client.open(shop, 1, "shop \"b\"\nown severities S\n  heavy-pass: off\n  nonsense: off\n");
      link = only(links(client, shop));
      assertThat(link.getAsJsonObject("range")).isEqualTo(LspClient.range(2, 2, 2, 12));
      assertThat(link.get("target").getAsString()).endsWith("/heavy-pass.md");
    }
  }

  private static JsonArray links(LspClient client, String uri) {
    return client.call("textDocument/documentLink", LspClient.document(uri)).getAsJsonArray();
  }

  private static JsonObject only(JsonArray diagnostics) {
    assertThat(diagnostics).hasSize(1);
    return diagnostics.get(0).getAsJsonObject();
  }
}
