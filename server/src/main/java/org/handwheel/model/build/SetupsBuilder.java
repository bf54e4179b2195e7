package org.handwheel.model.build;

import java.util.ArrayList;
import java.util.List;
import org.handwheel.grammar.HandwheelParser.ContentContext;
import org.handwheel.grammar.HandwheelParser.HoldInViseLineContext;
import org.handwheel.grammar.HandwheelParser.HoldOnLineContext;
import org.handwheel.grammar.HandwheelParser.NoteLineContext;
import org.handwheel.grammar.HandwheelParser.SetupHeaderContext;
import org.handwheel.grammar.HandwheelParser.StatementContext;
import org.handwheel.model.Hold;
import org.handwheel.model.Located;
import org.handwheel.model.Names.Kind;
import org.handwheel.model.Part;
import org.handwheel.model.Setup;
import org.handwheel.model.Setup.Damage;
import org.handwheel.model.Shop;
import org.handwheel.model.Step;
import org.handwheel.syntax.Origin;
import org.handwheel.syntax.Section;
import org.handwheel.syntax.Severity;
import org.jspecify.annotations.Nullable;

/** Builds the setups: first their names, then their lines. */
final class SetupsBuilder {
  private final FileBuilder file;
  private final Resolver resolver;
  private final StepBuilder steps;
  private final EarlierSetups earlier;
  private final List<Setup> setups = new ArrayList<>();

  SetupsBuilder(FileBuilder file, Shop shop, @Nullable Part part, EarlierSetups earlier) {
    this.file = file;
    this.earlier = earlier;
    this.resolver = new Resolver(file, shop);
    this.steps = new StepBuilder(file, resolver, part);
  }

  List<Setup> setups() {
    return List.copyOf(setups);
  }

  /** Makes a setup's name known, so that a log may refer to it wherever it stands. */
  void declare(Section section) {
    Setup known = earlier.setupOf(section);
    Located<String> name = known == null ? name(section) : known.name();
    if (name != null) {
      file.names().declare(Kind.SETUP, name.value(), name.origin());
    }
  }

  private static @Nullable SetupHeaderContext header(Section section) {
    return !section.lines().isEmpty()
            && section.lines().get(0).header() instanceof SetupHeaderContext header
            && !section.isBroken(section.lines().get(0))
        ? header
        : null;
  }

  private static @Nullable Located<String> name(Section section) {
    SetupHeaderContext header = header(section);
    return header == null || header.name() == null
        ? null
        : new Located<>(header.name().getText(), section.origin(header.name()));
  }

  /** Reads a section, or takes over what an earlier reading of it came to. */
  void read(Section section) {
    SetupRead known = earlier.find(section);
    if (known != null) {
      file.problems().addAll(known.findings());
      file.names().addUses(known.uses());
      setups.add(known.setup());
      return;
    }
    SetupGround ground = earlier.ground();
    int commonBefore = file.commonLines();
    int problemsBefore = file.problems().count();
    int usesBefore = file.names().useCount();
    file.names().watchDoubts();
    Setup setup = readAnew(section);
    setups.add(setup);
    // A setup that says something to the lines after it, or whose units are unknown, which is
    // reported once a file, is read each time.
    if (commonBefore == file.commonLines() && ground.units() != null) {
      SetupRead.Doubts doubts =
          file.names().wereDoubtsAsked() ? SetupRead.Doubts.ASKED : SetupRead.Doubts.NOT_ASKED;
      earlier.keep(
          section,
          new SetupRead(
              ground,
              doubts,
              setup,
              file.names().usesFrom(usesBefore),
              file.problems().from(problemsBefore)));
    }
  }

  private Setup readAnew(Section section) {
    int problemsBefore = file.problems().count();
    int missingBefore = resolver.missing();
    boolean incomplete = false;
    Hold hold = null;
    @Nullable Origin heldBy = null;
    int stepsBeforeHold = 0;
    List<Step> built = new ArrayList<>();
    for (ContentContext line : section.lines()) {
      if (section.isBroken(line) || line.statement() == null) {
        continue;
      }
      StatementContext statement = line.statement();
      if (statement instanceof HoldInViseLineContext || statement instanceof HoldOnLineContext) {
        if (heldBy != null) {
          file.problems()
              .repeated(
                  "repeated-line",
                  section.origin(statement),
                  "a setup holds the work once; begin a new setup to hold it another way",
                  heldBy);
          continue;
        }
        heldBy = section.origin(statement);
        stepsBeforeHold = built.size();
        if (!built.isEmpty() && built.stream().anyMatch(Step.Cut.class::isInstance)) {
          file.problems()
              .error(
                  "misplaced-line",
                  section.origin(statement),
                  "hold the work before the first cut of the setup");
        }
        HoldBuilder builder = new HoldBuilder(file, resolver, section);
        hold =
            statement instanceof HoldInViseLineContext inVise
                ? builder.inVise(inVise)
                : builder.onPlate((HoldOnLineContext) statement);
        incomplete |= hold == null;
      } else if (statement instanceof NoteLineContext note) {
        built.add(new Step.Note(section.origin(note), FileBuilder.unquote(note.text())));
      } else if (!file.readCommon(section, line)) {
        Step step = steps.build(section, line);
        incomplete |= step == null;
        if (step != null) {
          built.add(step);
        }
      }
    }
    if (heldBy == null && section.problems().isEmpty()) {
      file.problems()
          .error(
              "missing-line",
              section.header(),
              "say how the work is held: `hold in VISE, up FACE, fixed FACE, on pair PARALLELS`");
    }
    SetupHeaderContext header = header(section);
    boolean damaged =
        incomplete
            || resolver.missing() > missingBefore
            || !section.problems().isEmpty()
            || file.problems().from(problemsBefore).stream()
                .anyMatch(finding -> finding.severity() == Severity.ERROR);
    return new Setup(
        name(section),
        header == null ? "" : FileBuilder.unquote(header.title()),
        section.header(),
        hold,
        built,
        stepsBeforeHold,
        damaged ? Damage.SOME : Damage.NONE);
  }
}
