package org.handwheel.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.handwheel.cli.pdf.SheetPdf;
import org.handwheel.plan.picture.Projection;
import org.handwheel.plan.sheet.HtmlSheet;
import org.handwheel.plan.sheet.Paper;
import org.handwheel.plan.sheet.Sheet;
import org.handwheel.plan.sheet.SheetLook;
import org.handwheel.plan.sheet.Sheets;
import org.handwheel.shop.StandardTables;
import org.handwheel.units.UnitChoice;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Sheets as PDF files, read with the library's own reader. */
class SheetPdfExampleTests {
  private static final SheetLook A4 = new SheetLook(Paper.A4, UnitChoice.BOTH);

  /** Printers leave about so much of a sheet white, in points: 5 mm; common practice, no source. */
  private static final float WHITE = 14;

  static Stream<String> plans() {
    return ExampleFiles.texts().keySet().stream()
        .filter(path -> path.endsWith(".plan") && !path.contains("mistakes/"))
        .sorted();
  }

  private static Sheet sheet(String path, String text) {
    return new Sheets(StandardTables.builtIn(), Projection.FIRST)
        .sheet(ExampleFiles.check(path, text), null);
  }

  private static Sheet sheet(String path) {
    return sheet(path, ExampleFiles.text(path));
  }

  private static String squeezed(String text) {
    return text.replaceAll("\\s+", "");
  }

  private static String text(PDDocument file) throws IOException {
    PDFTextStripper stripper = new PDFTextStripper();
    stripper.setSortByPosition(false);
    return squeezed(stripper.getText(file));
  }

  @ParameterizedTest
  @MethodSource("plans")
  void whatTheHtmlSheetSaysIsOnThePdf(String path) throws IOException {
    Sheet sheet = sheet(path);
    Document page = HtmlSheet.document(sheet, A4);
    try (PDDocument file = Loader.loadPDF(SheetPdf.of(sheet, A4))) {
      String text = text(file);
      List<Element> said =
          page.select(
              "h1, h2, h3, caption, .action bdi, .size, .limits, .stop, dt, dd, .tools bdi,"
                  + " figcaption li, td:not(:has(input)), td.result label, .care li");
      assertThat(said).hasSizeGreaterThan(100);
      for (Element element : said) {
        assertThat(text).contains(squeezed(element.text()));
      }
      for (Element words : page.select("svg text")) {
        assertThat(text).contains(squeezed(words.wholeText()));
      }
    }
  }

  @ParameterizedTest
  @MethodSource("plans")
  void nothingRunsOffAPageAndNoHeadingStandsAlone(String path) throws IOException {
    Sheet sheet = sheet(path);
    List<String> heads =
        HtmlSheet.document(sheet, A4).select("h2, h3, caption").eachText().stream()
            .map(SheetPdfExampleTests::squeezed)
            .toList();
    try (PDDocument file = Loader.loadPDF(SheetPdf.of(sheet, A4))) {
      for (int i = 0; i < file.getNumberOfPages(); i++) {
        Glyphs glyphs = new Glyphs(i + 1);
        glyphs.getText(file);
        PDRectangle box = file.getPage(i).getMediaBox();
        for (TextPosition glyph : glyphs.seen) {
          assertThat(glyph.getX()).isGreaterThan(WHITE);
          assertThat(glyph.getX() + glyph.getWidth()).isLessThan(box.getWidth() - WHITE);
          assertThat(glyph.getY() - glyph.getHeight()).isGreaterThan(WHITE);
          assertThat(glyph.getY()).isLessThan(box.getHeight() - WHITE);
        }
        String foot = squeezed("page " + (i + 1) + " of " + file.getNumberOfPages());
        assertThat(glyphs.lines).anyMatch(line -> line.contains(foot));
        assertThat(glyphs.lines)
            .anyMatch(line -> line.startsWith(squeezed(HtmlSheet.title(sheet))));
        assertThat(glyphs.lastAbove(box.getHeight() - 50)).isNotIn(heads);
      }
    }
  }

  /** What a screen reader is told: headings as such, tables with their heads, pictures in words. */
  @Test
  void aScreenReaderIsToldWhatIsWhat() throws IOException {
    Sheet sheet = sheet("bearing-block.plan");
    try (PDDocument file = Loader.loadPDF(SheetPdf.of(sheet, A4))) {
      List<PDStructureElement> elements = new ArrayList<>();
      collect(file.getDocumentCatalog().getStructureTreeRoot(), elements);
      Document page = HtmlSheet.document(sheet, A4);
      assertThat(ofType(elements, "H1")).hasSize(1);
      assertThat(ofType(elements, "H2")).hasSameSizeAs(page.select("h2"));
      assertThat(ofType(elements, "TH")).hasSameSizeAs(page.select("th"));
      assertThat(ofType(elements, "Figure"))
          .extracting(PDStructureElement::getAlternateDescription)
          .containsExactlyElementsOf(
              page.select(".views > svg").stream()
                  .map(svg -> svg.select("> title").text() + ". " + svg.select("> desc").text())
                  .toList())
          .hasSize(sheet.setups().size());
      assertThat(file.getDocumentCatalog().getMetadata()).isNull();
    }
  }

  private static List<PDStructureElement> ofType(List<PDStructureElement> all, String type) {
    return all.stream().filter(element -> type.equals(element.getStructureType())).toList();
  }

  private static void collect(PDStructureNode node, List<PDStructureElement> into) {
    for (Object kid : node.getKids()) {
      if (kid instanceof PDStructureElement element) {
        into.add(element);
        collect(element, into);
      }
    }
  }

  /** Where each letter of a page is. */
  private static final class Glyphs extends PDFTextStripper {
    private final List<TextPosition> seen = new ArrayList<>();
    private final List<String> lines = new ArrayList<>();
    private final List<Float> heights = new ArrayList<>();

    Glyphs(int page) {
      setStartPage(page);
      setEndPage(page);
      setSortByPosition(true);
    }

    @Override
    protected void writeString(String text, List<TextPosition> positions) {
      seen.addAll(positions);
      lines.add(squeezed(text));
      heights.add(positions.get(0).getY());
    }

    /** The lowest line that is higher on the page than this. */
    String lastAbove(float height) {
      int last = -1;
      for (int i = 0; i < lines.size(); i++) {
        if (heights.get(i) < height && (last < 0 || heights.get(i) >= heights.get(last))) {
          last = i;
        }
      }
      return lines.get(last);
    }
  }

  /** ISO 216: A4 is 210 mm by 297 mm; ASME Y14.1: size A is 8.5 in by 11 in. */
  @ParameterizedTest
  @CsvSource({"A4, 595.276, 841.890", "LETTER, 612, 792"})
  void pagesHaveTheSizeThatIsAskedFor(Paper paper, float width, float height) throws IOException {
    byte[] bytes = SheetPdf.of(sheet("boiler-flange.plan"), new SheetLook(paper, UnitChoice.BOTH));
    try (PDDocument file = Loader.loadPDF(bytes)) {
      for (PDPage page : file.getPages()) {
        assertThat(page.getMediaBox().getWidth()).isCloseTo(width, within(0.1f));
        assertThat(page.getMediaBox().getHeight()).isCloseTo(height, within(0.1f));
      }
    }
  }

  /** Eight setups took 24 pages of that size before. */
  @Test
  void eightSetupsFitOnSixteenPages() throws IOException {
    try (PDDocument file = Loader.loadPDF(SheetPdf.of(sheet("bearing-block.plan"), A4))) {
      assertThat(file.getNumberOfPages()).isLessThanOrEqualTo(16);
    }
  }

  @Test
  void theSameSheetGivesTheSameBytes() {
    byte[] first = SheetPdf.of(sheet("boiler-badge.plan"), A4);
    assertThat(SheetPdf.of(sheet("boiler-badge.plan"), A4)).isEqualTo(first);
  }

  @Test
  void noFontOfTheComputerIsLookedForAndNoListOfThemWritten(@TempDir Path folder)
      throws IOException {
    String before = System.setProperty("pdfbox.fontcache", folder.toString());
    try {
      byte[] bytes = SheetPdf.of(sheet("boiler-flange.plan"), A4);
      try (PDDocument file = Loader.loadPDF(bytes)) {
        for (PDPage page : file.getPages()) {
          page.getResources()
              .getFontNames()
              .forEach(
                  name -> {
                    try {
                      assertThat(page.getResources().getFont(name).getName())
                          .startsWith("Helvetica");
                    } catch (IOException e) {
                      throw new AssertionError(e);
                    }
                  });
        }
      }
      try (Stream<Path> written = Files.list(folder)) {
        assertThat(written).isEmpty();
      }
    } finally {
      if (before == null) {
        System.clearProperty("pdfbox.fontcache");
      } else {
        System.setProperty("pdfbox.fontcache", before);
      }
    }
  }

  /** Letters that Helvetica lacks come from an embedded font; what no font has is marked. */
  @Test
  void titlesMayHaveAnyLetters() throws IOException {
    String title =
        "\u0411\u043b\u043e\u043a \u00d812 \u00b10.1 90\u00b0 \u2192 \u2032 \u03b1 \u65e5\ud83d\ude42 ]]> <b>&amp;";
    String text =
        ExampleFiles.text("boiler-flange.plan")
            .replaceFirst("plan \"[^\"]*\"", "plan \"" + title + "\"");
    try (PDDocument file = Loader.loadPDF(SheetPdf.of(sheet("boiler-flange.plan", text), A4))) {
      assertThat(text(file))
          .contains(
              "\u0411\u043b\u043e\u043a\u00d812\u00b10.190\u00b0\u2192\u2032\u03b1", "]]><b>&amp;");
      assertThat(file.getDocumentInformation().getTitle()).contains("\u0411\u043b\u043e\u043a");
    }
  }

  @Test
  void sizesMayBeInOneUnit() throws IOException {
    Sheet sheet = sheet("boiler-flange.plan");
    try (PDDocument file =
        Loader.loadPDF(SheetPdf.of(sheet, new SheetLook(Paper.A4, UnitChoice.MM)))) {
      assertThat(text(file)).contains("60.00mm").doesNotContain("in)", "thou");
    }
    try (PDDocument file =
        Loader.loadPDF(SheetPdf.of(sheet, new SheetLook(Paper.A4, UnitChoice.INCH)))) {
      assertThat(text(file)).contains("2.3622in").doesNotContain("60.00mm");
    }
  }
}
