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
import org.locationtech.jts.geom.Polygon;

/** Writes one view of a picture: its shapes, sizes and numbers. */
final class SvgView {
  private static final double BALLOON = 11;

  private final Picture picture;
  private final SyntaxTree tree;
  private final List<String> parts;
  private final SvgWriter out;

  /**
   * For a picture.
   *
   * @param parts the list of parts, which gives each its number
   */
  SvgView(Picture picture, SyntaxTree tree, List<String> parts, SvgWriter out) {
    this.picture = picture;
    this.tree = tree;
    this.parts = parts;
    this.out = out;
  }

  void draw(Frame frame) {
    View view = frame.view();
    out.text(frame.left(), frame.top() - 22, "name", "Seen " + view.look().words());
    List<Integer> seen = new ArrayList<>();
    for (Mark mark : view.marks()) {
      int line = line(mark);
      out.append("<g");
      if (line > 0) {
        if (!seen.contains(line)) {
          seen.add(line);
          out.append(" id=\"").append(SvgPicture.id(picture, view.look(), line)).append('"');
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
      out.text(frame.left(), frame.bottom() + 46, "name", "\u25b2 you stand here");
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
          .append(SvgWriter.n(x))
          .append("\" cy=\"")
          .append(SvgWriter.n(y))
          .append("\"/><path class=\"thin\" d=\"M")
          .append(SvgWriter.n(x - 11))
          .append(' ')
          .append(SvgWriter.n(y))
          .append("H")
          .append(SvgWriter.n(x + 11))
          .append("M")
          .append(SvgWriter.n(x))
          .append(' ')
          .append(SvgWriter.n(y - 11))
          .append("V")
          .append(SvgWriter.n(y + 11))
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

  /** All rings and lines of a shape. */
  private static String path(Frame frame, Geometry shape) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < shape.getNumGeometries(); i++) {
      Geometry part = shape.getGeometryN(i);
      if (part instanceof Polygon polygon) {
        path.append(line(frame, polygon.getExteriorRing())).append('Z');
        for (int k = 0; k < polygon.getNumInteriorRing(); k++) {
          path.append(line(frame, polygon.getInteriorRingN(k))).append('Z');
        }
      } else {
        path.append(line(frame, part));
      }
    }
    return path.toString();
  }

  private static String line(Frame frame, Geometry line) {
    StringBuilder path = new StringBuilder();
    for (Coordinate at : line.getCoordinates()) {
      path.append(path.isEmpty() ? "M" : "L")
          .append(SvgWriter.n(frame.x(at.getX())))
          .append(' ')
          .append(SvgWriter.n(frame.y(at.getY())));
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
                  .append(SvgWriter.n(frame.x(middle.getX())))
                  .append("\" y=\"")
                  .append(SvgWriter.n(frame.y(middle.getY()) + low))
                  .append("\">")
                  .append(SvgWriter.escape(frame.view().face()))
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
          .append(SvgWriter.n(a))
          .append(' ')
          .append(SvgWriter.n(y))
          .append('H')
          .append(SvgWriter.n(b))
          .append('"')
          .append(tip);
      out.centred((a + b) / 2, y + 18, dimension.text());
    } else {
      // Written out: an upright line would cross the leaders of the numbers.
      double middle = (frame.left() + frame.right()) / 2;
      out.centred(middle, frame.bottom() + 50, "high: " + dimension.text());
    }
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
          .append(SvgWriter.n(edge))
          .append(' ')
          .append(SvgWriter.n(y))
          .append('L')
          .append(SvgWriter.n(balloon.x()))
          .append(' ')
          .append(SvgWriter.n(balloon.y()))
          .append("\"/><circle r=\"2\" cx=\"")
          .append(SvgWriter.n(balloon.x()))
          .append("\" cy=\"")
          .append(SvgWriter.n(balloon.y()))
          .append("\"/><circle class=\"balloon\" r=\"")
          .append(SvgWriter.n(BALLOON))
          .append("\" cx=\"")
          .append(SvgWriter.n(x))
          .append("\" cy=\"")
          .append(SvgWriter.n(y))
          .append("\"/><text class=\"number\" text-anchor=\"middle\" x=\"")
          .append(SvgWriter.n(x))
          .append("\" y=\"")
          .append(SvgWriter.n(y + 5))
          .append("\">")
          .append(balloon.number())
          .append("</text>\n");
    }
  }
}
