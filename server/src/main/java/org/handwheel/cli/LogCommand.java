package org.handwheel.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.handwheel.files.TextFile;
import org.handwheel.files.WorkspaceLoader;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Workspace;
import org.handwheel.plan.log.LogLine;
import org.handwheel.rules.Checked;
import org.handwheel.rules.Checker;
import org.handwheel.shop.StandardTables;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Severity;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code handwheel log}: what was measured, written into the plan's log. */
@Command(
    name = "log",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Writes what was measured into the log of a plan, and touches nothing else.",
      "What follows a reading is counted from it: see `handwheel sheet --piece`."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel log bearing-block.plan four height 21.24 --with mic25",
      "  handwheel log block.plan four height 21.24 21.25 --with mic25 --piece \"the second\"",
      "",
      "A reading that the plan cannot take is refused, and so is a file that changed",
      "meanwhile."
    })
final class LogCommand implements Callable<Integer> {
  private final Surroundings surroundings;
  private final Output output;

  @Parameters(index = "0", paramLabel = "PLAN", description = "The plan's file.")
  private String plan = "";

  @Parameters(index = "1", paramLabel = "SETUP", description = "The setup's name.")
  private String setup = "";

  @Parameters(
      index = "2",
      paramLabel = "length|width|height",
      description = "The size that was measured.")
  private PartDimension dimension = PartDimension.LENGTH;

  @Parameters(
      index = "3..*",
      arity = "1..*",
      paramLabel = "SIZE",
      description =
          "What was read, once or in several places; a bare number is in the plan's unit.")
  private List<String> sizes = List.of();

  @Option(
      names = "--with",
      required = true,
      paramLabel = "INSTRUMENT",
      description = "What it was measured with.")
  private String instrument = "";

  @Option(
      names = "--piece",
      paramLabel = "NAME",
      description = "The title of the piece's log. Default: the last log.")
  private @Nullable String piece;

  LogCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    OnePlan read = OnePlan.read(plan, surroundings);
    if (read.target().text() != null) {
      throw new UserException("a reading is written into a file; name one");
    }
    read.setup(setup);
    plain(setup);
    plain(instrument);
    sizes.forEach(this::plain);
    if (piece != null) {
      plain(piece);
    }
    Path file = read.target().root().file(read.target().path());
    SyntaxTree tree = read.checked().tree();
    LogLine line = new LogLine(piece, setup, dimension.word(), sizes, instrument);
    LogLine.Written written = line.in(tree, read.run().plan());
    refuse(read, written, line);
    if (!(TextFile.read(file) instanceof TextFile.Text now)
        || !now.text().equals(tree.source().text())) {
      throw new UserException(plan + ": the file changed meanwhile; nothing was written");
    }
    NewText.write(file, mark(file) + written.text(), NewText.Existing.REPLACE)
        .ifPresent(
            why -> {
              throw new UserException(plan + ": " + why);
            });
    output.line(output.glyphs().show(line.line()));
    return Handwheel.EXIT_CLEAN;
  }

  /** One word or title of one line: nothing that would begin another line, comment or text. */
  private void plain(String word) {
    if (word.isBlank()
        || word.chars().anyMatch(c -> Character.isISOControl(c) || "#\"\\".indexOf(c) >= 0)) {
      throw new UserException(plan + ": this cannot stand in a reading: " + word.strip());
    }
  }

  /** The byte order mark the file begins with, if it does. */
  private String mark(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      byte[] first = in.readNBytes(3);
      boolean marked =
          first.length == 3
              && first[0] == (byte) 0xEF
              && first[1] == (byte) 0xBB
              && first[2] == (byte) 0xBF;
      return marked ? "\uFEFF" : "";
    } catch (IOException e) {
      throw new UserException(plan + ": it cannot be read");
    }
  }

  /** Says why the plan does not take the line, if it does not. */
  private void refuse(OnePlan read, LogLine.Written written, LogLine line) {
    String path = read.target().path();
    SyntaxTree tree = SyntaxTree.parse(path, written.text());
    Workspace workspace =
        new WorkspaceLoader(read.target().root(), surroundings.nanoClock())
            .load(List.of(path), Map.of(path, tree))
            .workspace();
    Checked checked = new Checker(StandardTables.builtIn()).check(workspace, path);
    int from = written.offset();
    int to = written.text().indexOf(line.line(), from) + line.line().length();
    for (Finding found : checked.findings()) {
      boolean here =
          found.severity() == Severity.ERROR
              && checked.tree().contains(found.origin())
              && checked.tree().start(found.origin()) >= from
              && checked.tree().start(found.origin()) <= to;
      if (here) {
        throw new UserException(plan + ": " + found.message());
      }
    }
    long before = read.run().plan().logs().stream().mapToLong(log -> log.readings().size()).sum();
    long after =
        checked.plan() == null
            ? 0
            : checked.plan().logs().stream().mapToLong(log -> log.readings().size()).sum();
    if (after != before + 1) {
      throw new UserException(
          plan + ": this is no reading: " + line.line().toLowerCase(Locale.ROOT));
    }
  }
}
