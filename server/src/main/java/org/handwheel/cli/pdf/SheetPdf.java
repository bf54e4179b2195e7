package org.handwheel.cli.pdf;

import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.RenderingContext;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.zip.CRC32;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts.FontName;
import org.handwheel.plan.picture.Drawing;
import org.handwheel.plan.sheet.HtmlSheet;
import org.handwheel.plan.sheet.Sheet;
import org.handwheel.plan.sheet.Sheet.SetupPage;
import org.handwheel.plan.sheet.SheetLook;
import org.handwheel.units.UnitChoice;
import org.jsoup.helper.W3CDom;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.w3c.dom.Node;

/** A sheet as a PDF file: what the HTML file shows on paper, with the same words and sizes. */
public final class SheetPdf {
  /** How wide a picture is on paper, in millimetres. */
  private static final double PICTURE = 120;

  /** A pixel of a style sheet is the 96th part of an inch (CSS Values and Units). */
  private static final double PIXELS_PER_MM = 96 / 25.4;

  private final Map<String, Drawing> drawings = new HashMap<>();

  private SheetPdf(Sheet sheet, UnitChoice units) {
    for (SetupPage setup : sheet.setups()) {
      if (setup.drawing() != null) {
        drawings.put(setup.drawing().key(), setup.drawing().in(units));
      }
    }
  }

  /** The whole file; the same bytes for the same sheet. */
  public static byte[] of(Sheet sheet, SheetLook look) {
    Document page = HtmlSheet.document(sheet, look);
    PaperForm.apply(page);
    try {
      return new SheetPdf(sheet, look.units()).make(page, HtmlSheet.title(sheet));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private byte[] make(Document page, String title) throws IOException {
    for (Element svg : page.select(".views > svg")) {
      String key = svg.attr("aria-labelledby").replaceFirst("-title.*", "");
      Drawing drawing = drawings.get(key);
      if (drawing != null) {
        double high = PICTURE * drawing.height() / drawing.width();
        svg.attr("alt", String.join(". ", svg.select("> title, > desc").eachText()));
        svg.empty();
        svg.attr("data-key", key);
        svg.attr("style", String.format(Locale.ROOT, "width:%.2fmm;height:%.2fmm", PICTURE, high));
      }
    }
    XRLog.setLoggingEnabled(false);
    Fonts.keepToOwn();
    try (Pictures pictures = new Pictures();
        PdfBoxRenderer renderer =
            new PdfRendererBuilder()
                .withW3cDocument(new W3CDom().fromJsoup(page), "")
                .useSVGDrawer(pictures)
                .useFont(helvetica(FontName.HELVETICA), "Helvetica", 400, FontStyle.NORMAL, false)
                .useFont(
                    helvetica(FontName.HELVETICA_BOLD), "Helvetica", 700, FontStyle.NORMAL, false)
                .useFont(Fonts::liberation, "Liberation Sans", 400, FontStyle.NORMAL, true)
                .usePdfUaAccessibility(true)
                .useReplacementText("?")
                .useExternalResourceAccessControl(
                    (uri, type) -> false, ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI)
                .withProducer("Handwheel")
                .buildPdfRenderer()) {
      renderer.layout();
      renderer.createPDFWithoutClosing();
      PDDocument file = renderer.getPdfDocument();
      PDDocumentInformation about = new PDDocumentInformation();
      about.setTitle(title);
      about.setProducer("Handwheel");
      file.setDocumentInformation(about);
      // It is tagged for screen readers, but its letters are not all in it, as PDF/UA would have
      // it:
      // so it does not claim to be that.
      file.getDocumentCatalog().setMetadata(null);
      file.getDocumentCatalog().setLanguage("en");
      CRC32 number = new CRC32();
      number.update(page.outerHtml().getBytes(StandardCharsets.UTF_8));
      file.setDocumentId(number.getValue());
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      file.save(out);
      return out.toByteArray();
    }
  }

  private static PDFontSupplier helvetica(FontName name) {
    return new PDFontSupplier(new PDType1Font(name));
  }

  /** Draws the pictures where the page has them. */
  private final class Pictures implements SVGDrawer {
    @Override
    public SVGImage buildSVGImage(
        org.w3c.dom.Element svg,
        Box box,
        CssContext css,
        double cssWidth,
        double cssHeight,
        double dotsPerPixel) {
      Node key = svg.getAttributes().getNamedItem("data-key");
      Drawing drawing = key == null ? null : drawings.get(key.getNodeValue());
      if (drawing == null) {
        throw new IllegalStateException("a picture that is not of this sheet");
      }
      return new Picture(drawing, PICTURE * PIXELS_PER_MM * dotsPerPixel);
    }

    @Override
    public void importFontFaceRules(List<FontFaceRule> rules, SharedContext context) {}

    @Override
    public void addFontFile(File file, String family, Integer weight, FontStyle style) {}

    @Override
    public void close() {}
  }

  /** A picture, so many units of the page wide. */
  private record Picture(Drawing drawing, double width) implements SVGDrawer.SVGImage {
    @Override
    public int getIntrinsicWidth() {
      return (int) Math.round(width);
    }

    @Override
    public int getIntrinsicHeight() {
      return (int) Math.round(width * drawing.height() / drawing.width());
    }

    @Override
    public void drawSVG(OutputDevice device, RenderingContext context, double x, double y) {
      new DrawingPainter(device, context, x, y, width / drawing.width()).draw(drawing);
    }
  }
}
