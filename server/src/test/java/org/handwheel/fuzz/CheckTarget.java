package org.handwheel.fuzz;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.handwheel.model.Workspace;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.SyntaxTree;

/**
 * A target for a fuzzer that is led by coverage: a text is parsed and checked, then edited at a
 * place, and going on from what was known must find what starting anew finds. The first byte says
 * whether it is a plan or a shop; the next three say what to take out and where.
 */
public final class CheckTarget {
  private static final Checker CHECKER = new Checker(StandardTables.builtIn());
  private static final SyntaxTree SHOP = FuzzTexts.shop();

  private CheckTarget() {}

  /** One input of the fuzzer; throws if something is wrong. */
  public static void fuzzerTestOneInput(byte[] data) {
    if (data.length < 4) {
      return;
    }
    String path = (data[0] & 1) == 0 ? "a.plan" : "a.shop";
    String text = FuzzTexts.text(data, 4, data.length);
    int at = Math.min(text.length(), (data[1] & 0xFF) * 256 + (data[2] & 0xFF));
    int end = Math.min(text.length(), at + (data[3] & 0x0F));
    SyntaxTree tree = SyntaxTree.parse(path, text);
    if (!tree.source().text().equals(text)) {
      throw new AssertionError("the text was changed");
    }
    Checked first = CHECKER.check(workspace(tree), path);
    String edited = text.substring(0, at) + text.substring(end);
    SyntaxTree next = tree.update(edited);
    List<String> goneOn = words(CHECKER.check(workspace(next), path, first));
    SyntaxTree anew = SyntaxTree.parse(path, edited);
    List<String> fresh = words(CHECKER.check(workspace(anew), path));
    if (!goneOn.equals(fresh)) {
      throw new AssertionError("going on: " + goneOn + "\nanew: " + fresh);
    }
  }

  private static Workspace workspace(SyntaxTree tree) {
    TreeMap<String, SyntaxTree> files = new TreeMap<>();
    files.put(SHOP.path(), SHOP);
    files.put(tree.path(), tree);
    return new Workspace(files, Map.of());
  }

  private static List<String> words(Checked checked) {
    return checked.findings().stream().map(finding -> words(checked.tree(), finding)).toList();
  }

  private static String words(SyntaxTree tree, Finding finding) {
    boolean here = tree.contains(finding.origin());
    return finding.rule()
        + " "
        + finding.severity()
        + " "
        + (here ? tree.start(finding.origin()) + "-" + tree.end(finding.origin()) : "elsewhere")
        + " "
        + finding.message();
  }
}
