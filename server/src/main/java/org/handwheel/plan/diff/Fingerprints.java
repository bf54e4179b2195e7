package org.handwheel.plan.diff;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.SectionKind;

/**
 * Names for findings that stay the same while lines move, comments change, files are formatted or
 * the figures of a message change: made of the rule, the section, the words of the line, and which
 * of several such lines it is.
 */
public final class Fingerprints {
  private static final int LENGTH = 32;

  private Fingerprints() {}

  /** A fingerprint for each finding of one file, in their order. */
  public static List<String> of(List<Finding> findings) {
    Map<String, Integer> seen = new HashMap<>();
    List<String> prints = new ArrayList<>();
    for (Finding finding : findings) {
      Section section = finding.origin().section();
      String words =
          String.join(
              "\n",
              finding.rule(),
              name(section),
              PlanText.lineAround(finding.origin()).toLowerCase(Locale.ROOT));
      int count = seen.merge(words, 1, Integer::sum);
      prints.add(hash(words + "\n" + count));
    }
    return prints;
  }

  /** The kind of a section, and the name it has; what else its header says may change. */
  private static String name(Section section) {
    String kind = section.kind().word();
    if (section.kind() == SectionKind.PREAMBLE || section.kind() == SectionKind.PLAN) {
      return kind;
    }
    String header = PlanText.line(section.header()).toLowerCase(Locale.ROOT);
    int title = header.indexOf('"');
    return title < 0 ? header : header.substring(0, title).strip();
  }

  private static String hash(String text) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest).substring(0, LENGTH);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
