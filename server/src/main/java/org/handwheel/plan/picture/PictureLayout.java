package org.handwheel.plan.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.handwheel.plan.picture.Drawing.Anchor;
import org.handwheel.plan.picture.Drawing.Arrangement;
import org.handwheel.plan.picture.Drawing.Group;
import org.handwheel.plan.picture.Drawing.Item;
import org.handwheel.plan.picture.Drawing.Lettering;
import org.handwheel.plan.picture.Drawing.Words;
import org.handwheel.plan.picture.Picture.Look;
import org.handwheel.plan.picture.Picture.Mark;
import org.handwheel.plan.picture.Picture.View;
import org.handwheel.syntax.SyntaxTree;
import org.locationtech.jts.geom.Envelope;

/**
 * Lays the views of a picture out on paper.
 *
 * <p>Parts carry numbers (item references by ISO 6433) that a list explains, so that no label
 * covers another.
 */
public final class PictureLayout {
  private static final double ROW_GAP = 84;

  /** Where the view from above is the upper one, words below it need room. */
  private static final double HERE = 16;

  private static final double TITLE = 56;
  private static final double LINE = 21;
  private static final double TITLE_LINE = 26;

  /** So many letters of a title fit in a line. */
  private static final int TITLE_LETTERS = 56;

  private static final double MOST_SCALE = 5;
  private static final int LETTERS = 88;

  /** What the words over the first view need, so that those over the next do not touch them. */
  private static final double CAPTION = 185;

  private final Picture picture;
  private final SyntaxTree tree;
  private final Arrangement arrangement;
  private final double width;
  private final double margin;
  private final double gap;
  private final List<String> parts = new ArrayList<>();
  private final List<Group> groups = new ArrayList<>();

  private PictureLayout(Picture picture, SyntaxTree tree, Arrangement arrangement) {
    this.picture = picture;
    this.tree = tree;
    this.arrangement = arrangement;
    boolean alone = arrangement == Arrangement.ALONE;
    width = alone ? 760 : 580;
    margin = alone ? 48 : 38;
    gap = alone ? 130 : 96;
  }

  /** The picture laid out. */
  public static Drawing of(Picture picture, SyntaxTree tree, Arrangement arrangement) {
    return new PictureLayout(picture, tree, arrangement).draw();
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

  private Drawing draw() {
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
    double room = width - 2 * margin - gap - 20;
    double scale = Math.min(MOST_SCALE, room / (front.getWidth() + side.getWidth()));
    boolean first = picture.projection() == Projection.FIRST;
    double upper = 30 + title() + ViewLayout.lift(picture.views().get(first ? 1 : 0));
    double upperHeight = (first ? front : above).getHeight() * scale;
    double lower =
        upper
            + upperHeight
            + ROW_GAP
            + (first ? 0 : HERE)
            + ViewLayout.lift(picture.views().get(first ? 0 : 1));
    double sideLeft = margin + Math.max(front.getWidth() * scale + gap, CAPTION);
    Frame plan = new Frame(picture.views().get(0), above, margin, first ? lower : upper, scale);
    Frame fromFront =
        new Frame(picture.views().get(1), front, margin, first ? upper : lower, scale);
    Frame fromSide =
        new Frame(picture.views().get(2), side, sideLeft, first ? upper : lower, scale);
    List<Frame> frames = List.of(plan, fromFront, fromSide);
    frames.forEach(this::number);
    for (Frame frame : frames) {
      groups.addAll(new ViewLayout(picture, tree, parts, frame).draw());
    }
    // In the corner that the views leave free, clear of the words below the view from the side.
    double corner = first ? Math.max(plan.top() + 20, lowestWords(sideLeft) + 28) : plan.top() + 20;
    groups.add(new Group(null, 0, Symbol.of(width - 130, corner, picture.projection())));
    double end = Math.max(Math.max(plan.bottom(), fromFront.bottom()) + 78, lowestWords(0) + 28);
    double height = arrangement == Arrangement.ALONE ? end + legend(end) + 20 : end - 16;
    return new Drawing(
        "p" + picture.key(),
        picture.title(),
        description(),
        width,
        height,
        groups,
        parts,
        picture.notes());
  }

  /** How far down words reach that begin at or right of a place. */
  private double lowestWords(double from) {
    return groups.stream()
        .flatMap(group -> group.items().stream())
        .mapToDouble(item -> item instanceof Words words && words.x() >= from ? words.y() : 0)
        .max()
        .orElse(0);
  }

  private static Envelope box(View view) {
    Envelope box = new Envelope();
    view.marks().forEach(mark -> box.expandToInclude(mark.shape().getEnvelopeInternal()));
    return box;
  }

  private void number(Frame frame) {
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

  /** The title's lines; says how high they are. */
  private double title() {
    if (arrangement != Arrangement.ALONE) {
      return 4;
    }
    List<String> lines = new ArrayList<>();
    wrap(picture.title(), TITLE_LETTERS, lines);
    text(lines, 32, TITLE_LINE, Lettering.HEAD);
    return TITLE + (lines.size() - 1) * TITLE_LINE;
  }

  /** The list of the parts; says how high it is. */
  private double legend(double from) {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      wrap((i + 1) + "  " + parts.get(i), LETTERS, lines);
    }
    picture.notes().forEach(note -> wrap(note, LETTERS, lines));
    text(lines, from, LINE, Lettering.LEGEND);
    return lines.size() * LINE;
  }

  private void text(List<String> lines, double from, double apart, Lettering type) {
    List<Item> items = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      items.add(new Words(type, Anchor.LEFT, margin - 24, from + i * apart, lines.get(i)));
    }
    groups.add(new Group(null, 0, items));
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
