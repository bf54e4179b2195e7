package org.handwheel;

import static com.tngtech.archunit.core.domain.JavaAccess.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.type;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.name;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.library.Architectures;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.Serializable;
import java.util.Formatter;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;

/** The layers, what each may know, and habits that keep output the same on every machine. */
@AnalyzeClasses(packages = "org.handwheel", importOptions = DoNotIncludeTests.class)
final class ArchitectureTests {
  private static final String GRAMMAR = "org.handwheel.grammar..";

  /** From the lowest to the highest; each may use only those before it. */
  private static final List<String> LAYERS =
      List.of(
          "units", "syntax", "model", "shop", "work", "rules", "plan", "ide", "files", "lsp",
          "cli");

  /** Everything below the edges: pure functions over values. */
  private static final String[] INNER = packagesUpTo("ide");

  @ArchTest static final ArchRule eachLayerUsesOnlyThoseBelow = layered();

  @ArchTest
  static final ArchRule everyClassBelongsToALayer =
      classes().should().resideInAnyPackage(packagesAnd(GRAMMAR, packagesUpTo("cli")));

  @ArchTest
  static final ArchRule onlyTheServerKnowsTheProtocolLibrary =
      noClasses()
          .that()
          .resideOutsideOfPackage(layer("lsp"))
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.eclipse.lsp4j..");

  @ArchTest
  static final ArchRule onlyTheCommandLineKnowsItsParser =
      noClasses()
          .that()
          .resideOutsideOfPackage(layer("cli"))
          .should()
          .dependOnClassesThat()
          .resideInAPackage("picocli..");

  @ArchTest
  static final ArchRule onePackageKnowsWhatMakesPdfFiles =
      noClasses()
          .that()
          .resideOutsideOfPackage("org.handwheel.cli.pdf..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("com.openhtmltopdf..", "org.apache.pdfbox..", "org.apache.fontbox..");

  /** Half of what starts the server would be loaded for nothing. */
  @ArchTest
  static final ArchRule onlySheetsLoadWhatMakesPdfFiles =
      noClasses()
          .that()
          .resideOutsideOfPackage("org.handwheel.cli.pdf..")
          .and()
          .doNotHaveFullyQualifiedName("org.handwheel.cli.SheetCommand")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.handwheel.cli.pdf..");

  @ArchTest
  static final ArchRule onlyTheCommandLinePrints =
      noClasses()
          .that()
          .resideOutsideOfPackages(layer("cli"), GRAMMAR)
          .should(ACCESS_STANDARD_STREAMS)
          .orShould()
          .accessField(System.class, "in")
          .orShould()
          .callMethod(System.class, "exit", int.class);

  @ArchTest
  static final ArchRule oneClassStartsPrograms =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName("org.handwheel.cli.GitRepository")
          .should()
          .dependOnClassesThat(type(ProcessBuilder.class))
          .orShould()
          .callMethodWhere(target(owner(type(Runtime.class))).and(target(name("exec"))));

  @ArchTest
  static final ArchRule nobodyPrintsAStackTrace =
      noClasses()
          .should()
          .callMethodWhere(
              target(name("printStackTrace")).and(target(owner(assignableTo(Throwable.class)))));

  @ArchTest
  static final ArchRule theGeneratedParserIsKnownToFewLayers =
      noClasses()
          .that()
          .resideOutsideOfPackages(
              layer("syntax"), layer("model"), layer("plan"), layer("ide"), GRAMMAR)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("org.antlr..", GRAMMAR);

  @ArchTest
  static final ArchRule filesAreReadAndNeverWritten =
      noClasses()
          .that()
          .resideInAPackage(layer("files"))
          .should()
          .dependOnClassesThat(
              assignableTo(java.io.Writer.class).or(assignableTo(java.io.OutputStream.class)))
          .orShould()
          .callMethodWhere(
              target(owner(type(java.nio.file.Files.class)))
                  .and(
                      target(
                          nameMatching(
                              "write.*|new(Output|BufferedWriter|ByteChannel).*|create.*|copy"
                                  + "|move|delete.*|set.*"))));

  @ArchTest
  static final ArchRule innerLayersKnowNoNetworkAndNoLog =
      noClasses()
          .that()
          .resideInAnyPackage(INNER)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.net..", "java.util.logging..");

  /** The tables of standards are part of the program and are read from its own resources. */
  @ArchTest
  static final ArchRule innerLayersReadAndWriteNoFiles =
      noClasses()
          .that()
          .resideInAnyPackage(INNER)
          .and()
          .resideOutsideOfPackage("org.handwheel.shop.table..")
          .should()
          .dependOnClassesThat(
              resideInAnyPackage("java.io..", "java.nio.file..", "java.nio.channels..")
                  .and(DescribedPredicate.not(type(Serializable.class))));

  @ArchTest
  static final ArchRule geometryStartsAtTheWorkLayer =
      noClasses()
          .that()
          .resideInAnyPackage(packagesUpTo("shop"))
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.locationtech.jts..");

  @ArchTest
  static final ArchRule noStaticMutableState =
      fields()
          .that()
          .areStatic()
          .and()
          .areDeclaredInClassesThat(DescribedPredicate.not(resideInAPackage(GRAMMAR)))
          .should()
          .beFinal();

  @ArchTest
  static final ArchRule everyPackageIsNullMarked =
      classes().that().resideOutsideOfPackage(GRAMMAR).should(liveInANullMarkedPackage());

  @ArchTest
  static final ArchRule textDoesNotDependOnTheMachinesLocale =
      noClasses()
          .that()
          .resideOutsideOfPackage(GRAMMAR)
          .should()
          .callMethod(String.class, "format", String.class, Object[].class)
          .orShould()
          .callMethod(String.class, "formatted", Object[].class)
          .orShould()
          .callMethod(String.class, "toLowerCase")
          .orShould()
          .callMethod(String.class, "toUpperCase")
          .orShould()
          .callMethod(PrintStream.class, "printf", String.class, Object[].class)
          .orShould()
          .callMethod(PrintStream.class, "format", String.class, Object[].class)
          .orShould()
          .callMethod(PrintWriter.class, "printf", String.class, Object[].class)
          .orShould()
          .callMethod(PrintWriter.class, "format", String.class, Object[].class)
          .orShould()
          .callConstructor(Formatter.class);

  @ArchTest
  static final ArchRule textDoesNotDependOnTheMachinesCharacterSet =
      noClasses()
          .that()
          .resideOutsideOfPackage(GRAMMAR)
          .should()
          .callMethod(String.class, "getBytes")
          .orShould()
          .callConstructor(String.class, byte[].class);

  private static ArchRule layered() {
    Architectures.LayeredArchitecture rule =
        Architectures.layeredArchitecture().consideringOnlyDependenciesInLayers();
    for (String name : LAYERS) {
      rule = rule.optionalLayer(name).definedBy(layer(name));
    }
    for (int i = 0; i < LAYERS.size(); i++) {
      String[] below = LAYERS.subList(0, i).toArray(String[]::new);
      rule =
          i == 0
              ? rule.whereLayer(LAYERS.get(0)).mayNotAccessAnyLayer()
              : rule.whereLayer(LAYERS.get(i)).mayOnlyAccessLayers(below);
    }
    return rule;
  }

  private static String layer(String name) {
    return "org.handwheel." + name + "..";
  }

  private static String[] packagesUpTo(String last) {
    return LAYERS.subList(0, LAYERS.indexOf(last) + 1).stream()
        .map(ArchitectureTests::layer)
        .toArray(String[]::new);
  }

  private static String[] packagesAnd(String one, String[] others) {
    return Stream.concat(Stream.of(one), List.of(others).stream()).toArray(String[]::new);
  }

  private static ArchCondition<JavaClass> liveInANullMarkedPackage() {
    return new ArchCondition<>("live in a package marked @NullMarked") {
      @Override
      public void check(JavaClass javaClass, ConditionEvents events) {
        boolean marked = javaClass.getPackage().isAnnotatedWith(NullMarked.class);
        events.add(
            new SimpleConditionEvent(
                javaClass, marked, javaClass.getPackageName() + " of " + javaClass.getName()));
      }
    };
  }
}
