package org.handwheel.plan.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.handwheel.plan.picture.Picture.Look;
import org.handwheel.plan.picture.Picture.Mark;
import org.handwheel.plan.picture.Picture.View;
import org.handwheel.syntax.SyntaxTree;
import org.locationtech.jts.geom.Envelope;

/**
 * A picture as SVG, in black and white.
 *
 * <p>Parts carry numbers (item references by ISO 6433) that a list below explains, so that no label
 * covers another. A shape from the plan's line 12 has {@code data-line="12"} and an id that is the
 * same as long as the plan is.
 */
public final class SvgPicture {
  private static final double WIDTH = 760;
  private static final double MARGIN = 48;
  private static final double GAP = 130;
  private static final double ROW_GAP = 84;
  private static final double TITLE = 56;
  private static final double LINE = 21;
  private static final double TITLE_LINE = 26;

  /** So many letters of a title fit in a line. */
  private static final int TITLE_LETTERS = 56;

  private static final double MOST_SCALE = 5;
  private static final int LETTERS = 88;

  private final Picture picture;
  private final SyntaxTree tree;
  private final List<String> parts = new ArrayList<>();
  private final List<String> title = new ArrayList<>();
  private final SvgWriter out = new SvgWriter();

  private SvgPicture(Picture picture, SyntaxTree tree) {
    this.picture = picture;
    this.tree = tree;
  }

  /** The picture as one SVG element, without an XML declaration, ready to stand in a page. */
  public static String of(Picture picture, SyntaxTree tree) {
    return new SvgPicture(picture, tree).draw();
  }

  /** The id of the shapes of a line in a view. */
  public static String id(Picture picture, Look look, int line) {
    return "p"
        + picture.key()
        + "-"
        + look.name().toLowerCase(Locale.ROOT).replace('_', '-')
        + "-line-"
        + line;
  }

  private String draw() {
    Envelope above = box(picture.views().get(0));
    Envelope front = box(picture.views().get(1));
    Envelope side = box(picture.views().get(2));
    // Views that stand over one another share their left edge and so must share its place.
    double minX = Math.min(above.getMinX(), front.getMinX());
    double maxX = Math.max(above.getMaxX(), front.getMaxX());
    above.expandToInclude(minX, above.getMinY());
    above.expandToInclude(maxX, above.getMinY());
    front.expandToInclude(minX, front.getMinY());
    front.expandToInclude(maxX, front.getMinY());
    double low = Math.min(front.getMinY(), side.getMinY());
    double high = Math.max(front.getMaxY(), side.getMaxY());
    for (Envelope box : List.of(front, side)) {
      box.expandToInclude(box.getMinX(), low);
      box.expandToInclude(box.getMinX(), high);
    }
    double room = WIDTH - 2 * MARGIN - GAP - 40;
    double scale = Math.min(MOST_SCALE, room / (front.getWidth() + side.getWidth()));
    boolean first = picture.projection() == Projection.FIRST;
    wrap(picture.title(), TITLE_LETTERS, title);
    double upper = TITLE + 30 + (title.size() - 1) * TITLE_LINE;
    double upperHeight = (first ? front : above).getHeight() * scale;
    double lower = upper + upperHeight + ROW_GAP;
    double sideLeft = MARGIN + front.getWidth() * scale + GAP;
    Frame plan = new Frame(picture.views().get(0), above, MARGIN, first ? lower : upper, scale);
    Frame fromFront =
        new Frame(picture.views().get(1), front, MARGIN, first ? upper : lower, scale);
    Frame fromSide =
        new Frame(picture.views().get(2), side, sideLeft, first ? upper : lower, scale);
    List<Frame> frames = List.of(plan, fromFront, fromSide);
    for (Frame frame : frames) {
      frame.view().marks().stream()
          .map(Mark::part)
          .filter(part -> !part.isEmpty())
          .forEach(
              part -> {
                if (!parts.contains(part)) {
                  parts.add(part);
                }
              });
    }
    double end = Math.max(plan.bottom(), fromFront.bottom()) + 78;
    List<String> legend = legend();
    double height = end + legend.size() * LINE + 20;
    open(height);
    SvgView view = new SvgView(picture, tree, parts, out);
    frames.forEach(view::draw);
    out.symbol(WIDTH - 130, plan.top() + 20, picture.projection());
    for (int i = 0; i < legend.size(); i++) {
      out.text(MARGIN - 24, end + i * LINE, "legend", legend.get(i));
    }
    out.append("</svg>\n");
    return out.toString();
  }

  private static Envelope box(View view) {
    Envelope box = new Envelope();
    view.marks().forEach(mark -> box.expandToInclude(mark.shape().getEnvelopeInternal()));
    return box;
  }

  private List<String> legend() {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      wrap((i + 1) + "  " + parts.get(i), LETTERS, lines);
    }
    picture.notes().forEach(note -> wrap(note, LETTERS, lines));
    return lines;
  }

  private static void wrap(String text, int letters, List<String> lines) {
    String rest = text;
    while (rest.length() > letters) {
      int blank = rest.lastIndexOf(' ', letters);
      int cut = blank > letters / 2 ? blank : letters;
      lines.add(rest.substring(0, cut));
      rest = "     " + rest.substring(cut).strip();
    }
    lines.add(rest);
  }

  private void open(double height) {
    String key = "p" + picture.key();
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ")
        .append(SvgWriter.n(WIDTH))
        .append(' ')
        .append(SvgWriter.n(height))
        .append("\" width=\"")
        .append(SvgWriter.n(WIDTH))
        .append("\" height=\"")
        .append(SvgWriter.n(height))
        .append("\" style=\"max-width:100%;height:auto\" role=\"img\" aria-labelledby=\"")
        .append(key)
        .append("-title ")
        .append(key)
        .append("-desc\">\n<title id=\"")
        .append(key)
        .append("-title\">")
        .append(SvgWriter.escape(picture.title()))
        .append("</title>\n<desc id=\"")
        .append(key)
        .append("-desc\">")
        .append(SvgWriter.escape(description()))
        .append("</desc>\n<style>\n");
    String all = "#" + key + "-paper";
    // Wide and narrow lines two to one; dashes by ISO 128-2 in widths of the line, shortened.
    out.append(
        """
        svg text{font-family:"DejaVu Sans",Arial,sans-serif;fill:#000}
        .legend{font-size:15px}.head{font-size:20px;font-weight:bold}.name{font-size:14px}
        .face{font-size:15px;font-weight:bold;paint-order:stroke;stroke:#fff;stroke-width:4px}
        .size{font-size:14px;paint-order:stroke;stroke:#fff;stroke-width:4px}
        .number{font-size:14px;font-weight:bold}
        .outline,.fixed,.laid-in{stroke:#000;stroke-width:2;fill:#fff;stroke-linejoin:round}
        .cutter{fill:none}
        .hidden{stroke:#000;stroke-width:1;fill:none;stroke-dasharray:8 3}
        .removed{stroke:#000;stroke-width:1;stroke-dasharray:14 3 1 3 1 3}
        .way,.thin{stroke:#000;stroke-width:1;fill:none}.zero{stroke:#000;stroke-width:2;fill:#fff}
        .edge{stroke:#000;stroke-width:2;fill:none;stroke-linejoin:round}
        .former{stroke:#000;stroke-width:1;fill:none;stroke-dasharray:14 3 1 3 1 3}
        .centre{stroke:#000;stroke-width:1;fill:none;stroke-dasharray:10 3 1 3}
        .removed{fill-rule:evenodd}
        .balloon{stroke:#000;stroke-width:1;fill:#fff}
        """);
    out.append("</style>\n<defs>\n");
    out.hatch(key + "-fixed", 8, 45);
    out.hatch(key + "-laid", 5, 135);
    out.hatch(key + "-off", 3.5, 45);
    out.append("<marker id=\"")
        .append(key)
        .append("-tip\" viewBox=\"0 0 12 8\" refX=\"12\" refY=\"4\" markerWidth=\"12\" ")
        .append("markerHeight=\"8\" orient=\"auto-start-reverse\"><path d=\"M0 0L12 4L0 8Z\"/>")
        .append("</marker>\n</defs>\n<rect id=\"")
        .append(all.substring(1))
        .append("\" width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n");
    for (int i = 0; i < title.size(); i++) {
      out.text(MARGIN - 24, 32 + i * TITLE_LINE, "head", title.get(i));
    }
  }

  private String description() {
    StringBuilder words = new StringBuilder("Three views of the setup. ");
    picture
        .views()
        .forEach(
            view ->
                words
                    .append("Seen ")
                    .append(view.look().words())
                    .append(": ")
                    .append(view.face())
                    .append(". "));
    for (int i = 0; i < parts.size(); i++) {
      words.append(i + 1).append(": ").append(parts.get(i)).append(". ");
    }
    return words.toString().strip();
  }
}
