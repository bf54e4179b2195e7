package org.handwheel.lsp;

import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.Range;
import org.handwheel.ide.Pictures;
import org.handwheel.ide.ProjectSettings;
import org.handwheel.ide.View;
import org.handwheel.lsp.PlanTexts.Question;
import org.handwheel.plan.picture.Projection;
import org.jspecify.annotations.Nullable;

/**
 * The answer to {@code handwheel/picture}.
 *
 * @param version the version of the text that is drawn
 */
record PictureAnswer(
    String svg, String title, @Nullable String setup, int version, List<Place> places) {
  /** A shape of the picture, by its id, and the text it comes from. */
  record Place(String id, Range range) {}

  static Optional<PictureAnswer> at(
      Question question, View view, int offset, ProjectSettings settings) {
    ToProtocol toProtocol = question.toProtocol(view);
    return Pictures.at(view, offset, settings.projection().orElse(Projection.FIRST))
        .map(
            shown ->
                new PictureAnswer(
                    shown.svg(),
                    shown.title(),
                    shown.setup(),
                    question.file().version(),
                    shown.places().stream()
                        .map(
                            place ->
                                new Place(
                                    place.id(),
                                    toProtocol.range(place.place().start(), place.place().end())))
                        .toList()));
  }
}
