package org.handwheel.plan.sheet;

/** The sheet's style sheet: black on white, large enough to be read at arm's length. */
final class Style {
  private static final String TEXT =
      """
      /* The sheet on a screen, on a telephone and on paper; black on white, readable at arm's length. */
      html { font-size: 112.5%; }
      body { margin: 0 auto; padding: 0.6rem; max-width: 56rem; color: #000; background: #fff; font-family: Helvetica, Arial, "Liberation Sans", sans-serif; line-height: 1.35; }
      h1 { font-size: 1.7rem; margin: 0.2rem 0; }
      h2 { font-size: 1.4rem; margin: 1.6rem 0 0.4rem; border-bottom: 3px solid #000; }
      h3 { font-size: 1.1rem; margin: 1rem 0 0.3rem; }
      p { margin: 0.3rem 0; }
      a { color: #000; text-decoration: underline; }
      a:focus, input:focus { outline: 3px solid #000; outline-offset: 2px; }
      .skip { position: absolute; left: -99rem; }
      .skip:focus { position: static; }
      .under { margin: 0 0 0.6rem; }
      nav ul { margin: 0.3rem 0; padding-left: 1.2rem; }
      .warning { border: 3px solid #000; padding: 0.3rem 0.7rem; margin: 0.8rem 0; }
      .warning h2 { border: 0; margin: 0.2rem 0; }
      .care { border-left: 8px solid #000; padding-left: 0.8rem; }
      table { border-collapse: collapse; width: 100%; margin: 0.3rem 0; }
      caption { text-align: left; font-weight: bold; padding: 0.2rem 0; }
      th, td { border: 1px solid #000; padding: 0.15rem 0.4rem; text-align: left; vertical-align: top; }
      td.n, th.n { text-align: right; white-space: nowrap; }
      tr.every td, tr.every th { border-bottom: 3px solid #000; }
      table.facts { width: auto; }
      table.facts th, table.facts td { border: 0; padding: 0.05rem 0.8rem 0.05rem 0; }
      table.facts th { font-weight: bold; white-space: nowrap; }
      table.narrow { width: auto; }
      .wide { overflow-x: auto; }
      figure { margin: 0.5rem 0; }
      figure svg { display: block; width: 100%; height: auto; max-width: 46rem; }
      ol.steps { list-style: none; margin: 0.5rem 0; padding: 0; }
      ol.steps > li { position: relative; border-top: 1px solid #000; padding: 0.5rem 0 0.5rem 4rem; break-inside: avoid; page-break-inside: avoid; }
      li .tick { position: absolute; left: 0; top: 0.55rem; }
      input.box { width: 1.5rem; height: 1.5rem; margin: 0; border: 2px solid #000; }
      .no { position: absolute; left: 2.1rem; top: 0.5rem; font-weight: bold; }
      .action { font-weight: bold; }
      .line { font-weight: normal; font-size: 0.8rem; white-space: nowrap; }
      .stop { font-size: 1.25rem; font-weight: bold; }
      .expected { margin: 0.3rem 0; }
      .write input { font-size: 1.1rem; width: 9rem; border: 2px solid #000; padding: 0.2rem; }
      input.verdict { width: 1.4rem; height: 1.4rem; margin: 0 0.3rem 0 0; vertical-align: middle; }
      td input.write { width: 7rem; border: 0; border-bottom: 2px solid #000; font-size: 1rem; }
      fieldset { border: 0; margin: 0; padding: 0; white-space: nowrap; }
      legend { position: absolute; left: -99rem; }
      fieldset label { margin-right: 0.8rem; }
      @media (max-width: 36rem) {
        table.facts th, table.facts td { display: block; padding-right: 0; }
        table.facts td { margin-bottom: 0.3rem; }
        ol.steps > li { padding-left: 3rem; }
        .no { left: 1.8rem; }
        th, td { padding: 0.1rem 0.25rem; }
      }
      @media print {
        html { font-size: 11pt; }
        body { max-width: none; padding: 0; }
        nav, .skip { display: none; }
        section.setup, section.inspection { break-before: page; page-break-before: always; }
        h2, h3, caption { break-after: avoid; page-break-after: avoid; }
        figure svg { max-width: 36rem; max-height: 38rem; }
        figure, tr { break-inside: avoid; page-break-inside: avoid; }
        thead { display: table-header-group; }
      }
      """;

  private Style() {}

  static String text() {
    return TEXT;
  }
}
