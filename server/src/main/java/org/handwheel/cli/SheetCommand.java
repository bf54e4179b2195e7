package org.handwheel.cli;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.Callable;
import org.handwheel.cli.Surroundings.Screen;
import org.handwheel.cli.pdf.SheetPdf;
import org.handwheel.model.LogSection;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.sheet.HtmlSheet;
import org.handwheel.plan.sheet.Paper;
import org.handwheel.plan.sheet.Sheet;
import org.handwheel.plan.sheet.SheetLook;
import org.handwheel.plan.sheet.Sheets;
import org.handwheel.shop.StandardTables;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code handwheel sheet}: what to take to the machine, on paper or on a telephone. */
@Command(
    name = "sheet",
    mixinStandardHelpOptions = true,
    versionProvider = Handwheel.Version.class,
    sortOptions = false,
    description = {
      "Makes the sheet of a plan for the machine: tools, stock, and for each setup a picture"
          + " and steps to tick off, with turns and divisions, sizes and boxes to write in;"
          + " then the inspection.",
      "One HTML file that needs nothing else, to print or to take along on a telephone; or a PDF"
          + " file. Several plans, or folders, make a file each in a folder."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  handwheel sheet bearing-block.plan -o block.html",
      "  handwheel sheet bearing-block.plan -o block.pdf --paper letter",
      "  handwheel sheet bearing-block.plan four > four.html",
      "  handwheel sheet . --format pdf -o printed",
      "  handwheel sheet bearing-block.plan --piece \"the first one\" -o first.html",
      "",
      "A sheet of a plan with findings says so on top. The machine maker's manual and",
      "local rules come first."
    })
final class SheetCommand implements Callable<Integer> {
  private final Surroundings surroundings;
  private final Output output;

  @Mixin private ManyPlans plans = new ManyPlans();

  @Option(
      names = "--format",
      paramLabel = "html|pdf",
      description = "What is made. Default: PDF for a FILE that ends in .pdf, else HTML.")
  private @Nullable Format format;

  @Option(
      names = "--paper",
      paramLabel = "a4|letter",
      description =
          "What it is printed on. Default: the project's setting; without one A4 for PDF, and for"
              + " HTML what the printer has.")
  private @Nullable Paper paper;

  @Mixin private Drawn drawn = new Drawn();

  @Option(
      names = "--piece",
      paramLabel = "NAME",
      description = "Work with the readings of the log with this title.")
  private @Nullable String piece;

  SheetCommand(Surroundings surroundings, Output output) {
    this.surroundings = surroundings;
    this.output = output;
  }

  /** What a sheet is made as. */
  enum Format {
    HTML,
    PDF
  }

  @Override
  public Integer call() {
    Format made = format != null ? format : plans.isNamed(".pdf") ? Format.PDF : Format.HTML;
    if (made == Format.PDF && plans.isPrinted() && surroundings.screen() == Screen.TERMINAL) {
      throw new UserException("a PDF file is nothing for a terminal; name a file with -o");
    }
    return plans.run((plan, setup) -> make(plan, setup, made), output, surroundings);
  }

  private Map<String, byte[]> make(OnePlan plan, @Nullable String setup, Format made) {
    LogSection log = piece == null ? null : plan.log(piece);
    Projection projection = drawn.projection(plan, surroundings);
    Sheet sheet = new Sheets(StandardTables.builtIn(), projection).sheet(plan.checked(), log);
    if (setup != null) {
      sheet = sheet.only(plan.number(setup));
    }
    Paper on = paper != null ? paper : drawn.paper(plan, surroundings).orElse(null);
    return made == Format.HTML
        ? Map.of(
            ".html",
            HtmlSheet.of(sheet, new SheetLook(on, drawn.units())).getBytes(StandardCharsets.UTF_8))
        : Map.of(".pdf", pdf(sheet, new SheetLook(on == null ? Paper.A4 : on, drawn.units())));
  }

  private static byte[] pdf(Sheet sheet, SheetLook look) {
    try {
      return SheetPdf.of(sheet, look);
    } catch (NoClassDefFoundError e) {
      throw new UserException(
          "what makes PDF files is not there: handwheel-pdf.jar belongs beside handwheel.jar");
    }
  }
}
