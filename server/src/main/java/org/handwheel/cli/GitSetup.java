package org.handwheel.cli;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.handwheel.syntax.SectionKind;

/**
 * What git has to be told about plans: attributes, which are committed, and configuration, which
 * each clone has for itself.
 */
final class GitSetup {
  static final String DRIVER = "handwheel";

  private static final String BEGIN = "# begin handwheel git-setup";
  private static final String END = "# end handwheel git-setup";

  /** Behind the begin mark where the text before had no end of line, to put it back as it was. */
  private static final String JOINED = ", the line above had no end";

  private static final String UNITS = "mm|in|thou|tenths?|um|uin|rpm|deg";

  private GitSetup() {}

  /** What is wanted beside hunk headers, words and normal forms. */
  enum Extra {
    /** {@code git diff} shows what {@code handwheel diff} says. */
    DIFF_COMMAND,
    /** {@code git merge} asks {@code handwheel merge-driver} about conflicts. */
    MERGE_DRIVER
  }

  /** Lines for {@code .gitattributes}. */
  static List<String> attributes(List<Extra> extras) {
    String merge = extras.contains(Extra.MERGE_DRIVER) ? " merge=" + DRIVER : "";
    return List.of("*.plan diff=" + DRIVER + merge, "*.shop diff=" + DRIVER + merge);
  }

  /**
   * Configuration by its keys.
   *
   * @param command how the shell starts Handwheel
   * @param git the git they are for
   */
  static Map<String, String> configuration(String command, List<Extra> extras, GitVersion git) {
    Map<String, String> keys = new LinkedHashMap<>();
    keys.put("diff." + DRIVER + ".xfuncname", functionName());
    keys.put("diff." + DRIVER + ".wordRegex", words());
    keys.put("diff." + DRIVER + ".textconv", command + " git-textconv");
    if (extras.contains(Extra.DIFF_COMMAND)) {
      keys.put(
          "diff." + DRIVER + ".command",
          command + " git-diff-driver" + (git.trustsExitCodes() ? " --exit-code" : ""));
      if (git.trustsExitCodes()) {
        keys.put("diff." + DRIVER + ".trustExitCode", "true");
      }
    }
    if (extras.contains(Extra.MERGE_DRIVER)) {
      keys.put("merge." + DRIVER + ".name", "plans and shop files by statement");
      keys.put(
          "merge." + DRIVER + ".driver",
          command + " merge-driver %O %A %B %L %P" + (git.labelsMerges() ? " %S %X %Y" : ""));
    }
    return keys;
  }

  /** The line over a hunk: the header of its section. */
  private static String functionName() {
    String headers =
        Arrays.stream(SectionKind.values())
            .filter(kind -> kind != SectionKind.PREAMBLE)
            .map(SectionKind::word)
            .collect(Collectors.joining("|"));
    return "^[[:blank:]]*((" + headers + ")([[:blank:]].*)?)$";
  }

  /** Words of {@code --word-diff}: a number with its unit, a title, a name, any other sign. */
  private static String words() {
    String number = "[0-9]+(-[0-9]+/[0-9]+|/[0-9]+|\\.[0-9]+)?";
    return number
        + "([[:blank:]]*("
        + UNITS
        + "))?|\"[^\"]*\"|[[:alpha:]_][[:alnum:]_]*(-[[:alnum:]_]+)*|[^[:space:]]";
  }

  /** The attributes file with our lines in place of those of before, or at its end. */
  static String with(String file, List<String> lines) {
    String without = without(file);
    boolean joined = !without.isEmpty() && !without.endsWith("\n");
    StringBuilder text = new StringBuilder(without);
    if (joined) {
      text.append('\n');
    }
    text.append(BEGIN).append(joined ? JOINED : "").append('\n');
    lines.forEach(line -> text.append(line).append('\n'));
    return text.append(END).append('\n').toString();
  }

  /** The attributes file as it would be without our lines. */
  static String without(String file) {
    int begin = file.startsWith(BEGIN) ? 0 : file.indexOf("\n" + BEGIN) + 1;
    int end = file.indexOf(END + "\n", begin);
    if (end < 0 || !file.startsWith(BEGIN, begin)) {
      return file;
    }
    boolean joined = file.startsWith(BEGIN + JOINED, begin);
    return file.substring(0, joined ? begin - 1 : begin) + file.substring(end + END.length() + 1);
  }
}
