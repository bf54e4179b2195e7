package org.handwheel.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.handwheel.grammar.HandwheelParser;
import org.junit.jupiter.api.Test;

/** Every statement and clause of the grammar has a written form. */
final class WrittenFormsTests {
  private static final List<Class<?>> FAMILIES =
      List.of(
          HandwheelParser.HeaderContext.class,
          HandwheelParser.StatementContext.class,
          HandwheelParser.HoleClauseContext.class,
          HandwheelParser.PatternClauseContext.class,
          HandwheelParser.HoldClauseContext.class,
          HandwheelParser.SeatClauseContext.class,
          HandwheelParser.ToolClauseContext.class,
          HandwheelParser.CutClauseContext.class,
          HandwheelParser.HoleCutClauseContext.class,
          HandwheelParser.FeatureClauseContext.class);

  @Test
  void everyAlternativeHasAForm() {
    List<String> missing =
        Arrays.stream(HandwheelParser.class.getDeclaredClasses())
            .filter(node -> FAMILIES.contains(node.getSuperclass()))
            .map(WrittenForms::alternative)
            .filter(name -> WrittenForms.named(name).isEmpty())
            .sorted()
            .toList();
    assertThat(missing).isEmpty();
  }

  @Test
  void bracesBelongTogether() {
    for (Class<?> node : HandwheelParser.class.getDeclaredClasses()) {
      WrittenForms.named(WrittenForms.alternative(node))
          .ifPresent(
              form -> {
                assertThat(form.shown()).doesNotContain("{").doesNotContain("}");
                assertThat(form.meaning()).endsWith(".");
                assertThat(form.pattern().chars().filter(c -> c == '{').count())
                    .isEqualTo(form.pattern().chars().filter(c -> c == '}').count());
              });
    }
  }
}
