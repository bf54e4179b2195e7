package org.handwheel.ide.complete;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.handwheel.ide.View;
import org.handwheel.syntax.SourceText;
import org.jspecify.annotations.Nullable;

/**
 * A drill or a thread that is half written before the cursor. Their names have blanks, strokes and
 * points inside ({@code no 7}, {@code 1/4}, {@code UNC 1/4-20}), so they are no words of the text.
 *
 * @param start where it starts in the file
 * @param end the cursor
 */
record SizeWord(int start, int end) {
  private static final Pattern DRILL =
      Pattern.compile(
          "(?i)(?<=[\\s,])(no\\s+\\d*|letter\\s+[a-z]?|\\d+(-\\d*(/\\d*)?|/\\d*)?( in)?|\\d*\\.\\d*)$");
  private static final Pattern THREAD =
      Pattern.compile(
          "(?i)(?<=[\\s,])((unc|unf|me|bsw|bsf|bsp|ba)\\s+[\\w/-]*|un[cf]\\s+no\\s+[\\d-]*"
              + "|m\\d[\\d.x]*)$");

  /** The drill that ends at an offset; null if none does. */
  static @Nullable SizeWord drill(View view, int offset) {
    return before(DRILL, view, offset);
  }

  /** The thread that ends at an offset; null if none does. */
  static @Nullable SizeWord thread(View view, int offset) {
    return before(THREAD, view, offset);
  }

  private static @Nullable SizeWord before(Pattern pattern, View view, int offset) {
    SourceText source = view.tree().source();
    int line = source.lineStart(source.lineAt(offset));
    Matcher matcher = pattern.matcher(source.text()).region(line, offset);
    matcher.useTransparentBounds(true);
    return matcher.find() ? new SizeWord(matcher.start(1), offset) : null;
  }
}
