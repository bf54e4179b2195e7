package org.handwheel.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.handwheel.ide.View.Place;
import org.handwheel.model.Located;
import org.handwheel.model.Part;
import org.handwheel.plan.picture.Picture;
import org.handwheel.plan.picture.Picture.Mark;
import org.handwheel.plan.picture.PictureLayout;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.picture.SetupPicture;
import org.handwheel.plan.picture.SvgPicture;
import org.handwheel.work.PlanRun;
import org.handwheel.work.PlanRun.SetupRun;
import org.jspecify.annotations.Nullable;

/** The picture of the setup a place is in. */
public final class Pictures {
  private Pictures() {}

  /**
   * A picture and where its shapes come from.
   *
   * @param setup the setup's name, if it has one
   */
  public record Shown(String svg, String title, @Nullable String setup, List<ShapePlace> places) {
    public Shown {
      places = List.copyOf(places);
    }
  }

  /** A shape of the picture, by its id, and the text it comes from. */
  public record ShapePlace(String id, Place place) {}

  /**
   * The picture of the setup at an offset.
   *
   * @param offset UTF-16 units from the start of the file
   * @return nothing outside of setups, in a setup of which a line cannot be read or after one, and
   *     where the size of the work or how it lies is not known
   */
  public static Optional<Shown> at(View view, int offset, Projection projection) {
    PlanRun run = view.run();
    return run == null
        ? Optional.empty()
        : run.knownSetups()
            .filter(setup -> holds(view, setup, offset))
            .findFirst()
            .flatMap(setup -> shown(view, run.plan().part(), setup, projection));
  }

  private static boolean holds(View view, SetupRun setup, int offset) {
    var section = setup.setup().header().section();
    if (!view.tree().contains(setup.setup().header())) {
      return false;
    }
    int start = view.tree().base(section);
    return offset >= start && offset < start + section.text().length();
  }

  private static Optional<Shown> shown(
      View view, @Nullable Part part, SetupRun setup, Projection projection) {
    return SetupPicture.of(view.tree(), part, setup, projection)
        .map(
            picture ->
                new Shown(
                    SvgPicture.of(picture, view.tree()),
                    picture.title(),
                    Optional.ofNullable(setup.setup().name()).map(Located::value).orElse(null),
                    places(view, picture)));
  }

  private static List<ShapePlace> places(View view, Picture picture) {
    List<ShapePlace> places = new ArrayList<>();
    Set<String> done = new TreeSet<>();
    for (Picture.View look : picture.views()) {
      for (Mark mark : look.marks()) {
        if (mark.origin() != null && view.tree().contains(mark.origin())) {
          String id = PictureLayout.id(picture, look.look(), view.tree().line(mark.origin()) + 1);
          if (done.add(id)) {
            places.add(new ShapePlace(id, view.place(mark.origin())));
          }
        }
      }
    }
    return places;
  }
}
