package org.handwheel.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.handwheel.cli.CommandRun.Result;
import org.handwheel.lsp.PackedPages;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The forms of {@code check} that other programs read. */
final class ReportFormatTests {
  private static final String HOSTILE = "a,b:c%0A \"<&>' \u00e9\ud83d\ude00.plan";

  @TempDir Path folder;

  @BeforeEach
  void mistakes() throws IOException {
    Samples.write(folder, "shop/inch-mill.shop", Samples.example("shop/inch-mill.shop"));
    Samples.write(
        folder,
        "four-in-one.plan",
        Samples.example("mistakes/four-in-one.plan").replace("../shop", "shop"));
    Samples.write(folder, "comma.plan", Samples.COMMA);
    Samples.write(folder, "clean.plan", Samples.CLEAN);
    Samples.write(folder, "note.plan", Samples.UNUSED);
  }

  private String out(String format) {
    Result result = run("check", "--format", format);
    assertThat(result.err()).isEmpty();
    assertThat(result.exitCode()).isEqualTo(1);
    return result.out();
  }

  private Result run(String... args) {
    return CommandRun.in(folder).pages(new PackedPages()).run(args);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"text", "json", "sarif", "github", "gitlab", "rdjson", "checkstyle", "junit"})
  void theSameFilesGiveTheSameBytes(String format) {
    assertThat(out(format)).isEqualTo(out(format)).isNotEmpty();
    assertThat(run("check", "comma.plan", "four-in-one.plan", "--format", format).out())
        .isEqualTo(run("check", "four-in-one.plan", "comma.plan", "--format", format).out());
  }

  // ---- SARIF

  private static Schema sarifSchema() throws IOException {
    try (InputStream in =
        ReportFormatTests.class.getResourceAsStream("/schema/sarif-schema-2.1.0.json")) {
      return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_7)
          .getSchema(new String(in.readAllBytes(), StandardCharsets.UTF_8), InputFormat.JSON);
    }
  }

  private static void assertIsSarif(String log) throws IOException {
    assertThat(sarifSchema().validate(log, InputFormat.JSON)).isEmpty();
  }

  @Test
  void sarifIsValidBySchema() throws IOException {
    assertIsSarif(out("sarif"));
  }

  @Test
  void sarifOfAllExamplesIsValid() throws IOException {
    Result result =
        CommandRun.in(Path.of("..", "examples"))
            .pages(new PackedPages())
            .run("check", "--format", "sarif");
    assertThat(result.exitCode()).isEqualTo(1);
    assertIsSarif(result.out());
    assertThat(runOf(result.out()).getAsJsonArray("results").size()).isGreaterThan(20);
  }

  @Test
  void theSchemaIsNoFormality() throws IOException {
    String log = out("sarif");
    assertThat(sarifSchema().validate(log.replace("\"startLine\"", "\"line\""), InputFormat.JSON))
        .isNotEmpty();
    assertThat(
            sarifSchema()
                .validate(log.replace("\"ruleIndex\": 0", "\"ruleIndex\": -2"), InputFormat.JSON))
        .isNotEmpty();
  }

  @Test
  void sarifOfNothingAndOfTroubleIsValid() throws IOException {
    assertIsSarif(run("check", "clean.plan", "--format", "sarif").out());
    Result result = run("check", "missing.plan", "--format", "sarif");
    assertThat(result.exitCode()).isEqualTo(2);
    assertIsSarif(result.out());
    JsonObject invocation =
        runOf(result.out()).getAsJsonArray("invocations").get(0).getAsJsonObject();
    assertThat(invocation.get("executionSuccessful").getAsBoolean()).isFalse();
    assertThat(invocation.getAsJsonArray("toolExecutionNotifications").size()).isEqualTo(1);
  }

  private static JsonObject runOf(String log) {
    return JsonParser.parseString(log)
        .getAsJsonObject()
        .getAsJsonArray("runs")
        .get(0)
        .getAsJsonObject();
  }

  @Test
  void sarifHasWhatCodeHostsAskForBeyondTheSchema() {
    String log = out("sarif");
    assertThat(JsonParser.parseString(log).getAsJsonObject().get("$schema").getAsString())
        .endsWith("sarif-schema-2.1.0.json");
    JsonObject run = runOf(log);
    assertThat(run.get("columnKind").getAsString()).isEqualTo("utf16CodeUnits");
    JsonArray rules = run.getAsJsonObject("tool").getAsJsonObject("driver").getAsJsonArray("rules");
    for (JsonElement each : rules) {
      JsonObject rule = each.getAsJsonObject();
      for (String key : List.of("shortDescription", "fullDescription")) {
        String text = rule.getAsJsonObject(key).get("text").getAsString();
        assertThat(text.length()).as(key).isBetween(10, 1024);
      }
      assertThat(rule.getAsJsonObject("help").get("markdown").getAsString())
          .startsWith("# " + rule.get("id").getAsString());
      assertThat(rule.getAsJsonObject("properties").get("problem.severity").getAsString())
          .isIn("error", "warning", "recommendation");
    }
    Set<String> fingerprints = new HashSet<>();
    JsonArray results = run.getAsJsonArray("results");
    assertThat(results.size()).isGreaterThan(5);
    boolean related = false;
    boolean fixed = false;
    for (JsonElement each : results) {
      JsonObject result = each.getAsJsonObject();
      assertThat(rules.get(result.get("ruleIndex").getAsInt()).getAsJsonObject().get("id"))
          .isEqualTo(result.get("ruleId"));
      assertThat(result.get("level").getAsString()).isIn("error", "warning", "note");
      JsonObject place =
          result
              .getAsJsonArray("locations")
              .get(0)
              .getAsJsonObject()
              .getAsJsonObject("physicalLocation");
      JsonObject region = place.getAsJsonObject("region");
      assertThat(region.keySet())
          .containsExactly("startLine", "startColumn", "endLine", "endColumn");
      assertThat(region.get("startLine")).isEqualTo(region.get("endLine"));
      assertThat(place.getAsJsonObject("artifactLocation").get("uriBaseId").getAsString())
          .isEqualTo("SRCROOT");
      String file = place.getAsJsonObject("artifactLocation").get("uri").getAsString();
      fingerprints.add(
          file + result.getAsJsonObject("partialFingerprints").get("handwheel/v1").getAsString());
      related |= result.has("relatedLocations");
      fixed |= result.has("fixes");
    }
    assertThat(fingerprints).hasSize(results.size());
    assertThat(related).isTrue();
    assertThat(fixed).isTrue();
    assertThat(emptyStrings(JsonParser.parseString(log), "$")).isEmpty();
  }

  private static List<String> emptyStrings(JsonElement at, String path) {
    List<String> found = new ArrayList<>();
    if (at.isJsonPrimitive() && at.getAsString().isEmpty()) {
      found.add(path);
    } else if (at.isJsonArray()) {
      at.getAsJsonArray().forEach(each -> found.addAll(emptyStrings(each, path + "[]")));
    } else if (at.isJsonObject()) {
      at.getAsJsonObject()
          .entrySet()
          .forEach(each -> found.addAll(emptyStrings(each.getValue(), path + "." + each.getKey())));
    }
    return found;
  }

  // ---- The others

  @Test
  void githubShowsTheWorstFirst() {
    List<String> lines = out("github").lines().toList();
    List<String> commands =
        lines.stream().map(line -> line.substring(2, line.indexOf(' '))).distinct().toList();
    assertThat(commands).containsExactly("error", "warning", "notice");
    assertThat(lines)
        .contains(
            "::error file=comma.plan,line=6,endLine=6,col=10,endColumn=15,title=syntax"
                + "::write a decimal point, not a comma: 19.05");
    assertThat(lines).filteredOn(line -> line.contains("%0Afour-in-one.plan:12: ")).isNotEmpty();
  }

  @Test
  void gitlabIssuesHaveFingerprintsOfTheirOwn() throws IOException {
    Samples.write(folder, "comma-2.plan", Samples.COMMA);
    JsonArray issues = JsonParser.parseString(out("gitlab")).getAsJsonArray();
    Set<String> fingerprints = new HashSet<>();
    for (JsonElement each : issues) {
      JsonObject issue = each.getAsJsonObject();
      assertThat(issue.keySet())
          .containsExactly("description", "check_name", "fingerprint", "severity", "location");
      assertThat(issue.get("severity").getAsString()).isIn("major", "minor", "info");
      assertThat(issue.getAsJsonObject("location").get("path").getAsString())
          .doesNotStartWith("./");
      fingerprints.add(issue.get("fingerprint").getAsString());
    }
    assertThat(fingerprints).hasSize(issues.size());
  }

  @Test
  void rdjsonCountsBytesAndSuggests() throws IOException {
    Samples.write(folder, "plans/e.plan", Samples.COMMA.replace("    height", "\u00a0height"));
    JsonObject root =
        JsonParser.parseString(run("check", "plans", "--format", "rdjson").out()).getAsJsonObject();
    assertThat(root.getAsJsonObject("source").get("name").getAsString()).isEqualTo("handwheel");
    JsonObject diagnostic = null;
    for (JsonElement each : root.getAsJsonArray("diagnostics")) {
      if (each.getAsJsonObject()
          .getAsJsonObject("code")
          .get("value")
          .getAsString()
          .equals("syntax")) {
        diagnostic = each.getAsJsonObject();
      }
    }
    assertThat(diagnostic).isNotNull();
    JsonObject start =
        diagnostic.getAsJsonObject("location").getAsJsonObject("range").getAsJsonObject("start");
    assertThat(start.get("line").getAsInt()).isEqualTo(6);
    // Two blanks of the sample are left before the hard one, which takes two bytes.
    String line = Samples.COMMA.replace("    height", "\u00a0height").lines().toList().get(5);
    int bytes = line.substring(0, line.indexOf("19,05")).getBytes(StandardCharsets.UTF_8).length;
    assertThat(start.get("column").getAsInt()).isEqualTo(bytes + 1);
    assertThat(
            diagnostic
                .getAsJsonArray("suggestions")
                .get(0)
                .getAsJsonObject()
                .get("text")
                .getAsString())
        .isEqualTo("19.05");
  }

  private static Document xml(String text) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
    return factory
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void checkstyleHoldsEveryFile() throws Exception {
    NodeList files = xml(out("checkstyle")).getElementsByTagName("file");
    List<String> names = new ArrayList<>();
    for (int i = 0; i < files.getLength(); i++) {
      names.add(((Element) files.item(i)).getAttribute("name"));
    }
    assertThat(names)
        .containsExactly(
            "clean.plan", "comma.plan", "four-in-one.plan", "note.plan", "shop/inch-mill.shop");
    Element error = (Element) ((Element) files.item(1)).getElementsByTagName("error").item(0);
    assertThat(error.getAttribute("line")).isEqualTo("6");
    assertThat(error.getAttribute("column")).isEqualTo("10");
    assertThat(error.getAttribute("severity")).isEqualTo("error");
    assertThat(error.getAttribute("source")).isEqualTo("handwheel.syntax");
  }

  @Test
  void junitCountsWhatItHolds() throws Exception {
    Document document = xml(out("junit"));
    Element root = document.getDocumentElement();
    assertThat(root.getAttribute("tests"))
        .isEqualTo(String.valueOf(document.getElementsByTagName("testcase").getLength()));
    assertThat(root.getAttribute("failures"))
        .isEqualTo(String.valueOf(document.getElementsByTagName("failure").getLength()));
    assertThat(document.getElementsByTagName("system-out").getLength()).isPositive();
    Document trouble = xml(run("check", "missing.plan", "--format", "junit").out());
    assertThat(trouble.getDocumentElement().getAttribute("errors")).isEqualTo("1");
  }

  // ---- Names that mean something elsewhere

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void hostileNamesStayNames() throws Exception {
    org.junit.jupiter.api.Assumptions.assumeTrue(
        FileSystems.getDefault().supportedFileAttributeViews().contains("posix")
            && System.getProperty("sun.jnu.encoding", "").equalsIgnoreCase("UTF-8"),
        "this system cannot name such files");
    Path own = java.nio.file.Files.createDirectory(folder.resolve("hostile"));
    hostile(own, HOSTILE);
  }

  /** The same on a system whose names are ASCII. */
  @Test
  @DisabledOnOs(OS.WINDOWS)
  void hostileAsciiNamesStayNames() throws Exception {
    Path own = java.nio.file.Files.createDirectory(folder.resolve("hostile"));
    hostile(own, "a,b:c%0A \"<&>'\n::error::x.plan");
  }

  private static void hostile(Path own, String name) throws Exception {
    Samples.write(own, name, Samples.COMMA.replace("Feed pump", "]]> <b> `x` ::error::"));
    CommandRun run = CommandRun.in(own).pages(new PackedPages());
    String log = run.run("check", "--format", "sarif").out();
    assertIsSarif(log);
    String uri =
        runOf(log)
            .getAsJsonArray("results")
            .get(0)
            .getAsJsonObject()
            .getAsJsonArray("locations")
            .get(0)
            .getAsJsonObject()
            .getAsJsonObject("physicalLocation")
            .getAsJsonObject("artifactLocation")
            .get("uri")
            .getAsString();
    assertThat(uri).matches("[A-Za-z0-9%._~-]+");
    assertThat(new java.net.URI(uri).getPath()).isEqualTo(name);
    List<String> lines = run.run("check", "--format", "github").out().lines().toList();
    assertThat(lines).hasSize(1);
    String properties = lines.get(0).substring(0, lines.get(0).indexOf("::", 2));
    assertThat(properties.chars().filter(c -> c == ',').count()).isEqualTo(5);
    assertThat(properties).contains("file=a%2Cb%3Ac%250A ");
    assertThat(
            JsonParser.parseString(run.run("check", "--format", "gitlab").out())
                .getAsJsonArray()
                .get(0)
                .getAsJsonObject()
                .getAsJsonObject("location")
                .get("path")
                .getAsString())
        .isEqualTo(name);
    Element file =
        (Element)
            xml(run.run("check", "--format", "checkstyle").out())
                .getElementsByTagName("file")
                .item(0);
    assertThat(file.getAttribute("name")).isEqualTo(name);
    Element suite =
        (Element)
            xml(run.run("check", "--format", "junit").out())
                .getElementsByTagName("testsuite")
                .item(0);
    assertThat(suite.getAttribute("name")).isEqualTo(name);
  }

  // ---- Known findings

  @Test
  void aBaselineHidesWhatItListsThoughLinesMove() throws IOException {
    Result written = run("check", "--write-baseline", "known.json");
    assertThat(written.exitCode()).isZero();
    assertThat(written.outLines().get(0)).contains("nothing new found; ").endsWith(" known");
    assertThat(run("check", "--baseline", "known.json").exitCode()).isZero();
    String plan =
        Samples.example("mistakes/four-in-one.plan")
            .replace("../shop", "shop")
            .replace("part\n", "\n\n# moved\n\npart\n")
            .replace("  finish ", "      finish   ");
    Samples.write(folder, "four-in-one.plan", plan);
    assertThat(run("check", "--baseline", "known.json", "--fail-on", "warning").exitCode())
        .isZero();
    Samples.write(folder, "other.plan", Samples.COMMA);
    Result more = run("check", "--baseline", "known.json", "--format", "json");
    assertThat(more.exitCode()).isEqualTo(1);
    JsonObject root = JsonParser.parseString(more.out()).getAsJsonObject();
    assertThat(root.getAsJsonArray("findings").size()).isEqualTo(1);
    assertThat(root.getAsJsonObject("counts").get("known").getAsInt()).isPositive();
  }

  @Test
  void aBaselineEntryStandsForOneFinding() throws IOException {
    run("check", "comma.plan", "--write-baseline", "known.json");
    Samples.write(folder, "comma.plan", Samples.COMMA + "  height 19,05 +0/-0.04\n");
    Result result = run("check", "comma.plan", "--baseline", "known.json");
    assertThat(result.out()).contains("1 error in 1 plan; 1 known");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "{", "[]", "{\"version\": 2, \"findings\": []}", "{\"findings\": [null]}"})
  void whatIsNoBaselineIsRefused(String text) throws IOException {
    Samples.write(folder, "known.json", text);
    Result result = run("check", "clean.plan", "--baseline", "known.json");
    assertThat(result.exitCode()).isEqualTo(2);
    assertThat(result.err()).startsWith("handwheel: known.json: it is ");
    assertThat(run("check", "clean.plan", "--baseline", "none.json").exitCode()).isEqualTo(2);
  }
}
