package org.handwheel.plan.picture;

import java.util.Locale;
import java.util.stream.Collectors;
import org.handwheel.plan.picture.Drawing.Anchor;
import org.handwheel.plan.picture.Drawing.Arrangement;
import org.handwheel.plan.picture.Drawing.Arrow;
import org.handwheel.plan.picture.Drawing.Circle;
import org.handwheel.plan.picture.Drawing.Course;
import org.handwheel.plan.picture.Drawing.End;
import org.handwheel.plan.picture.Drawing.Fill;
import org.handwheel.plan.picture.Drawing.Ground;
import org.handwheel.plan.picture.Drawing.Group;
import org.handwheel.plan.picture.Drawing.Hatch;
import org.handwheel.plan.picture.Drawing.Item;
import org.handwheel.plan.picture.Drawing.Lettering;
import org.handwheel.plan.picture.Drawing.Line;
import org.handwheel.plan.picture.Drawing.Path;
import org.handwheel.plan.picture.Drawing.Point;
import org.handwheel.plan.picture.Drawing.Weight;
import org.handwheel.plan.picture.Drawing.Words;
import org.handwheel.syntax.SyntaxTree;

/**
 * A picture as SVG, in black and white.
 *
 * <p>A shape from the plan's line 12 has {@code data-line="12"} and an id that is the same as long
 * as the plan is.
 */
public final class SvgPicture {
  private final Drawing drawing;
  private final SvgWriter out = new SvgWriter();

  private SvgPicture(Drawing drawing) {
    this.drawing = drawing;
  }

  /** The picture as one SVG element, without an XML declaration, ready to stand in a page. */
  public static String of(Picture picture, SyntaxTree tree) {
    return of(PictureLayout.of(picture, tree, Arrangement.ALONE));
  }

  /** A drawing as one SVG element. */
  public static String of(Drawing drawing) {
    return new SvgPicture(drawing).write();
  }

  private String write() {
    open();
    drawing.groups().forEach(this::group);
    out.append("</svg>\n");
    return out.toString();
  }

  private void open() {
    String key = drawing.key();
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ")
        .append(SvgWriter.n(drawing.width()))
        .append(' ')
        .append(SvgWriter.n(drawing.height()))
        .append("\" width=\"")
        .append(SvgWriter.n(drawing.width()))
        .append("\" height=\"")
        .append(SvgWriter.n(drawing.height()))
        .append("\" style=\"max-width:100%;height:auto\" role=\"img\" aria-labelledby=\"")
        .append(key)
        .append("-title ")
        .append(key)
        .append("-desc\">\n<title id=\"")
        .append(key)
        .append("-title\">")
        .append(SvgWriter.escape(drawing.title()))
        .append("</title>\n<desc id=\"")
        .append(key)
        .append("-desc\">")
        .append(SvgWriter.escape(drawing.description()))
        .append("</desc>\n<style>\n")
        .append(style())
        .append("</style>\n<defs>\n");
    for (Hatch hatch : Hatch.values()) {
      if (hatch != Hatch.NONE) {
        out.hatch(key + "-" + hatch.word(), hatch.apart(), hatch.degrees());
      }
    }
    out.append("<marker id=\"")
        .append(key)
        .append("-tip\" viewBox=\"0 0 12 8\" refX=\"12\" refY=\"4\" markerWidth=\"12\" ")
        .append("markerHeight=\"8\" orient=\"auto-start-reverse\"><path d=\"M0 0L12 4L0 8Z\"/>")
        .append("</marker>\n</defs>\n<rect id=\"")
        .append(key)
        .append("-paper\" width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n");
  }

  private static String style() {
    StringBuilder css = new StringBuilder();
    css.append("svg text{font-family:\"DejaVu Sans\",Arial,sans-serif;fill:#000}\n");
    for (Lettering type : Lettering.values()) {
      css.append("svg .").append(word(type)).append("{font-size:").append(SvgWriter.n(type.size()));
      css.append("px").append(type.weight() == Weight.BOLD ? ";font-weight:bold" : "");
      css.append(
          type.ground() == Ground.WHITE ? ";paint-order:stroke;stroke:#fff;stroke-width:4px" : "");
      css.append("}\n");
    }
    for (Line line : Line.values()) {
      css.append("svg .").append(word(line)).append("{stroke:");
      css.append(line.width() > 0 ? "#000;stroke-width:" + SvgWriter.n(line.width()) : "none");
      css.append(";fill:").append(fill(line.fill()));
      css.append(";stroke-linejoin:round;fill-rule:evenodd");
      if (!line.dashes().isEmpty()) {
        css.append(";stroke-dasharray:")
            .append(line.dashes().stream().map(SvgWriter::n).collect(Collectors.joining(" ")));
      }
      css.append("}\n");
    }
    return css.toString();
  }

  private static String fill(Fill fill) {
    return switch (fill) {
      case NONE -> "none";
      case WHITE -> "#fff";
      case BLACK -> "#000";
    };
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private void group(Group group) {
    out.append("<g");
    if (group.id() != null) {
      out.append(" id=\"").append(group.id()).append('"');
    }
    if (group.line() > 0) {
      out.append(" data-line=\"").append(group.line()).append('"');
    }
    out.append('>');
    group.items().forEach(this::item);
    out.append("</g>\n");
  }

  private void item(Item item) {
    if (item instanceof Path path) {
      path(path);
    } else if (item instanceof Circle circle) {
      out.append("<circle class=\"")
          .append(word(circle.line()))
          .append("\" r=\"")
          .append(SvgWriter.n(circle.radius()))
          .append("\" cx=\"")
          .append(SvgWriter.n(circle.x()))
          .append("\" cy=\"")
          .append(SvgWriter.n(circle.y()))
          .append("\"/>");
    } else if (item instanceof Words words) {
      out.append("<text class=\"")
          .append(word(words.type()))
          .append(words.anchor() == Anchor.MIDDLE ? "\" text-anchor=\"middle" : "")
          .append("\" x=\"")
          .append(SvgWriter.n(words.x()))
          .append("\" y=\"")
          .append(SvgWriter.n(words.y()))
          .append("\" xml:space=\"preserve\">")
          .append(SvgWriter.escape(words.text()))
          .append("</text>");
    }
  }

  private void path(Path path) {
    out.append("<path class=\"").append(word(path.line())).append("\" d=\"");
    for (Course course : path.courses()) {
      String letter = "M";
      for (Point point : course.points()) {
        out.append(letter)
            .append(SvgWriter.n(point.x()))
            .append(' ')
            .append(SvgWriter.n(point.y()));
        letter = "L";
      }
      out.append(course.end() == End.CLOSED ? "Z" : "");
    }
    out.append('"');
    Hatch hatch = path.line().hatch();
    if (hatch != Hatch.NONE) {
      out.append(" style=\"fill:url(#").append(drawing.key()).append("-" + hatch.word() + ")\"");
    }
    String tip = "=\"url(#" + drawing.key() + "-tip)\"";
    if (path.arrow() == Arrow.AT_BOTH) {
      out.append(" marker-start").append(tip);
    }
    if (path.arrow() != Arrow.NONE) {
      out.append(" marker-end").append(tip);
    }
    out.append("/>");
  }
}
