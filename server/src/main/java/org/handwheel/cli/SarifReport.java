package org.handwheel.cli;

import com.google.gson.annotations.SerializedName;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.handwheel.cli.Report.Found;
import org.handwheel.ide.RulePages;
import org.handwheel.rules.Rules;
import org.handwheel.syntax.Severity;
import org.jspecify.annotations.Nullable;

/**
 * SARIF 2.1.0 (OASIS), with what code hosts ask for beyond it: texts for every rule, fingerprints,
 * places of one line, paths from the folder it runs in, which is to be the top of the repository.
 */
final class SarifReport implements ReportFormat {
  private static final String SCHEMA =
      "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/"
          + "sarif-schema-2.1.0.json";
  private static final String BASE = "SRCROOT";

  /** Code hosts cut longer descriptions off or refuse them. */
  private static final int LONGEST = 1024;

  private final Output output;
  private final PathNames names;
  private final RulePages pages;

  SarifReport(Output output, PathNames names, RulePages pages) {
    this.output = output;
    this.names = names;
    this.pages = pages;
  }

  @Override
  public void print(Report report) {
    List<String> ids =
        List.copyOf(new TreeSet<>(report.findings().stream().map(Found::rule).toList()));
    Driver driver =
        new Driver("Handwheel", StdioServer.version(), ids.stream().map(this::rule).toList());
    Run run =
        new Run(
            new Tool(driver),
            List.of(new Invocation(report.unreadable().isEmpty(), notifications(report))),
            "utf16CodeUnits",
            new AutomationDetails("handwheel/"),
            Map.of(BASE, new Base(new Message("The folder that the check ran in"))),
            report.findings().stream().map(found -> result(found, ids)).toList());
    output.line(Json.of(new Log(SCHEMA, "2.1.0", List.of(run))));
  }

  private @Nullable List<Notification> notifications(Report report) {
    List<Notification> notifications =
        new TreeMap<>(report.unreadable())
            .entrySet().stream()
                .map(
                    entry ->
                        new Notification(
                            new Message(entry.getValue()),
                            "error",
                            List.of(
                                new Location(
                                    null, new Place(artifact(entry.getKey()), null), null))))
                .toList();
    return notifications.isEmpty() ? null : notifications;
  }

  private Rule rule(String id) {
    String page = pages.page(id).orElse("# " + id + "\n");
    String first = RulePages.firstParagraph(page);
    String full = cut(first.isEmpty() ? id.replace('-', ' ') : first);
    Severity severity = Rules.severities().getOrDefault(id, Severity.WARNING);
    return new Rule(
        id,
        new Message(cut(sentence(full))),
        new Message(full),
        new Help(page, page),
        new Configuration(level(severity)),
        new Properties(List.of("milling"), "high", problem(severity)));
  }

  private static String sentence(String text) {
    int end = text.indexOf(". ");
    return end < 0 ? text : text.substring(0, end + 1);
  }

  private static String cut(String text) {
    return text.length() <= LONGEST ? text : text.substring(0, LONGEST - 1) + "…";
  }

  private Result result(Found found, List<String> ids) {
    List<Location> related = new ArrayList<>();
    for (Report.Related each : found.related()) {
      related.add(
          new Location(
              related.size() + 1,
              new Place(artifact(each.file()), line(each.place())),
              new Message(each.message())));
    }
    List<Fix> fixes = found.fixes().stream().map(this::fix).toList();
    return new Result(
        found.rule(),
        ids.indexOf(found.rule()),
        level(found.severity()),
        new Message(found.message()),
        List.of(new Location(null, new Place(artifact(found.file()), line(found.place())), null)),
        related.isEmpty() ? null : related,
        Map.of("handwheel/v1", found.fingerprint()),
        fixes.isEmpty() ? null : fixes);
  }

  private Fix fix(Report.Fix fix) {
    Map<Path, List<Replacement>> byFile = new TreeMap<>();
    for (Report.Edit edit : fix.edits()) {
      byFile
          .computeIfAbsent(edit.file(), key -> new ArrayList<>())
          .add(
              new Replacement(
                  whole(edit.place()), edit.text().isEmpty() ? null : new Content(edit.text())));
    }
    return new Fix(
        new Message(fix.title()),
        byFile.entrySet().stream()
            .map(entry -> new ArtifactChange(artifact(entry.getKey()), entry.getValue()))
            .toList());
  }

  static String level(Severity severity) {
    return switch (severity) {
      case ERROR -> "error";
      case WARNING -> "warning";
      case INFO -> "note";
      case OFF -> "none";
    };
  }

  private static String problem(Severity severity) {
    return severity == Severity.INFO ? "recommendation" : level(severity);
  }

  private Artifact artifact(Path file) {
    String path = names.slashed(file);
    boolean below = !path.startsWith("../") && !file.getFileSystem().getPath(path).isAbsolute();
    return new Artifact(encoded(path), below ? BASE : null);
  }

  /** A path as a relative URI (RFC 3986). */
  static String encoded(String path) {
    StringBuilder uri = new StringBuilder();
    for (byte b : path.getBytes(StandardCharsets.UTF_8)) {
      char c = (char) (b & 0xFF);
      boolean plain =
          (c >= 'a' && c <= 'z')
              || (c >= 'A' && c <= 'Z')
              || (c >= '0' && c <= '9')
              || "-._~/".indexOf(c) >= 0;
      if (plain) {
        uri.append(c);
      } else {
        uri.append('%').append(java.util.HexFormat.of().withUpperCase().toHexDigits((byte) c));
      }
    }
    return uri.toString();
  }

  /** A place cut to its first line: hosts show a finding only if all its lines changed. */
  private static Region line(org.handwheel.cli.Place place) {
    if (place.endLine() == place.line()) {
      return whole(place);
    }
    int line = place.line() - 1;
    int end = place.source().lineEnd(line) - place.source().lineStart(line) + 1;
    return new Region(place.line(), place.column(), place.line(), Math.max(place.column(), end));
  }

  private static Region whole(org.handwheel.cli.Place place) {
    return new Region(place.line(), place.column(), place.endLine(), place.endColumn());
  }

  private record Log(@SerializedName("$schema") String schema, String version, List<Run> runs) {}

  private record Run(
      Tool tool,
      List<Invocation> invocations,
      String columnKind,
      AutomationDetails automationDetails,
      Map<String, Base> originalUriBaseIds,
      List<Result> results) {}

  private record Tool(Driver driver) {}

  private record Driver(String name, @Nullable String semanticVersion, List<Rule> rules) {}

  private record Rule(
      String id,
      Message shortDescription,
      Message fullDescription,
      Help help,
      Configuration defaultConfiguration,
      Properties properties) {}

  private record Help(String text, String markdown) {}

  private record Configuration(String level) {}

  private record Properties(
      List<String> tags,
      String precision,
      @SerializedName("problem.severity") String problemSeverity) {}

  private record Invocation(
      boolean executionSuccessful, @Nullable List<Notification> toolExecutionNotifications) {}

  private record Notification(Message message, String level, List<Location> locations) {}

  private record AutomationDetails(String id) {}

  private record Base(Message description) {}

  private record Result(
      String ruleId,
      int ruleIndex,
      String level,
      Message message,
      List<Location> locations,
      @Nullable List<Location> relatedLocations,
      Map<String, String> partialFingerprints,
      @Nullable List<Fix> fixes) {}

  private record Message(String text) {}

  private record Location(
      @Nullable Integer id, Place physicalLocation, @Nullable Message message) {}

  private record Place(Artifact artifactLocation, @Nullable Region region) {}

  private record Artifact(String uri, @Nullable String uriBaseId) {}

  private record Region(int startLine, int startColumn, int endLine, int endColumn) {}

  private record Fix(Message description, List<ArtifactChange> artifactChanges) {}

  private record ArtifactChange(Artifact artifactLocation, List<Replacement> replacements) {}

  private record Replacement(Region deletedRegion, @Nullable Content insertedContent) {}

  private record Content(String text) {}
}
