package org.handwheel.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.handwheel.cli.GitRepository.Answer;
import org.handwheel.cli.GitSetup.Extra;
import org.handwheel.files.TextFile;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code handwheel git-setup}: prints how git is told about plans, and does it if asked. */
@Command(
    name = "git-setup",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Prints the lines for .gitattributes and the settings that make git show the setup over"
          + " each hunk, take numbers with their units as words, and leave formatting and units"
          + " out of its diffs.",
      "Writes only with --write; --undo takes away just what was written."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel git-setup",
      "  handwheel git-setup --write",
      "  handwheel git-setup --diff-command --command server/bin/handwheel --write",
      "  handwheel git-setup --undo",
      "",
      "Exit codes: 0 done, 2 wrong usage, no repository, or settings of another origin."
    })
final class GitSetupCommand implements Callable<Integer> {
  private final Surroundings surroundings;
  private final Output output;

  @Option(
      names = "--diff-command",
      description = "Have `git diff` show what `handwheel diff` says.")
  private boolean diffCommand;

  @Option(
      names = "--merge-driver",
      description = "Have `git merge` ask `handwheel merge-driver` about conflicts.")
  private boolean mergeDriver;

  @Option(
      names = "--command",
      paramLabel = "COMMAND",
      description = "How the shell starts Handwheel. Default: handwheel.")
  private String command = "handwheel";

  @ArgGroup private Act act = new Act();

  /** What to do beside printing; one of them at most. */
  static final class Act {
    @Option(names = "--write", description = "Write them into the repository here.")
    private boolean write;

    @Option(names = "--undo", description = "Take away what --write has written.")
    private boolean undo;
  }

  GitSetupCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    List<Extra> extras = new ArrayList<>();
    if (diffCommand) {
      extras.add(Extra.DIFF_COMMAND);
    }
    if (mergeDriver) {
      extras.add(Extra.MERGE_DRIVER);
    }
    Path here = surroundings.workingDirectory().toAbsolutePath();
    GitVersion git =
        GitVersion.of(GitRepository.run(here, surroundings, List.of("version")).text());
    Map<String, String> keys = GitSetup.configuration(command, extras, git);
    if (act.write) {
      write(GitRepository.of(here, surroundings), extras, keys);
    } else if (act.undo) {
      undo(GitRepository.of(here, surroundings));
    } else {
      print(extras, keys, git);
    }
    return Handwheel.EXIT_CLEAN;
  }

  private void print(List<Extra> extras, Map<String, String> keys, GitVersion git) {
    output.line("# In .gitattributes, to be committed:");
    output.lines(GitSetup.attributes(extras));
    output.line("");
    output.line("# Once in each clone:");
    keys.forEach((key, value) -> output.line("git config " + key + " " + quoted(value)));
    if (diffCommand && !git.trustsExitCodes()) {
      output.line("");
      output.line("# From git 2.46 on, --exit-code and trustExitCode are set, too: then");
      output.line("# `git diff --exit-code` is 0 where nothing is different for a machinist.");
    }
  }

  /** For the shell; inside quotes nothing but a quote means anything. */
  private static String quoted(String value) {
    return "'" + value.replace("'", "'\\''") + "'";
  }

  private void write(GitRepository repository, List<Extra> extras, Map<String, String> keys) {
    for (Map.Entry<String, String> entry : keys.entrySet()) {
      Answer answer = repository.run("config", "--local", "--get", entry.getKey());
      String there = answer.text().strip();
      if (answer.exitCode() == 0 && !there.equals(entry.getValue())) {
        throw new UserException(
            entry.getKey() + " is set to " + there + " already; handwheel git-setup --undo first");
      }
    }
    Path attributes = repository.top().resolve(".gitattributes");
    rewrite(attributes, GitSetup.with(read(attributes), GitSetup.attributes(extras)));
    keys.forEach(
        (key, value) -> {
          if (repository.run("config", "--local", key, value).exitCode() != 0) {
            throw new UserException("git config " + key + ": it cannot be set");
          }
        });
    output.line("written: .gitattributes and " + keys.size() + " settings of this clone");
  }

  private void undo(GitRepository repository) {
    Path attributes = repository.top().resolve(".gitattributes");
    String before = read(attributes);
    String after = GitSetup.without(before);
    if (!after.equals(before)) {
      if (after.isEmpty()) {
        try {
          Files.delete(attributes);
        } catch (IOException e) {
          throw new UserException(".gitattributes: it cannot be removed");
        }
      } else {
        rewrite(attributes, after);
      }
    }
    for (String section : List.of("diff", "merge")) {
      // Fails where there is no such section, and then there is nothing to undo.
      repository.run("config", "--local", "--remove-section", section + "." + GitSetup.DRIVER);
    }
    output.line("taken away: our lines of .gitattributes and the settings of this clone");
  }

  private static String read(Path file) {
    if (!Files.exists(file)) {
      return "";
    }
    TextFile.Result result = TextFile.read(file);
    if (result instanceof TextFile.Text text) {
      return text.text();
    }
    throw new UserException(".gitattributes: " + ((TextFile.Refused) result).reason());
  }

  private static void rewrite(Path file, String text) {
    NewText.write(file, text, NewText.Existing.REPLACE)
        .ifPresent(
            why -> {
              throw new UserException(".gitattributes: " + why);
            });
  }
}
