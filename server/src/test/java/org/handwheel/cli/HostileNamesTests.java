package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.HtmlBlock;
import org.commonmark.node.HtmlInline;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.lsp.PackedPages;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Names of files and words of plans that would mean something to the reader of a form. */
@DisabledOnOs(OS.WINDOWS)
final class HostileNamesTests {
  private static final String WORDS =
      "<script>alert(1)</script> ]]> @fitter #12 ::error::x %0A `code` [a](b) ![c](d) | **x**"
          + " www.example.org https://example.org \u001b[31m \u0007 \u202e";

  @TempDir Path folder;

  private void write(String name, String text) throws IOException {
    Samples.write(folder, name, text);
  }

  private static String plan(String words, String height) {
    return "language 1\nplan \""
        + words
        + "\"\n  units mm\n  let edge = 7\n\npart\n  height "
        + height
        + "\n\nsetup one \""
        + words
        + "\"\n  note \""
        + words
        + " "
        + height
        + "\"\n";
  }

  private Result diff(String name, String format) throws IOException {
    Files.createDirectories(folder.resolve("a"));
    Files.createDirectories(folder.resolve("b"));
    write("a/" + name, plan(WORDS, "19"));
    write("b/" + name, plan(WORDS, "20"));
    Result result = CommandRun.in(folder).run("diff", "a", "b", "--format", format);
    assertThat(result.err()).isEmpty();
    assertThat(result.exitCode()).isEqualTo(1);
    return result;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<script>.plan",
        "a\nb.plan",
        "a\r\n## b.plan",
        "`a` [x](y).plan",
        "a::b%0A.plan",
        "\"'<&>.plan",
        "@all #1.plan",
        "-x.plan",
        "\u0001\u001b[2J.plan"
      })
  void aReviewHoldsNothingButItsOwnMarkup(String name) throws IOException {
    String markdown = diff(name, "markdown").out();
    Node document = Parser.builder().build().parse(markdown);
    List<String> codes = new ArrayList<>();
    document.accept(
        new AbstractVisitor() {
          @Override
          public void visit(HtmlInline html) {
            throw new AssertionError("HTML: " + html.getLiteral());
          }

          @Override
          public void visit(HtmlBlock html) {
            throw new AssertionError("HTML: " + html.getLiteral());
          }

          @Override
          public void visit(Link link) {
            throw new AssertionError("link: " + link.getDestination());
          }

          @Override
          public void visit(Image image) {
            throw new AssertionError("image: " + image.getDestination());
          }

          @Override
          public void visit(Code code) {
            codes.add(code.getLiteral());
          }
        });
    assertThat(codes.get(0)).endsWith(".plan");
    assertThat(markdown.lines().filter(line -> line.startsWith("#"))).hasSize(2);
    assertThat(markdown.replace("\n", ""))
        .doesNotContainPattern("\\p{Cntrl}")
        .doesNotContain("\u202e");
    String html = HtmlRenderer.builder().build().render(document);
    assertThat(html).doesNotContain("<script", "<a ", "<img");
    assertThat(html.replaceAll("(?s)<code>.*?</code>", ""))
        .doesNotContain("@fitter", "#12", "https://", "www.example");
  }

  @Test
  void atATerminalNothingSteers() throws IOException {
    String text = diff("a\nb\u001b[2J.plan", "text").out();
    assertThat(text.replace("\n", "")).doesNotContainPattern("\\p{Cntrl}");
    assertThat(text).contains("a b").doesNotContain("\u202e");
  }

  @Test
  void jsonHoldsTheNameAsItIs() throws IOException {
    String name = "<script> \"\n%0A::.plan";
    String json = diff(name, "json").out();
    JsonObject file =
        JsonParser.parseString(json)
            .getAsJsonObject()
            .getAsJsonArray("files")
            .get(0)
            .getAsJsonObject();
    assertThat(file.get("after").getAsString()).isEqualTo(name);
    assertThat(file.get("title").getAsString()).isEqualTo(WORDS);
    assertThat(json).matches("[\\x20-\\x7e\n]*");
  }

  /** Words of a plan get into messages; no message may end a command, an element or a value. */
  @Test
  void wordsInMessagesStayWords() throws Exception {
    write("p.plan", plan("x", "19").replace("let edge", "let \u00e9dge<b>::error::%0A"));
    for (String format : List.of("checkstyle", "junit")) {
      String xml = check(format).out();
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      factory
          .newDocumentBuilder()
          .parse(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
      assertThat(xml).doesNotContain("<b>");
    }
    for (String format : List.of("json", "sarif", "gitlab", "rdjson")) {
      assertThat(JsonParser.parseString(check(format).out()).isJsonNull()).isFalse();
    }
    assertThat(check("github").outLines())
        .isNotEmpty()
        .allSatisfy(
            line -> {
              assertThat(line).startsWith("::").contains("file=p.plan,");
              assertThat(line.replaceAll("%(25|0A|0D|3A|2C)", "")).doesNotContain("%");
            });
  }

  private Result check(String format) {
    Result result = CommandRun.in(folder).pages(new PackedPages()).run("check", "--format", format);
    assertThat(result.exitCode()).isEqualTo(1);
    return result;
  }
}
