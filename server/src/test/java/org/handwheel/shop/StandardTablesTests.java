package org.handwheel.shop;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import org.junit.jupiter.api.Test;

class StandardTablesTests {
  private static JavaClasses shop() {
    return new ClassFileImporter()
        .withImportOption(new ImportOption.DoNotIncludeTests())
        .importPackages("org.handwheel.shop");
  }

  @Test
  void theBuiltInTablesAreReadOnce() {
    assertThat(StandardTables.builtIn()).isSameAs(StandardTables.builtIn());
    assertThat(StandardTables.load().threads().all())
        .hasSameSizeAs(StandardTables.builtIn().threads().all());
  }

  @Test
  void everyTableIsReadOnceWhenItIsAskedFor() throws ReflectiveOperationException {
    StandardTables tables = StandardTables.load();
    int count = 0;
    for (Method table : StandardTables.class.getDeclaredMethods()) {
      if (!Modifier.isStatic(table.getModifiers()) && Modifier.isPublic(table.getModifiers())) {
        assertThat(table.invoke(tables)).isNotNull().isSameAs(table.invoke(tables));
        count++;
      }
    }
    assertThat(count).isEqualTo(11);
  }

  @Test
  void dependOnUnitsAndLibrariesOfTheirOwnOnly() {
    classes()
        .that()
        .resideInAPackage("org.handwheel.shop..")
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage(
            "java..",
            "org.jspecify..",
            "org.apache.commons.numbers..",
            "org.handwheel.units..",
            "org.handwheel.shop..")
        .check(shop());
  }

  @Test
  void packagesHaveNoCycles() {
    slices().matching("org.handwheel.shop.(*)..").should().beFreeOfCycles().check(shop());
  }
}
