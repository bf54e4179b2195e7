package org.handwheel.ide.actions;

import java.util.List;
import org.handwheel.ide.View;
import org.handwheel.plan.draft.DraftProgress;
import org.handwheel.plan.draft.Drafted;
import org.handwheel.plan.draft.Drafter;
import org.handwheel.syntax.TextEdit;

/** Drafting the setups of a plan that has only its part and its stock. */
public final class Drafting {
  /** What the change is called: it puts one or the other at the end of the file. */
  public static final String TITLE = "Draft the setups, or say what is missing for them";

  private Drafting() {}

  /** Whether a draft may be asked for: cheap enough for every place in the file. */
  public static boolean isOffered(View view) {
    return view.plan() != null && Drafter.isBare(view.tree());
  }

  /** Works the draft out; may take a second or two. */
  public static Drafted draft(View view, DraftProgress progress) {
    return new Drafter(view.tables()).draft(view.workspace(), view.tree().path(), 1, progress);
  }

  /** The setups at the end of the file. */
  public static List<TextEdit> edits(View view, Drafted.Draft draft) {
    return atTheEnd(view, draft.added());
  }

  /** The setups at the end of the file, or comments that say what is missing. */
  public static List<TextEdit> editsOrReasons(View view, Drafted drafted) {
    if (drafted instanceof Drafted.Plans plans) {
      return edits(view, plans.drafts().get(0));
    }
    StringBuilder text = new StringBuilder("\n# No setups can be drafted yet.  What is missing:\n");
    ((Drafted.Missing) drafted)
        .missing()
        .forEach(sentence -> text.append("# - ").append(sentence).append('\n'));
    return atTheEnd(view, text.toString());
  }

  private static List<TextEdit> atTheEnd(View view, String added) {
    String text = view.tree().source().text();
    int end = text.stripTrailing().length();
    String lineEnd = text.contains("\r\n") ? "\r\n" : "\n";
    return List.of(new TextEdit(end, text.length(), ("\n" + added).replace("\n", lineEnd)));
  }
}
