package org.handwheel.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.handwheel.model.Names;
import org.handwheel.model.Names.Declaration;
import org.handwheel.model.build.ShopFiles;
import org.handwheel.syntax.Origin;

/** The names of one file: what a name at a place stands for, and where else it is. */
final class NameIndex {
  private final Names names;

  NameIndex(Names names) {
    this.names = names;
  }

  static NameIndex of(View view) {
    return new NameIndex(namesOf(view));
  }

  /** The names of the file that is looked at. */
  static Names namesOf(View view) {
    return view.plan() != null ? view.plan().names() : ShopFiles.build(view.tree()).names();
  }

  /** What a name at a place stands for. */
  Optional<Declaration> at(Spot spot) {
    return use(spot)
        .map(Names.Use::declaration)
        .or(
            () ->
                names.declarations().stream()
                    .filter(declaration -> spot.isIn(declaration.origin()))
                    .findFirst());
  }

  private Optional<Names.Use> use(Spot spot) {
    return names.uses().stream().filter(use -> spot.isIn(use.origin())).findFirst();
  }

  /** The places of this file that use a declaration. */
  List<Origin> uses(Declaration declaration) {
    List<Origin> uses = new ArrayList<>();
    for (Names.Use use : names.uses()) {
      if (use.declaration().equals(declaration) && !uses.contains(use.origin())) {
        uses.add(use.origin());
      }
    }
    return uses;
  }
}
