package org.handwheel.syntax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** Lines of a text that changes between two places are found as in a text read anew. */
class SourceTextTests {
  private static final String CHARS = "ab\n\r\n\r ";

  @Property(tries = 2000)
  void changedTextHasTheSameLines(@ForAll long seed) {
    Random random = new Random(seed);
    SourceText text = new SourceText(any(random, 30));
    for (int i = 0; i < 10; i++) {
      int start = random.nextInt(text.length() + 1);
      int end = start + random.nextInt(text.length() - start + 1);
      String next = text.text().substring(0, start) + any(random, 4) + text.text().substring(end);
      text = text.changed(next, start, text.length() - end);
      SourceText anew = new SourceText(next);
      assertThat(text.lineCount()).isEqualTo(anew.lineCount());
      for (int line = 0; line < anew.lineCount(); line++) {
        assertThat(text.lineStart(line)).isEqualTo(anew.lineStart(line));
      }
    }
  }

  private static String any(Random random, int most) {
    StringBuilder text = new StringBuilder();
    int length = random.nextInt(most + 1);
    for (int i = 0; i < length; i++) {
      text.append(CHARS.charAt(random.nextInt(CHARS.length())));
    }
    return text.toString();
  }
}
