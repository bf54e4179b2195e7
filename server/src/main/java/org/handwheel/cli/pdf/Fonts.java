package org.handwheel.cli.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;
import org.jspecify.annotations.Nullable;

/**
 * The fonts of a PDF file: Helvetica, which every program that shows PDF has, and for letters that
 * it lacks Liberation Sans, which has the same widths and comes with the library. Fonts of the
 * computer are not looked at, so that a sheet is the same on each.
 */
final class Fonts {
  /** In the order they are tried for a letter. */
  static final List<String> FAMILIES = List.of("Helvetica", "Liberation Sans");

  private static final String LIBERATION =
      "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

  private Fonts() {}

  /** Liberation Sans as its file. */
  static InputStream liberation() {
    InputStream in = PDDocument.class.getResourceAsStream(LIBERATION);
    if (in == null) {
      throw new IllegalStateException("Liberation Sans is not packed");
    }
    return in;
  }

  /**
   * Keeps the library from searching the computer for fonts, which takes seconds and writes a list
   * of them into the home folder.
   */
  static void keepToOwn() {
    FontMappers.set(new OwnFonts());
  }

  private static final class OwnFonts implements FontMapper {
    private @Nullable TrueTypeFont font;

    private synchronized TrueTypeFont font() {
      TrueTypeFont known = font;
      if (known == null) {
        try (InputStream in = liberation()) {
          known = new TTFParser().parse(new RandomAccessReadBuffer(in));
        } catch (IOException e) {
          throw new UncheckedIOException(e);
        }
        font = known;
      }
      return known;
    }

    @Override
    public FontMapping<TrueTypeFont> getTrueTypeFont(
        String name, @Nullable PDFontDescriptor descriptor) {
      return new FontMapping<>(font(), false);
    }

    @Override
    public FontMapping<FontBoxFont> getFontBoxFont(
        String name, @Nullable PDFontDescriptor descriptor) {
      return new FontMapping<>(font(), false);
    }

    @Override
    public @Nullable CIDFontMapping getCIDFont(
        String name, @Nullable PDFontDescriptor descriptor, @Nullable PDCIDSystemInfo info) {
      return new CIDFontMapping(null, font(), false);
    }
  }
}
