package org.handwheel.ide;

import java.util.Optional;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.drill.Drill;
import org.handwheel.shop.material.Material;
import org.handwheel.shop.material.SpeedRange;
import org.handwheel.shop.thread.ScrewHoles;
import org.handwheel.shop.thread.ScrewThread;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;

/** Threads, fits, drills and materials, from the tables, with where each value comes from. */
final class StandardHover {
  private final StandardTables tables;

  StandardHover(StandardTables tables) {
    this.tables = tables;
  }

  /** A thread by its designation: tapping drill and clearance holes. */
  Optional<HoverText> thread(String designation) {
    return tables.threads().find(designation).map(this::thread);
  }

  private HoverText thread(ScrewThread thread) {
    HoverText.Builder text = HoverText.titled("Thread " + thread.designation());
    text.fact("Major diameter", thread.major().toString());
    text.fact(
        "Pitch",
        thread.pitch()
            + ", "
            + QuantityText.number(thread.threadsPerInch().doubleValue(), 2)
            + " to the inch");
    Drill drill = thread.tapDrill();
    text.fact(
        "Tapping drill",
        drill.words()
            + ", which is "
            + drill.diameter()
            + ": "
            + QuantityText.number(thread.percentOfThread(drill.diameter()), 0)
            + " per cent of thread");
    thread.minorLimits().ifPresent(limits -> text.fact("Tapped hole", limits.toString()));
    clearance(text, "Clearance hole, close", thread, ScrewHoles.Clearance.CLOSE);
    clearance(text, "Clearance hole, normal", thread, ScrewHoles.Clearance.NORMAL);
    clearance(text, "Clearance hole, free", thread, ScrewHoles.Clearance.FREE);
    tables
        .screwHoles()
        .counterbore(thread)
        .ifPresent(
            bore ->
                text.fact(
                    "Counterbore for a socket head",
                    bore.diameter() + ", " + bore.depth() + " deep"));
    tables
        .screwHoles()
        .countersink(thread)
        .ifPresent(
            sink ->
                text.fact(
                    "Countersink for a flat head",
                    sink.diameter()
                        + ", "
                        + QuantityText.number(sink.includedDegrees(), 0)
                        + " deg"));
    text.formula("Thread: " + thread.provenance());
    text.formula("per cent of thread = (major - hole) / (thread's full depth on both sides) x 100");
    return text.build();
  }

  private void clearance(
      HoverText.Builder text, String label, ScrewThread thread, ScrewHoles.Clearance wanted) {
    tables
        .screwHoles()
        .clearance(thread, wanted)
        .ifPresent(hole -> text.fact(label, hole.diameter().toString()));
  }

  /** An ISO 286 class on a nominal size. */
  Optional<HoverText> fit(String code, Length nominal) {
    Optional<LengthRange> limits = tables.fits().limits(nominal, code);
    Optional<LengthRange> deviations = tables.fits().deviations(nominal, code);
    if (limits.isEmpty() || deviations.isEmpty()) {
      return Optional.empty();
    }
    HoverText.Builder text = HoverText.titled(nominal + " " + code);
    text.fact("Limits", limits.get().toString());
    text.fact("Deviations", deviations.get().toString());
    text.fact("Middle", limits.get().middle().toString());
    tables.fits().provenance(code).ifPresent(known -> text.formula("ISO 286: " + known));
    return Optional.of(text.build());
  }

  /** A drill by its designation, in both units. */
  Optional<HoverText> drill(String designation) {
    return tables
        .drills()
        .find(designation)
        .map(
            drill -> {
              HoverText.Builder text =
                  HoverText.titled("Drill " + drill.words() + ": " + drill.diameter());
              text.fact("Exactly", QuantityText.exact(drill.diameter()));
              InchFraction.words(drill.diameter()).ifPresent(near -> text.fact("Fraction", near));
              tables
                  .drilling()
                  .feedPerTurn(drill.diameter())
                  .ifPresent(
                      feed -> text.fact("Usual feed", feed.perTurn() + " a turn of the spindle"));
              text.formula("Diameter: " + drill.provenance());
              return text.build();
            });
  }

  /** A material by its name. */
  Optional<HoverText> material(String name) {
    return tables.materials().find(name).map(StandardHover::material);
  }

  private static HoverText material(Material material) {
    HoverText.Builder text = HoverText.titled(material.name() + ": " + material.words());
    text.fact("Group", "ISO 513 " + material.isoGroup() + ", " + material.isoGroup().words());
    text.fact("Cutting speed, high-speed steel", speeds(material.speeds().highSpeedSteel()));
    text.fact("Cutting speed, carbide", speeds(material.speeds().carbide()));
    text.fact(
        "Density",
        QuantityText.number(material.density(), 0)
            + " kg/m3 ("
            + QuantityText.number(material.density() * POUNDS_PER_CUBIC_INCH, 3)
            + " lb/in3)");
    text.fact("Cutting fluid", material.cuttingFluid());
    text.fact("Drill point", QuantityText.number(material.drillPointDegrees(), 0) + " deg");
    if (!material.caution().isBlank()) {
      text.note("Take care: " + material.caution());
    }
    text.note(CuttingAdvice.CAUTION);
    text.formula("Speeds: " + material.speeds().provenance());
    text.formula("Density and force: " + material.provenance());
    return text.build();
  }

  /** 1 lb/in3 is 27679.9 kg/m3: 0.45359237 kg over 0.0254 m cubed (NIST SP 811). */
  private static final double POUNDS_PER_CUBIC_INCH = 0.0254 * 0.0254 * 0.0254 / 0.45359237;

  private static String speeds(SpeedRange range) {
    return QuantityText.surfaceSpeed(range.low())
        + " to "
        + QuantityText.surfaceSpeed(range.high());
  }
}
