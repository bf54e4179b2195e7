package org.handwheel.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.handwheel.files.FolderSearch;
import org.handwheel.files.TextFile;
import org.handwheel.plan.format.Formatter;
import org.handwheel.syntax.SyntaxTree;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Puts plans and shop files into their usual form. */
@Command(
    name = "format",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Puts plans and shop files into their usual form, in place.",
      "Numbers, names, comments and the order of clauses stay as they are, and so does"
          + " every line that cannot be read."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel format",
      "  handwheel format --check plans",
      "  handwheel format --diff plans/bearing.plan",
      "  handwheel format - < draft.txt > plan.txt",
      "  handwheel format --check - --stdin-filename a.shop < a.shop",
      "",
      "Exit codes: 0 done, or nothing to do; 1 with --check or --diff: files are not",
      "in their usual form; 2 wrong usage, or a file that cannot be read or written."
    })
final class FormatCommand implements Callable<Integer> {
  private final Surroundings surroundings;
  private final Output output;
  private final Map<Path, String> trouble = new LinkedHashMap<>();

  @Parameters(
      paramLabel = "PATH",
      description =
          "Plans, shop files, folders (all *.plan and *.shop files below), or - for standard"
              + " input. Default: this folder.")
  private List<String> paths = List.of();

  @ArgGroup private Look look = new Look();

  /** What to do instead of writing; one of them at most. */
  static final class Look {
    @Option(names = "--check", description = "Only say which files are not in their usual form.")
    private boolean check;

    @Option(names = "--diff", description = "Only show what would change.")
    private boolean diff;
  }

  @Option(
      names = "--stdin-filename",
      paramLabel = "NAME",
      description = "The file that standard input stands for. Default: stdin.plan.")
  private String stdinName = "stdin.plan";

  FormatCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  @Override
  public Integer call() {
    PathNames names = new PathNames(surroundings.workingDirectory());
    ProjectFile project = ProjectFile.of(surroundings);
    boolean other = false;
    for (String argument : paths.isEmpty() ? List.of(".") : paths) {
      if (argument.equals("-")) {
        other |= formatInput(names);
      } else {
        for (Path file : files(path(argument), project)) {
          other |= formatFile(file, names);
        }
      }
    }
    trouble.forEach((file, why) -> output.trouble("handwheel: " + names.shown(file) + ": " + why));
    if (!trouble.isEmpty()) {
      return Handwheel.EXIT_TROUBLE;
    }
    return other && (look.check || look.diff) ? Handwheel.EXIT_FINDINGS : Handwheel.EXIT_CLEAN;
  }

  private Path path(String name) {
    try {
      return surroundings.workingDirectory().toAbsolutePath().resolve(name).normalize();
    } catch (InvalidPathException e) {
      throw new UserException(name + ": no file can have this name here");
    }
  }

  private List<Path> files(Path path, ProjectFile project) {
    if (!Files.isDirectory(path)) {
      boolean known =
          FolderSearch.hasEnding(path, ".plan")
              || FolderSearch.hasEnding(path, ".shop")
              || !Files.exists(path);
      if (!known) {
        trouble.put(path, "it is neither a plan (*.plan) nor a shop file (*.shop)");
        return List.of();
      }
      return List.of(path);
    }
    List<Path> files = new ArrayList<>();
    for (String ending : List.of(".plan", ".shop")) {
      try {
        FolderSearch.Found found = FolderSearch.endingIn(ending, path);
        trouble.putAll(found.unreadable());
        files.addAll(project.left(path, found.files()));
      } catch (IOException e) {
        trouble.put(path, "the folder cannot be read");
      }
    }
    if (files.isEmpty() && trouble.isEmpty()) {
      trouble.put(path, "there is no plan (*.plan) or shop file (*.shop) in this folder");
    }
    return files;
  }

  private boolean formatInput(PathNames names) {
    String name = names.shown(path(stdinName));
    String text = read(surroundings.in());
    String formatted = Formatter.format(SyntaxTree.parse(name, text));
    if (look.diff) {
      output.lines(LineDiff.of(name, text, formatted));
    } else if (!look.check) {
      output.text(formatted);
    } else if (!formatted.equals(text)) {
      output.line(name);
    }
    return !formatted.equals(text);
  }

  private static String read(InputStream in) {
    try {
      TextFile.Result result = TextFile.read(in);
      if (result instanceof TextFile.Refused refused) {
        throw new UserException("standard input: " + refused.reason());
      }
      return ((TextFile.Text) result).text();
    } catch (IOException e) {
      throw new UserException("standard input cannot be read: " + e.getMessage());
    }
  }

  /** Formats one file; says whether it was not in its usual form. */
  private boolean formatFile(Path file, PathNames names) {
    TextFile.Result result = TextFile.read(file);
    if (result instanceof TextFile.Refused refused) {
      trouble.put(file, refused.reason());
      return false;
    }
    String text = ((TextFile.Text) result).text();
    String formatted = Formatter.format(SyntaxTree.parse(names.shown(file), text));
    if (formatted.equals(text)) {
      return false;
    }
    if (look.diff) {
      output.lines(LineDiff.of(names.shown(file), text, formatted));
    } else if (look.check) {
      output.line(names.shown(file));
    } else {
      NewText.change(file, text, formatted).ifPresent(why -> trouble.put(file, why));
    }
    return true;
  }
}
