package org.handwheel.plan.sheet;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.handwheel.model.Face;
import org.handwheel.model.Located;
import org.handwheel.model.PartDimension;
import org.handwheel.model.Stock;
import org.handwheel.model.Stock.Skin;
import org.handwheel.plan.sheet.Sheet.Fact;
import org.handwheel.shop.stock.BarCutting;
import org.handwheel.shop.stock.StockMass;
import org.handwheel.units.Length;
import org.handwheel.units.LengthText;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.KnownMaterial;
import org.handwheel.work.PlanRun;
import org.jspecify.annotations.Nullable;

/** The piece to start from: its size, how to saw it, what it weighs. */
final class StockLines {
  private StockLines() {}

  static List<Fact> of(PlanRun run) {
    List<Fact> facts = new ArrayList<>();
    Stock stock = run.plan().stock();
    if (stock == null) {
      return facts;
    }
    Length length = stock.sizes().get(PartDimension.LENGTH);
    Length width = stock.sizes().get(PartDimension.WIDTH);
    Length height = stock.sizes().get(PartDimension.HEIGHT);
    if (length == null || width == null || height == null) {
      return facts;
    }
    facts.add(
        new Fact(
            "Size",
            size(LengthUnit.MM, length, width, height)
                + " mm ("
                + size(LengthUnit.IN, length, width, height)
                + " in), length x width x height"));
    facts.add(new Fact("Pieces", Integer.toString(stock.pieces())));
    saw(stock, facts);
    skins(stock, facts);
    mass(run.material(), stock, length, width, height, facts);
    return facts;
  }

  private static String size(LengthUnit unit, Length... lengths) {
    List<String> numbers = new ArrayList<>();
    for (Length length : lengths) {
      numbers.add(Words.number(length, unit));
    }
    return String.join(" x ", numbers);
  }

  /** One bar sawn across: where just one pair of faces is sawn. */
  private static void saw(Stock stock, List<Fact> facts) {
    Located<Length> kerf = stock.kerf();
    for (PartDimension dimension : PartDimension.values()) {
      Length piece = stock.sizes().get(dimension);
      boolean sawn = isSawn(stock, Face.of(dimension, -1)) && isSawn(stock, Face.of(dimension, 1));
      if (!sawn || piece == null) {
        continue;
      }
      if (kerf == null) {
        facts.add(
            new Fact("Saw", LengthText.both(piece) + " " + dimension.word() + "; kerf not stated"));
        continue;
      }
      Length bar = BarCutting.barFor(stock.pieces(), piece, kerf.value());
      facts.add(
          new Fact(
              "Saw",
              LengthText.both(piece)
                  + " "
                  + dimension.word()
                  + ", each cut takes "
                  + LengthText.both(kerf.value())
                  + ": "
                  + LengthText.both(bar)
                  + " of bar, and "
                  + LengthText.both(bar.plus(kerf.value()))
                  + " if the last piece is cut from a longer one"));
    }
    if (stock.wander() != null) {
      facts.add(new Fact("Saw wanders", "allow " + LengthText.both(stock.wander().value())));
    }
  }

  private static boolean isSawn(Stock stock, Face face) {
    Located<Skin> skin = stock.skins().get(face);
    return skin != null && skin.value() == Skin.SAWN;
  }

  private static void skins(Stock stock, List<Fact> facts) {
    Map<Skin, List<Face>> faces = new EnumMap<>(Skin.class);
    for (Face face : Face.values()) {
      Located<Skin> skin = stock.skins().get(face);
      if (skin != null) {
        faces.computeIfAbsent(skin.value(), s -> new ArrayList<>()).add(face);
      }
    }
    List<String> words = new ArrayList<>();
    faces.forEach((skin, of) -> words.add(Words.faces(of) + " " + skin.words()));
    if (!words.isEmpty()) {
      facts.add(new Fact("Faces", String.join("; ", words)));
    }
  }

  private static void mass(
      @Nullable KnownMaterial material,
      Stock stock,
      Length length,
      Length width,
      Length height,
      List<Fact> facts) {
    if (material == null) {
      return;
    }
    material
        .density()
        .ifPresent(
            density -> {
              double each = StockMass.block(length, width, height, density);
              String all =
                  stock.pieces() > 1 ? "; all together " + kilograms(each * stock.pieces()) : "";
              facts.add(new Fact("Weight", "about " + kilograms(each) + " a piece" + all));
            });
  }

  private static String kilograms(double kilograms) {
    return String.format(Locale.ROOT, "%.2f kg (%.2f lb)", kilograms, StockMass.pounds(kilograms));
  }
}
