package org.handwheel.cli.pdf;

import com.openhtmltopdf.css.constants.IdentValue;
import com.openhtmltopdf.css.parser.FSColor;
import com.openhtmltopdf.css.parser.FSRGBColor;
import com.openhtmltopdf.css.value.FontSpecification;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.render.FSFont;
import com.openhtmltopdf.render.RenderingContext;
import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.handwheel.plan.picture.Drawing;
import org.handwheel.plan.picture.Drawing.Anchor;
import org.handwheel.plan.picture.Drawing.Arrow;
import org.handwheel.plan.picture.Drawing.Circle;
import org.handwheel.plan.picture.Drawing.Course;
import org.handwheel.plan.picture.Drawing.End;
import org.handwheel.plan.picture.Drawing.Fill;
import org.handwheel.plan.picture.Drawing.Ground;
import org.handwheel.plan.picture.Drawing.Hatch;
import org.handwheel.plan.picture.Drawing.Item;
import org.handwheel.plan.picture.Drawing.Line;
import org.handwheel.plan.picture.Drawing.Path;
import org.handwheel.plan.picture.Drawing.Point;
import org.handwheel.plan.picture.Drawing.Weight;
import org.handwheel.plan.picture.Drawing.Words;

/** Draws a picture on a page as lines and letters, not as dots. */
final class DrawingPainter {
  private static final FSColor BLACK = FSRGBColor.BLACK;
  private static final FSColor WHITE = new FSRGBColor(255, 255, 255);

  /** An arrow head, in units of the drawing. */
  private static final double TIP = 12;

  private static final double TIP_HALF = 4;

  private final OutputDevice device;
  private final RenderingContext context;
  private final double left;
  private final double top;
  private final double scale;

  /**
   * For a place on a page.
   *
   * @param left the drawing's left edge in the device's units
   * @param top its upper edge
   * @param scale units of the device to a unit of the drawing
   */
  DrawingPainter(
      OutputDevice device, RenderingContext context, double left, double top, double scale) {
    this.device = device;
    this.context = context;
    this.left = left;
    this.top = top;
    this.scale = scale;
  }

  void draw(Drawing drawing) {
    drawing.groups().forEach(group -> group.items().forEach(this::item));
    device.setStroke(new BasicStroke(1));
    device.setColor(BLACK);
  }

  private void item(Item item) {
    if (item instanceof Path path) {
      path(path);
    } else if (item instanceof Circle circle) {
      double radius = circle.radius() * scale;
      shape(
          circle.line(),
          new Ellipse2D.Double(
              x(circle.x()) - radius, y(circle.y()) - radius, 2 * radius, 2 * radius));
    } else if (item instanceof Words words) {
      words(words);
    }
  }

  private double x(double x) {
    return left + x * scale;
  }

  private double y(double y) {
    return top + y * scale;
  }

  private void path(Path path) {
    Path2D shape = new Path2D.Double(Path2D.WIND_EVEN_ODD);
    for (Course course : path.courses()) {
      List<Point> points = course.points();
      for (int i = 0; i < points.size(); i++) {
        double x = x(points.get(i).x());
        double y = y(points.get(i).y());
        if (i == 0) {
          shape.moveTo(x, y);
        } else {
          shape.lineTo(x, y);
        }
      }
      if (course.end() == End.CLOSED && !points.isEmpty()) {
        shape.closePath();
      }
    }
    shape(path.line(), shape);
    for (Course course : path.courses()) {
      List<Point> points = course.points();
      int last = points.size() - 1;
      if (last > 0 && path.arrow() != Arrow.NONE) {
        tip(points.get(last - 1), points.get(last));
      }
      if (last > 0 && path.arrow() == Arrow.AT_BOTH) {
        tip(points.get(1), points.get(0));
      }
    }
  }

  private void shape(Line line, Shape shape) {
    if (line.fill() != Fill.NONE) {
      device.setColor(line.fill() == Fill.WHITE ? WHITE : BLACK);
      device.fill(shape);
    }
    device.setColor(BLACK);
    if (line.hatch() != Hatch.NONE) {
      hatch(line.hatch(), shape);
    }
    if (line.width() > 0) {
      device.setStroke(stroke(line));
      device.draw(shape);
    }
  }

  private BasicStroke stroke(Line line) {
    float width = (float) (line.width() * scale);
    if (line.dashes().isEmpty()) {
      return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
    }
    float[] dashes = new float[line.dashes().size()];
    for (int i = 0; i < dashes.length; i++) {
      dashes[i] = (float) (line.dashes().get(i) * scale);
    }
    return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, dashes, 0);
  }

  /** Lines over the whole plane, of which those within the shape are kept. */
  private void hatch(Hatch hatch, Shape shape) {
    Rectangle2D box = shape.getBounds2D();
    if (box.isEmpty()) {
      return;
    }
    device.pushClip(shape);
    device.setStroke(new BasicStroke((float) scale));
    double angle = Math.toRadians(hatch.degrees());
    double apart = hatch.apart() * scale;
    // Turned so that the lines are upright, and counted from the drawing's corner.
    AffineTransform upright = AffineTransform.getRotateInstance(-angle, left, top);
    AffineTransform back = AffineTransform.getRotateInstance(angle, left, top);
    Rectangle2D turned = upright.createTransformedShape(box).getBounds2D();
    double first = left + Math.floor((turned.getMinX() - left) / apart) * apart;
    for (double x = first; x <= turned.getMaxX(); x += apart) {
      device.draw(
          back.createTransformedShape(new Line2D.Double(x, turned.getMinY(), x, turned.getMaxY())));
    }
    device.popClip();
  }

  private void tip(Point from, Point to) {
    double dx = to.x() - from.x();
    double dy = to.y() - from.y();
    double length = Math.hypot(dx, dy);
    if (length == 0) {
      return;
    }
    dx /= length;
    dy /= length;
    Path2D head = new Path2D.Double();
    head.moveTo(x(to.x()), y(to.y()));
    head.lineTo(x(to.x() - dx * TIP - dy * TIP_HALF), y(to.y() - dy * TIP + dx * TIP_HALF));
    head.lineTo(x(to.x() - dx * TIP + dy * TIP_HALF), y(to.y() - dy * TIP - dx * TIP_HALF));
    head.closePath();
    device.fill(head);
  }

  private void words(Words words) {
    FSFont font = font(words);
    double width = context.getTextRenderer().getWidth(context.getFontContext(), font, words.text());
    double x = x(words.x()) - (words.anchor() == Anchor.MIDDLE ? width / 2 : 0);
    double y = y(words.y());
    if (words.type().ground() == Ground.WHITE) {
      double size = words.type().size() * scale;
      device.setColor(WHITE);
      device.fill(new Rectangle2D.Double(x - size * 0.1, y - size * 0.8, width + size * 0.2, size));
      device.setColor(BLACK);
    }
    device.setFont(font);
    context.getTextRenderer().drawString(device, words.text(), (float) x, (float) y);
  }

  private FSFont font(Words words) {
    FontSpecification wanted = new FontSpecification();
    wanted.families = Fonts.FAMILIES.toArray(new String[0]);
    wanted.size = (float) (words.type().size() * scale);
    wanted.fontWeight = words.type().weight() == Weight.BOLD ? IdentValue.BOLD : IdentValue.NORMAL;
    wanted.fontStyle = IdentValue.NORMAL;
    wanted.variant = IdentValue.NORMAL;
    return context.getFont(wanted);
  }
}
