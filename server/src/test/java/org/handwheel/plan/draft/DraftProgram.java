package org.handwheel.plan.draft;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.handwheel.files.WorkspaceLoader;
import org.handwheel.files.WorkspaceRoot;
import org.handwheel.model.Workspace;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.SyntaxTree;

final class DraftProgram {
  public static void main(String[] args) throws Exception {
    for (String arg : args) {
      Path file = Path.of(arg).toAbsolutePath();
      WorkspaceRoot root = WorkspaceRoot.of(file, file.getParent());
      Workspace ws =
          new WorkspaceLoader(root, System::nanoTime)
              .load(List.of(root.workspacePath(file)), Map.of())
              .workspace();
      String path = root.workspacePath(file);
      SyntaxTree bare = SyntaxTree.parse(path, Drafter.bareText(ws.file(path).get()));
      Map<String, SyntaxTree> files = new HashMap<>(ws.files());
      files.put(path, bare);
      int[] n = {0};
      long t = System.nanoTime();
      Drafted d =
          new Drafter(StandardTables.builtIn())
              .draft(new Workspace(files, ws.unreadable()), path, 1, c -> n[0] = c);
      System.out.println(
          "#### "
              + file.getFileName()
              + " checks "
              + n[0]
              + " ms "
              + (System.nanoTime() - t) / 1_000_000);
      if (d instanceof Drafted.Plans p)
        System.out.println(
            "cost "
                + p.drafts().get(0).cost()
                + " leftOut "
                + p.drafts().get(0).leftOut()
                + p.drafts().get(0).added());
      else System.out.println("MISSING " + String.join("\n   ", ((Drafted.Missing) d).missing()));
    }
  }
}
