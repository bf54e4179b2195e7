package org.handwheel.plan.sheet;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The sheet's style sheet: black on white, large enough to be read at arm's length. */
final class Style {
  /** Lengths on paper are in points and millimetres, which every program that prints knows. */
  private static final String TEXT =
      """
      /* The sheet on a screen, on a telephone and on paper; black on white, readable at arm's length. */
      body { color: #000; background: #fff; font-family: Helvetica, Arial, "Liberation Sans", sans-serif; line-height: 1.35; }
      a { color: #000; text-decoration: underline; }
      table { border-collapse: collapse; width: 100%; }
      caption { text-align: left; font-weight: bold; }
      th, td { border: 1px solid #000; text-align: left; vertical-align: top; }
      td.n, th.n { text-align: right; white-space: nowrap; }
      tr.every td, tr.every th { border-bottom: 3px solid #000; }
      table.narrow { width: auto; }
      dl { margin: 0; }
      dt { font-weight: bold; }
      dd { margin: 0; }
      figure { margin: 0; }
      .tools ul, ol.steps { list-style: none; padding: 0; }
      ol.steps { margin: 0; }
      ol.steps > li { position: relative; border-top: 1px solid #000; }
      li .tick, .no { position: absolute; }
      .no, .action, .stop, .stops td { font-weight: bold; }
      .line { font-weight: normal; white-space: nowrap; }
      .one, table.narrow td { white-space: nowrap; }
      .warning h2 { border: 0; }
      fieldset { border: 0; margin: 0; padding: 0; }
      .result { white-space: nowrap; }
      legend { position: absolute; left: -9999px; }
      @media screen {
        html { font-size: 112.5%; }
        body { margin: 0 auto; padding: 0.6rem; max-width: 60rem; }
        h1 { font-size: 1.7rem; margin: 0.2rem 0; }
        h2 { font-size: 1.4rem; margin: 1.6rem 0 0.4rem; border-bottom: 3px solid #000; }
        h3 { font-size: 1.1rem; margin: 1rem 0 0.3rem; }
        p { margin: 0.3rem 0; }
        a:focus, input:focus { outline: 3px solid #000; outline-offset: 2px; }
        .skip { position: absolute; left: -99rem; }
        .skip:focus { position: static; }
        .under { margin: 0 0 0.6rem; }
        nav ul { margin: 0.3rem 0; padding-left: 1.2rem; }
        .warning { border: 3px solid #000; padding: 0.3rem 0.7rem; margin: 0.8rem 0; }
        .warning h2 { margin: 0.2rem 0; }
        .care { border-left: 8px solid #000; padding-left: 0.8rem; }
        table { margin: 0.3rem 0; }
        caption { padding: 0.2rem 0; }
        th, td { padding: 0.15rem 0.4rem; }
        .wide { overflow-x: auto; }
        .pair { display: flex; flex-wrap: wrap; gap: 0 1.2rem; }
        dl.facts { display: grid; grid-template-columns: max-content 1fr; gap: 0.1rem 0.8rem; }
        dl.facts > div { display: contents; }
        .tools ul { display: grid; grid-template-columns: repeat(auto-fill, minmax(20rem, 1fr)); gap: 0.3rem 1rem; margin: 0.3rem 0; }
        .tools li { padding-left: 2rem; position: relative; }
        .tools li input { position: absolute; left: 0; top: 0; }
        figure { display: flex; gap: 1rem; margin: 0.5rem 0; }
        .views { flex: 1 1 62%; }
        .views svg { display: block; width: 100%; height: auto; }
        figcaption { flex: 1 1 38%; font-size: 0.9rem; }
        figcaption ol { margin: 0; padding-left: 1.6rem; }
        ol.steps > li { padding: 0.5rem 0 0.5rem 4rem; }
        li .tick { left: 0; top: 0.55rem; }
        .no { left: 2.1rem; top: 0.5rem; }
        .line { font-size: 0.8rem; }
        .stop, .stops td { font-size: 1.25rem; }
        .expected { margin: 0.3rem 0; }
        input.box { width: 1.5rem; height: 1.5rem; margin: 0; border: 2px solid #000; }
        .one { display: inline-block; margin: 0 0.6rem 0.3rem 0; }
        .write input { font-size: 1.1rem; width: 9rem; border: 2px solid #000; padding: 0.2rem; }
        input.verdict { width: 1.4rem; height: 1.4rem; margin: 0 0.3rem 0 0; vertical-align: middle; }
        td input.write { width: 7rem; border: 0; border-bottom: 2px solid #000; font-size: 1rem; }
        fieldset label { margin-right: 0.8rem; }
      }
      @media screen and (max-width: 36rem) {
        dl.facts { display: block; }
        dl.facts > div { display: block; margin-bottom: 0.2rem; }
        dl.facts dt, dl.facts dd { display: inline; }
        .tools ul { display: block; }
        table.narrow { font-size: 0.85rem; }
        .tools li { margin-bottom: 0.4rem; min-height: 1.6rem; }
        figure { display: block; }
        .views { margin-bottom: 0.5rem; }
        ol.steps > li { padding-left: 3.7rem; }
        .no { left: 1.8rem; }
        th, td { padding: 0.1rem 0.25rem; }
      }
      @media print {
        body { margin: 0; padding: 0; font-size: 10.5pt; line-height: 1.25; }
        nav, .skip { display: none; }
        h1 { font-size: 18pt; margin: 0; }
        h2 { font-size: 14pt; margin: 0 0 1.5mm 0; border-bottom: 2pt solid #000; }
        h3 { font-size: 11.5pt; margin: 2.5mm 0 1mm 0; }
        h2, h3, caption { break-after: avoid; page-break-after: avoid; }
        p { margin: 0.7mm 0; }
        section { margin-top: 5mm; }
        .under { margin: 0 0 1.5mm 0; }
        .warning { border: 2pt solid #000; padding: 1mm 2mm; }
        .care { border-left: 2mm solid #000; padding-left: 3mm; }
        .care ul, .warning ul { margin: 0; padding-left: 5mm; }
        table { margin: 1mm 0; }
        caption { padding: 0.5mm 0; }
        .inspection table { table-layout: fixed; }
        th, td { padding: 0.4mm 1.5mm; border: 0.5pt solid #000; }
        tr.every td, tr.every th { border-bottom: 1.5pt solid #000; }
        thead { display: table-header-group; }
        .wide table { -fs-table-paginate: paginate; }
        .pair { break-inside: avoid; page-break-inside: avoid; }
        .stations { font-size: 9pt; }
        .stations th, .stations td { padding: 0.3mm 0.6mm; }
        .stations .mark { font-weight: bold; font-size: 10pt; }
        .stations .wide { margin-right: 2mm; }
        .whole { break-inside: avoid; page-break-inside: avoid; }
        tr { break-inside: avoid; page-break-inside: avoid; }
        .pair .wide { display: inline-block; vertical-align: top; margin-right: 6mm; }
        dl.rows { display: table; }
        dl.rows > div { display: table-row; }
        dl.rows dt, dl.rows dd { display: table-cell; padding: 0.2mm 3mm 0.2mm 0; }
        dl.rows dt { white-space: nowrap; }
        dl.run { margin: 0.5mm 0; }
        dl.run > div, dl.run dt, dl.run dd { display: inline; }
        dl.run dd { margin-right: 2.5mm; }
        .tools ul { margin: 0; }
        .tools li { display: inline-block; width: 43%; margin: 0 1% 1.2mm 0; vertical-align: top; padding-left: 7mm; text-indent: -7mm; }
        .start { break-inside: avoid; page-break-inside: avoid; break-after: avoid; }
        .start { -fs-page-break-min-height: 120mm; }
        .start * { -fs-page-break-min-height: 0; }
        section.inspection { break-inside: avoid; page-break-inside: avoid; }
        figure { display: table; width: 100%; break-inside: avoid; page-break-inside: avoid; margin: 1mm 0 2mm 0; }
        .views, figcaption { display: table-cell; vertical-align: top; }
        .views { width: 122mm; }
        .views svg { display: block; width: 120mm; height: auto; }
        figcaption { font-size: 9.5pt; padding-top: 5mm; }
        figcaption ol { margin: 0; padding-left: 6mm; }
        ol.steps > li { padding: 1.2mm 0 1.2mm 15mm; break-inside: avoid; page-break-inside: avoid; }
        li .tick { left: 0; top: 1.4mm; }
        .no { left: 7.5mm; top: 1.2mm; font-size: 11.5pt; }
        .action { margin: 0; font-size: 11.5pt; }
        .line { font-size: 8.5pt; }
        .stop, .stops td { font-size: 13pt; }
        p .size, .read { font-weight: bold; }
        p .size, p .limits { white-space: nowrap; }
        .expected { margin: 0.5mm 0; }
        input.box { width: 5mm; height: 5mm; margin: 0; vertical-align: middle; }
        p.write { line-height: 7mm; }
        .write input { font-size: 11pt; width: 28mm; height: 6mm; border: 1pt solid #000; }
        td input.write { width: 24mm; border: 0; }
        input.verdict { width: 4mm; height: 4mm; margin: 0 1mm 0 0; vertical-align: middle; }
        fieldset label { margin-right: 2mm; }
        td.result { width: 30mm; }
        span.box { display: inline-block; width: 4.4mm; height: 4.4mm; border: 1pt solid #000; vertical-align: middle; }
        span.field { display: inline-block; width: 30mm; height: 5.6mm; border: 1pt solid #000; vertical-align: middle; padding: 0 1mm; }
        td span.field { width: 22mm; border: 0; }
      }
      """;

  private Style() {}

  /**
   * The style sheet of one sheet.
   *
   * @param title what stands at the foot of each page
   * @param paper its size, or nothing for that of the printer
   */
  static String text(String title, @Nullable Paper paper) {
    String size = paper == null ? "" : " size: " + paper.name().toLowerCase(Locale.ROOT) + ";";
    return TEXT
        + "@page {"
        + size
        + " margin: 12mm 12mm 16mm 12mm; @bottom-left { content: \""
        + escape(title)
        + "\"; font: 9pt Helvetica, Arial, \"Liberation Sans\", sans-serif; }"
        + " @bottom-right { content: \"page \" counter(page) \" of \" counter(pages);"
        + " font: 9pt Helvetica, Arial, \"Liberation Sans\", sans-serif; } }\n";
  }

  /**
   * A text as it stands in a string of a style sheet: all but letters and figures by number. A
   * blank, too: behind a number it would end that..
   */
  private static String escape(String text) {
    StringBuilder safe = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              boolean plain = c < 0x80 && Character.isLetterOrDigit(c);
              if (plain) {
                safe.appendCodePoint(c);
              } else {
                safe.append(String.format(Locale.ROOT, "\\%06X", c));
              }
            });
    return safe.toString();
  }
}
