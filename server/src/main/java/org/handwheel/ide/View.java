package org.handwheel.ide;

import org.handwheel.model.Plan;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.work.PlanRun;
import org.jspecify.annotations.Nullable;

/**
 * One consistent state of a file and all it rests on; what every editor feature looks at.
 *
 * @param workspace the file and the files it uses
 * @param checked the file checked, with the plan worked through
 */
public record View(Workspace workspace, Checked checked, StandardTables tables) {
  public SyntaxTree tree() {
    return checked.tree();
  }

  public @Nullable Plan plan() {
    return checked.plan();
  }

  public @Nullable PlanRun run() {
    return checked.run();
  }

  /** The place of an origin in whichever file of the workspace it is in. */
  public Place place(Origin origin) {
    String path = origin.section().path();
    SyntaxTree tree =
        tree().contains(origin)
            ? tree()
            : workspace.file(path).filter(t -> t.contains(origin)).orElse(tree());
    if (!tree.contains(origin)) {
      return new Place(path, 0, 0);
    }
    return new Place(path, tree.start(origin), tree.end(origin));
  }

  /** A range of a file by offsets in UTF-16 units. */
  public record Place(String path, int start, int end) {}
}
