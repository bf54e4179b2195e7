package org.handwheel.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The plans that a command makes files of, and where those go. */
final class ManyPlans {
  private static final String ENDING = ".plan";

  @Parameters(
      arity = "1..*",
      paramLabel = "PLAN",
      description =
          "A plan, and behind it one of its setups by name or number; or several plans and folders.")
  private List<String> arguments = List.of();

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "Write to this file, or into this folder. Default: print it.")
  private @Nullable String file;

  @Option(names = "--overwrite", description = "Replace files that are there already.")
  private boolean overwrite;

  /** Makes the file of one plan. */
  interface Maker {
    /**
     * The files of a plan.
     *
     * @param setup the setup that is asked for, as it was written; nothing for all
     * @return bytes by the ending of the file's name behind that of the plan
     */
    Map<String, byte[]> make(OnePlan plan, @Nullable String setup);
  }

  /** Whether a file is asked for whose name ends so. */
  boolean isNamed(String ending) {
    return file != null && file.toLowerCase(Locale.ROOT).endsWith(ending);
  }

  /** Whether files are put into a folder. */
  boolean isInto(Surroundings surroundings) {
    return file != null && Files.isDirectory(OnePlan.path(file, surroundings));
  }

  /** Whether what is made is printed. */
  boolean isPrinted() {
    return file == null;
  }

  /**
   * Makes and delivers all files.
   *
   * @return the exit code
   * @throws UserException if nothing can be made at all
   */
  int run(Maker maker, Output output, Surroundings surroundings) {
    boolean withSetup = arguments.size() == 2 && isSetup(arguments.get(1), surroundings);
    Path into = file == null ? null : OnePlan.path(file, surroundings);
    boolean toFolder = into != null && Files.isDirectory(into);
    boolean one =
        (arguments.size() == 1 || withSetup)
            && !Files.isDirectory(OnePlan.path(arguments.get(0), surroundings));
    if (one && !toFolder) {
      OnePlan plan = OnePlan.read(arguments.get(0), surroundings);
      deliver(only(maker.make(plan, withSetup ? arguments.get(1) : null)), output, into);
      return Handwheel.EXIT_CLEAN;
    }
    if (into == null || !toFolder) {
      throw new UserException(
          into == null
              ? "several files are made: name a folder for them with -o"
              : file + ": several files are made, and this is no folder that is there");
    }
    return all(
        new Batch(maker, output, surroundings, into, withSetup ? arguments.get(1) : null),
        one || withSetup ? arguments.subList(0, 1) : arguments);
  }

  private static boolean isSetup(String argument, Surroundings surroundings) {
    return !argument.toLowerCase(Locale.ROOT).endsWith(ENDING)
        && !Files.isDirectory(OnePlan.path(argument, surroundings));
  }

  private static byte[] only(Map<String, byte[]> made) {
    if (made.size() != 1) {
      throw new IllegalStateException("one plan makes " + made.size() + " files");
    }
    return made.values().iterator().next();
  }

  private void deliver(byte[] bytes, Output output, @Nullable Path into) {
    if (into == null) {
      output.bytes(bytes);
      return;
    }
    write(into, bytes)
        .ifPresent(
            why -> {
              throw new UserException(file + ": " + why);
            });
  }

  private Optional<String> write(Path to, byte[] bytes) {
    return NewText.write(to, bytes, overwrite ? NewText.Existing.REPLACE : NewText.Existing.KEEP)
        .map(why -> why + (why.equals(NewText.THERE) ? "; --overwrite replaces it" : ""));
  }

  /** What is the same for all plans of a run. */
  private record Batch(
      Maker maker, Output output, Surroundings surroundings, Path into, @Nullable String setup) {
    void trouble(String sentence) {
      output.trouble("handwheel: " + sentence);
    }
  }

  private int all(Batch batch, List<String> plans) {
    Surroundings surroundings = batch.surroundings();
    PathNames names = new PathNames(surroundings.workingDirectory());
    Targets targets =
        Targets.find(plans, null, "stdin.plan", ProjectFile.of(surroundings), surroundings);
    Set<Path> written = new HashSet<>();
    boolean failed = !targets.unreadable().isEmpty();
    try (Progress progress = Progress.on(batch.output(), surroundings)) {
      int done = 0;
      for (Targets.Target target : targets.targets()) {
        Path path = target.root().file(target.path());
        String shown = names.shown(path);
        progress.at(done++, targets.targets().size(), shown);
        try {
          one(batch, shown, to(batch.into(), path, plans, surroundings), written);
        } catch (UserException e) {
          progress.clear();
          batch.trouble(String.valueOf(e.getMessage()));
          failed = true;
        }
      }
    }
    targets.unreadable().entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(entry -> batch.trouble(names.shown(entry.getKey()) + ": " + entry.getValue()));
    return failed ? Handwheel.EXIT_TROUBLE : Handwheel.EXIT_CLEAN;
  }

  private void one(Batch batch, String plan, Path base, Set<Path> written) {
    OnePlan read = OnePlan.read(plan, batch.surroundings());
    Map<String, byte[]> made = batch.maker().make(read, batch.setup());
    for (Map.Entry<String, byte[]> entry : made.entrySet()) {
      Path to = base.resolveSibling(base.getFileName() + entry.getKey());
      if (!written.add(to)) {
        throw new UserException(plan + ": " + to.getFileName() + " was made of another plan");
      }
      folder(to);
      write(to, entry.getValue())
          .ifPresent(
              why -> {
                throw new UserException(plan + ": " + to.getFileName() + ": " + why);
              });
    }
  }

  private static void folder(Path to) {
    try {
      Files.createDirectories(to.toAbsolutePath().normalize().getParent());
    } catch (IOException e) {
      throw new UserException(to + ": its folder cannot be made");
    }
  }

  /** The file in the folder, without an ending: below it as the plan is below what was named. */
  private static Path to(Path into, Path plan, List<String> arguments, Surroundings surroundings) {
    Path below = plan.getFileName();
    for (String argument : arguments) {
      Path named = OnePlan.path(argument, surroundings);
      if (Files.isDirectory(named) && plan.startsWith(named)) {
        below = named.relativize(plan);
        break;
      }
    }
    String name = below.getFileName().toString();
    String stem =
        name.toLowerCase(Locale.ROOT).endsWith(ENDING)
            ? name.substring(0, name.length() - ENDING.length())
            : name;
    return into.resolve(below).resolveSibling(stem);
  }
}
