package org.handwheel.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.handwheel.cli.Amounts.Range;
import org.handwheel.cli.Amounts.Size;
import org.handwheel.model.PartDimension;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.fit.SizeChain;
import org.handwheel.syntax.Nearest;
import org.handwheel.syntax.SyntaxTree;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthText;
import org.handwheel.work.chain.DrawnChain;
import org.handwheel.work.chain.DrawnChain.Link;
import org.handwheel.work.chain.DrawnPoints;
import org.jspecify.annotations.Nullable;

/** What lies between two points of a plan's drawing, for people and for programs. */
record DrawnChainReport(String plan, String from, String to, DrawnChain chain, SyntaxTree tree) {
  static final String LIKELY =
      "At worst every size lies at its end. Likely is the root of the sum of the squares; it"
          + " supposes many parts, made independently and to the middle of their limits, which a"
          + " single part from a manual machine does not promise.";

  static DrawnChainReport of(
      String file, OnePlan plan, String from, String to, @Nullable PartDimension along) {
    DrawnPoints points =
        DrawnPoints.of(plan.run().plan(), plan.run().drawing(), StandardTables.builtIn())
            .orElseThrow(() -> new UserException(file + ": it has no part"));
    known(points, from);
    known(points, to);
    List<PartDimension> directions = points.directions(from, to);
    if (directions.isEmpty()) {
      throw new UserException(
          "'" + from + "' and '" + to + "' have no direction in common that the drawing gives");
    }
    if (along == null && directions.size() > 1) {
      throw new UserException(
          "say --along "
              + String.join(" or ", directions.stream().map(PartDimension::word).toList()));
    }
    PartDimension direction = along == null ? directions.get(0) : along;
    Optional<DrawnChain> chain = points.chain(from, to, direction);
    return new DrawnChainReport(
        file,
        from,
        to,
        chain.orElseThrow(
            () ->
                new UserException(
                    "--along "
                        + direction.word()
                        + ": '"
                        + from
                        + "' and '"
                        + to
                        + "' are not apart in that direction")),
        plan.checked().tree());
  }

  private static void known(DrawnPoints points, String name) {
    if (points.names().contains(name.strip().toLowerCase(Locale.ROOT))) {
      return;
    }
    throw new UserException(
        "there is no point '"
            + name
            + "' on the drawing"
            + Nearest.to(name, points.names())
                .map(near -> "; did you mean '" + near + "'?")
                .orElse("; there are " + String.join(", ", points.names())));
  }

  void print(Output output) {
    Facts facts = new Facts(from + " to " + to + ", along the " + chain.along().word());
    for (Link link : chain.links()) {
      facts.add(
          sign(link.halves()) + link.size().words(),
          LengthText.range(counted(link))
              + " ("
              + link.size().source().words()
              + ", line "
              + line(link)
              + ")");
    }
    SizeChain sizes = chain.sizes();
    facts.add("as drawn", chain.nominal().toString());
    facts.add("at worst", spread(sizes.worstCase()));
    if (chain.links().size() > 1) {
      facts.add("likely", spread(sizes.likely()));
      facts.note(LIKELY);
    }
    facts.print(output);
  }

  private static String sign(int halves) {
    return switch (halves) {
      case 2 -> "+ ";
      case -2 -> "- ";
      case 1 -> "+ half ";
      case -1 -> "- half ";
      default -> halves + "/2 ";
    };
  }

  /** What of it counts: of a diameter its half, so that the column adds up. */
  private static LengthRange counted(Link link) {
    LengthRange limits = link.size().limits();
    return Math.abs(link.halves()) == 1
        ? new LengthRange(limits.low().half(), limits.high().half())
        : limits;
  }

  private int line(Link link) {
    return tree.line(link.size().origin()) + 1;
  }

  private static String spread(LengthRange range) {
    return LengthText.range(range) + ": " + range.middle() + ", give or take " + range.spread();
  }

  String json() {
    return Json.of(
        new Root(
            1,
            plan,
            from,
            to,
            chain.along().word(),
            chain.links().stream()
                .map(
                    link ->
                        new JsonLink(
                            link.size().words(),
                            line(link),
                            link.halves() / 2.0,
                            link.size().source().name().toLowerCase(Locale.ROOT),
                            Size.of(link.size().nominal()),
                            Range.of(link.size().limits())))
                .toList(),
            Size.of(chain.nominal()),
            Range.of(chain.sizes().worstCase()),
            Range.of(chain.sizes().likely())));
  }

  private record Root(
      int version,
      String plan,
      String from,
      String to,
      String along,
      List<JsonLink> links,
      Size nominal,
      Range worstCase,
      Range likely) {}

  private record JsonLink(
      String text, int line, double factor, String limitsFrom, Size nominal, Range limits) {}
}
