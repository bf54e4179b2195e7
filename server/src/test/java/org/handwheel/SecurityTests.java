package org.handwheel;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * What the README promises about networks, programs and libraries. That nothing outside of the
 * workspace is read, also through links, is shown by the tests of loading files and of the server.
 */
@AnalyzeClasses(packages = "org.handwheel", importOptions = DoNotIncludeTests.class)
final class SecurityTests {
  /** How the lists name the libraries that the program needs. */
  private static final Map<String, String> LISTED =
      Map.ofEntries(
          Map.entry("antlr4-runtime", "ANTLR 4 runtime"),
          Map.entry("org.eclipse.lsp4j", "LSP4J"),
          Map.entry("picocli", "picocli"),
          Map.entry("jts-core", "JTS Topology Suite"),
          Map.entry("commons-numbers-fraction", "Apache Commons Numbers"),
          Map.entry("gson", "Gson"),
          Map.entry("commonmark", "commonmark"),
          Map.entry("java-diff-utils", "java-diff-utils"),
          Map.entry("jsoup", "jsoup"),
          Map.entry("jspecify", "JSpecify"),
          Map.entry("openhtmltopdf-pdfbox", "openhtmltopdf"));

  @ArchTest
  static final ArchRule nothingOpensAConnection =
      noClasses()
          .should()
          .dependOnClassesThat()
          .haveNameMatching(
              "java\\.net\\.(.*Socket.*|URLConnection|HttpURLConnection|InetAddress|InetSocketAddress)"
                  + "|java\\.net\\.http\\..*|javax\\.net\\..*|java\\.nio\\.channels\\..*Socket.*|java\\.rmi\\..*");

  @ArchTest
  static final ArchRule noAddressIsOpened =
      noClasses()
          .should()
          .callMethod(URL.class, "openStream")
          .orShould()
          .callMethod(URL.class, "openConnection")
          .orShould()
          .callMethod(URL.class, "getContent");

  @ArchTest
  static final ArchRule onlyTheBindingToGitStartsAProgram =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName("org.handwheel.cli.GitRepository")
          .should()
          .dependOnClassesThat()
          .areAssignableTo(ProcessBuilder.class)
          .orShould()
          .callMethod(Runtime.class, "exec", String[].class);

  @ArchTest
  static final ArchRule nothingOfAFileBecomesCode =
      noClasses()
          .should()
          .dependOnClassesThat()
          .haveNameMatching(
              "javax\\.script\\..*|javax\\.tools\\..*|java\\.net\\.URLClassLoader"
                  + "|java\\.io\\.ObjectInputStream|java\\.lang\\.invoke\\.MethodHandles\\$Lookup\\$ClassDefiner");

  @Test
  void everyLibraryIsListedWithItsLicence() throws IOException {
    String readme = Files.readString(Path.of("../README.md"));
    String thirdParty = Files.readString(Path.of("src/main/resources/META-INF/THIRD-PARTY.md"));
    for (String artifact : libraries(Files.readString(Path.of("pom.xml")))) {
      assertThat(LISTED).containsKey(artifact);
      assertThat(readme).as("README.md").containsIgnoringCase(LISTED.get(artifact));
      assertThat(thirdParty).as("THIRD-PARTY.md").containsIgnoringCase(LISTED.get(artifact));
    }
  }

  /** The libraries that go into the program: those without a scope, but for its own parts. */
  private static Set<String> libraries(String pom) {
    Set<String> libraries = new LinkedHashSet<>();
    Matcher dependency =
        Pattern.compile("<dependency>(.*?)</dependency>", Pattern.DOTALL)
            .matcher(pom.substring(0, pom.indexOf("<build>")));
    while (dependency.find()) {
      String text = dependency.group(1);
      if (!text.contains("<scope>") && !text.contains("org.handwheel")) {
        libraries.add(text.replaceAll("(?s).*<artifactId>(.*?)</artifactId>.*", "$1"));
      }
    }
    assertThat(libraries).isNotEmpty();
    return libraries;
  }
}
