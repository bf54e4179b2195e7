package org.handwheel.plan.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.handwheel.plan.picture.Picture.Along;
import org.handwheel.plan.picture.Picture.Dimension;
import org.handwheel.plan.picture.Picture.Look;
import org.handwheel.plan.picture.Picture.Mark;
import org.handwheel.plan.picture.Picture.Style;
import org.handwheel.plan.picture.Picture.View;
import org.handwheel.syntax.SyntaxTree;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

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
  private static final double BALLOON = 11;
  private static final double MOST_SCALE = 5;
  private static final int LETTERS = 88;

  private final Picture picture;
  private final SyntaxTree tree;
  private final List<String> parts = new ArrayList<>();
  private final StringBuilder out = new StringBuilder();

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

  /** Text that cannot be taken for markup; what XML does not allow is left out. */
  public static String escape(String text) {
    StringBuilder safe = new StringBuilder();
    text.codePoints()
        .filter(c -> c >= 0x20 && c != 0xFFFE && c != 0xFFFF && !(c >= 0xD800 && c <= 0xDFFF))
        .forEach(
            c -> {
              switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> safe.appendCodePoint(c);
              }
            });
    return safe.toString();
  }

  /** A view on the paper. */
  private record Frame(View view, Envelope box, double left, double top, double scale) {
    double x(double x) {
      return left + (x - box.getMinX()) * scale;
    }

    double y(double y) {
      return top + (box.getMaxY() - y) * scale;
    }

    double right() {
      return left + box.getWidth() * scale;
    }

    double bottom() {
      return top + box.getHeight() * scale;
    }
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
    double upper = TITLE + 30;
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
    for (Frame frame : frames) {
      view(frame);
    }
    symbol(WIDTH - 130, plan.top() + 20);
    for (int i = 0; i < legend.size(); i++) {
      text(MARGIN - 24, end + i * LINE, "legend", legend.get(i));
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
      wrap((i + 1) + "  " + parts.get(i), lines);
    }
    picture.notes().forEach(note -> wrap(note, lines));
    return lines;
  }

  private static void wrap(String text, List<String> lines) {
    String rest = text;
    while (rest.length() > LETTERS) {
      int blank = rest.lastIndexOf(' ', LETTERS);
      int cut = blank > LETTERS / 2 ? blank : LETTERS;
      lines.add(rest.substring(0, cut));
      rest = "     " + rest.substring(cut).strip();
    }
    lines.add(rest);
  }

  private void open(double height) {
    String key = "p" + picture.key();
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ")
        .append(n(WIDTH))
        .append(' ')
        .append(n(height))
        .append("\" width=\"")
        .append(n(WIDTH))
        .append("\" height=\"")
        .append(n(height))
        .append("\" style=\"max-width:100%;height:auto\" role=\"img\" aria-labelledby=\"")
        .append(key)
        .append("-title ")
        .append(key)
        .append("-desc\">\n<title id=\"")
        .append(key)
        .append("-title\">")
        .append(escape(picture.title()))
        .append("</title>\n<desc id=\"")
        .append(key)
        .append("-desc\">")
        .append(escape(description()))
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
        .balloon{stroke:#000;stroke-width:1;fill:#fff}
        """);
    out.append("</style>\n<defs>\n");
    hatch(key + "-fixed", 8, 45);
    hatch(key + "-laid", 5, 135);
    hatch(key + "-off", 3.5, 45);
    out.append("<marker id=\"")
        .append(key)
        .append("-tip\" viewBox=\"0 0 12 8\" refX=\"12\" refY=\"4\" markerWidth=\"12\" ")
        .append("markerHeight=\"8\" orient=\"auto-start-reverse\"><path d=\"M0 0L12 4L0 8Z\"/>")
        .append("</marker>\n</defs>\n<rect id=\"")
        .append(all.substring(1))
        .append("\" width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n");
    text(MARGIN - 24, 32, "head", picture.title());
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

  private void hatch(String id, double apart, int angle) {
    out.append("<pattern id=\"")
        .append(id)
        .append("\" width=\"")
        .append(n(apart))
        .append("\" height=\"")
        .append(n(apart))
        .append("\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(")
        .append(angle)
        .append(")\"><rect width=\"")
        .append(n(apart))
        .append("\" height=\"")
        .append(n(apart))
        .append("\" fill=\"#fff\"/><path d=\"M0 0V")
        .append(n(apart))
        .append("\" stroke=\"#000\" stroke-width=\"1\"/></pattern>\n");
  }

  // ---- A view

  private void view(Frame frame) {
    View view = frame.view();
    text(frame.left(), frame.top() - 22, "name", "Seen " + view.look().words());
    List<Integer> seen = new ArrayList<>();
    for (Mark mark : view.marks()) {
      int line = line(mark);
      out.append("<g");
      if (line > 0) {
        if (!seen.contains(line)) {
          seen.add(line);
          out.append(" id=\"").append(id(picture, view.look(), line)).append('"');
        }
        out.append(" data-line=\"").append(line).append('"');
      }
      out.append('>');
      shape(frame, mark);
      out.append("</g>\n");
    }
    view.dimensions().forEach(dimension -> dimension(frame, dimension));
    face(frame);
    balloons(frame);
    if (view.look() == Look.FROM_ABOVE) {
      text(frame.left(), frame.bottom() + 46, "name", "\u25b2 you stand here");
    }
  }

  private int line(Mark mark) {
    return mark.origin() == null || !tree.contains(mark.origin())
        ? 0
        : tree.line(mark.origin()) + 1;
  }

  private void shape(Frame frame, Mark mark) {
    if (mark.style() == Style.ZERO) {
      Coordinate at = mark.shape().getCoordinate();
      double x = frame.x(at.getX());
      double y = frame.y(at.getY());
      out.append("<circle class=\"zero\" r=\"6\" cx=\"")
          .append(n(x))
          .append("\" cy=\"")
          .append(n(y))
          .append("\"/><path class=\"thin\" d=\"M")
          .append(n(x - 11))
          .append(' ')
          .append(n(y))
          .append("H")
          .append(n(x + 11))
          .append("M")
          .append(n(x))
          .append(' ')
          .append(n(y - 11))
          .append("V")
          .append(n(y + 11))
          .append("\"/>");
      return;
    }
    String name = mark.style().name().toLowerCase(Locale.ROOT).replace('_', '-');
    String extra = mark.part().startsWith("cutter ") ? " cutter" : "";
    out.append("<path class=\"")
        .append(name)
        .append(extra)
        .append("\" d=\"")
        .append(path(frame, mark.shape()))
        .append('"');
    @Nullable String hatch =
        switch (mark.style()) {
          case FIXED -> "-fixed";
          case LAID_IN -> "-laid";
          case REMOVED -> "-off";
          default -> null;
        };
    if (hatch != null) {
      out.append(" style=\"fill:url(#p").append(picture.key()).append(hatch).append(")\"");
    }
    if (mark.style() == Style.WAY) {
      out.append(" marker-end=\"url(#p").append(picture.key()).append("-tip)\"");
    }
    out.append("/>");
  }

  private static String path(Frame frame, Geometry shape) {
    StringBuilder path = new StringBuilder();
    for (Coordinate at : shape.getCoordinates()) {
      path.append(path.isEmpty() ? "M" : "L")
          .append(n(frame.x(at.getX())))
          .append(' ')
          .append(n(frame.y(at.getY())));
    }
    if (shape.getDimension() == 2) {
      path.append('Z');
    }
    return path.toString();
  }

  private void face(Frame frame) {
    frame.view().marks().stream()
        .filter(mark -> mark.part().startsWith("the work,"))
        .findFirst()
        .ifPresent(
            mark -> {
              Coordinate middle = mark.shape().getEnvelopeInternal().centre();
              double low = frame.view().look() == Look.FROM_ABOVE ? 20 : 5;
              out.append("<text class=\"face\" text-anchor=\"middle\" x=\"")
                  .append(n(frame.x(middle.getX())))
                  .append("\" y=\"")
                  .append(n(frame.y(middle.getY()) + low))
                  .append("\">")
                  .append(escape(frame.view().face()))
                  .append("</text>\n");
            });
  }

  private void dimension(Frame frame, Dimension dimension) {
    String tip =
        " marker-start=\"url(#p"
            + picture.key()
            + "-tip)\" marker-end=\"url(#p"
            + picture.key()
            + "-tip)\"/>\n";
    if (dimension.along() == Along.ACROSS) {
      double a = frame.x(dimension.from());
      double b = frame.x(dimension.to());
      double y = frame.bottom() + 14;
      out.append("<path class=\"thin\" d=\"M")
          .append(n(a))
          .append(' ')
          .append(n(y))
          .append('H')
          .append(n(b))
          .append('"')
          .append(tip);
      centred((a + b) / 2, y + 18, dimension.text());
    } else {
      // Written out: an upright line would cross the leaders of the numbers.
      double middle = (frame.left() + frame.right()) / 2;
      centred(middle, frame.bottom() + 50, "high: " + dimension.text());
    }
  }

  private void centred(double x, double y, String words) {
    out.append("<text class=\"size\" text-anchor=\"middle\" x=\"")
        .append(n(x))
        .append("\" y=\"")
        .append(n(y))
        .append("\">")
        .append(escape(words))
        .append("</text>\n");
  }

  /**
   * Numbers in columns left and right of a view, as high as what they point to, none on another.
   */
  private void balloons(Frame frame) {
    List<Balloon> left = new ArrayList<>();
    List<Balloon> right = new ArrayList<>();
    List<String> done = new ArrayList<>();
    double middle = (frame.left() + frame.right()) / 2;
    for (Mark mark : frame.view().marks()) {
      if (mark.part().isEmpty() || done.contains(mark.part())) {
        continue;
      }
      done.add(mark.part());
      Envelope box = mark.shape().getEnvelopeInternal();
      Coordinate at = mark.style() == Style.WAY ? mark.shape().getCoordinates()[1] : box.centre();
      boolean toLeft = frame.x(at.getX()) < middle;
      if (mark.shape().getDimension() == 2 && !mark.part().startsWith("cutter ")) {
        // Near the edge, where little lies over it.
        double inset = Math.min(2, box.getWidth() / 2);
        at = new Coordinate(toLeft ? box.getMinX() + inset : box.getMaxX() - inset, at.getY());
      }
      double x = frame.x(at.getX());
      Balloon balloon = new Balloon(parts.indexOf(mark.part()) + 1, x, frame.y(at.getY()));
      (toLeft ? left : right).add(balloon);
    }
    place(left, frame.left() - 22, frame);
    place(right, frame.right() + 22, frame);
  }

  /** A number and the point it tells of. */
  private record Balloon(int number, double x, double y) {}

  private void place(List<Balloon> balloons, double x, Frame frame) {
    balloons.sort((a, b) -> Double.compare(a.y(), b.y()));
    double apart = 2 * BALLOON + 4;
    double next = frame.top() - 4;
    double least = frame.bottom() - (balloons.size() - 1) * apart;
    for (Balloon balloon : balloons) {
      double y = Math.max(next, Math.min(balloon.y(), Math.max(next, least)));
      next = y + apart;
      least += apart;
      double edge = x < balloon.x() ? x + BALLOON : x - BALLOON;
      out.append("<path class=\"thin\" d=\"M")
          .append(n(edge))
          .append(' ')
          .append(n(y))
          .append('L')
          .append(n(balloon.x()))
          .append(' ')
          .append(n(balloon.y()))
          .append("\"/><circle r=\"2\" cx=\"")
          .append(n(balloon.x()))
          .append("\" cy=\"")
          .append(n(balloon.y()))
          .append("\"/><circle class=\"balloon\" r=\"")
          .append(n(BALLOON))
          .append("\" cx=\"")
          .append(n(x))
          .append("\" cy=\"")
          .append(n(y))
          .append("\"/><text class=\"number\" text-anchor=\"middle\" x=\"")
          .append(n(x))
          .append("\" y=\"")
          .append(n(y + 5))
          .append("\">")
          .append(balloon.number())
          .append("</text>\n");
    }
  }

  /** The symbol of the projection, a cone cut off and its end view. Source: ISO 5456-2. */
  private void symbol(double x, double y) {
    boolean first = picture.projection() == Projection.FIRST;
    double cone = first ? x : x + 42;
    double rings = first ? x + 58 : x + 14;
    out.append("<path class=\"thin\" d=\"M")
        .append(n(cone))
        .append(' ')
        .append(n(y - 6))
        .append('L')
        .append(n(cone + 30))
        .append(' ')
        .append(n(y - 12))
        .append("V")
        .append(n(y + 12))
        .append('L')
        .append(n(cone))
        .append(' ')
        .append(n(y + 6))
        .append("Z\"/>\n");
    for (int radius : List.of(6, 12)) {
      out.append("<circle class=\"thin\" r=\"")
          .append(radius)
          .append("\" cx=\"")
          .append(n(rings))
          .append("\" cy=\"")
          .append(n(y))
          .append("\"/>\n");
    }
  }

  private void text(double x, double y, String style, String words) {
    out.append("<text class=\"")
        .append(style)
        .append("\" x=\"")
        .append(n(x))
        .append("\" y=\"")
        .append(n(y))
        .append("\" xml:space=\"preserve\">")
        .append(escape(words))
        .append("</text>\n");
  }

  /** A number with at most one decimal, the same on every machine. */
  private static String n(double value) {
    String text = String.format(Locale.ROOT, "%.1f", value + 0.0);
    String trimmed = text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    return trimmed.equals("-0") ? "0" : trimmed;
  }
}
