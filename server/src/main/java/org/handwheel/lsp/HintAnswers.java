package org.handwheel.lsp;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.handwheel.ide.HintSettings;
import org.handwheel.ide.Hints;
import org.handwheel.ide.View;
import org.handwheel.lsp.PlanTexts.Question;
import org.jspecify.annotations.Nullable;

/** Hints in the words of the protocol, and the editor's settings for them. */
final class HintAnswers {
  private HintAnswers() {}

  static List<InlayHint> hints(
      Question question, View view, HintSettings settings, int start, int end) {
    return Hints.of(view, settings, start, end).stream().map(hint -> hint(question, hint)).toList();
  }

  private static InlayHint hint(Question question, Hints.Hint hint) {
    InlayHint answer =
        new InlayHint(
            question.client().positions().position(question.file().tree().source(), hint.offset()),
            Either.forLeft(hint.label()));
    boolean markdown = question.client().hoverInMarkdown();
    answer.setTooltip(
        new MarkupContent(
            markdown ? MarkupKind.MARKDOWN : MarkupKind.PLAINTEXT,
            markdown ? hint.tooltip().markdown() : hint.tooltip().plain()));
    answer.setPaddingLeft(true);
    return answer;
  }

  /**
   * Reads {@code handwheel.hints.size}, {@code .dial} and {@code .direction}, each true or false;
   * what is missing stays as it was, what is no truth value is passed over.
   *
   * @param settings the settings as sent, with or without the {@code handwheel} around them
   */
  static HintSettings read(@Nullable Object settings, HintSettings before) {
    if (!(settings instanceof JsonObject all)) {
      return before;
    }
    JsonObject own = all.get("handwheel") instanceof JsonObject inner ? inner : all;
    if (!(own.get("hints") instanceof JsonObject hints)) {
      return before;
    }
    Set<HintSettings.Kind> shown = EnumSet.noneOf(HintSettings.Kind.class);
    for (HintSettings.Kind kind : HintSettings.Kind.values()) {
      JsonElement value = hints.get(kind.name().toLowerCase(Locale.ROOT));
      boolean isTruth =
          value != null && value.isJsonPrimitive() && value.getAsJsonPrimitive().isBoolean();
      if (isTruth ? value.getAsBoolean() : before.shows(kind)) {
        shown.add(kind);
      }
    }
    return new HintSettings(shown);
  }
}
