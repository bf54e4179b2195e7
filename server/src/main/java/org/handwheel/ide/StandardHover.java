package org.handwheel.ide;

import java.util.Optional;
import java.util.stream.Collectors;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.drill.Drill;
import org.handwheel.shop.drill.DrillPoint;
import org.handwheel.shop.drill.Reaming;
import org.handwheel.shop.material.Material;
import org.handwheel.shop.material.SpeedRange;
import org.handwheel.shop.thread.ScrewHoles;
import org.handwheel.shop.thread.ScrewThread;
import org.handwheel.shop.thread.Tapping;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;

/** Threads, fits, drills and materials, from the tables, with where each value comes from. */
public final class StandardHover {
  private final StandardTables tables;

  public StandardHover(StandardTables tables) {
    this.tables = tables;
  }

  /** A thread by its designation: tapping drill and clearance holes. */
  public Optional<HoverText> thread(String designation) {
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
            + percent(thread, drill)
            + " per cent of thread");
    String others =
        tables.drills().all().stream()
            .filter(other -> !other.equals(drill) && isUsual(thread, other))
            .map(other -> other.words() + " (" + percent(thread, other) + " %)")
            .collect(Collectors.joining(", "));
    if (!others.isEmpty()) {
      text.fact("Other drills", others);
    }
    text.fact(
        "Blind hole",
        "drill at least "
            + Tapping.leastFullDepth(thread, Length.ZERO)
            + " beyond the full thread, and "
            + DrillPoint.GENERAL.length(drill.diameter())
            + " for the drill's point");
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

  private static String percent(ScrewThread thread, Drill drill) {
    return QuantityText.number(thread.percentOfThread(drill.diameter()), 0);
  }

  /** Between 60 and 80 per cent of thread a tap neither strips nor binds (common practice). */
  private static boolean isUsual(ScrewThread thread, Drill drill) {
    double percent = thread.percentOfThread(drill.diameter());
    return percent >= 60 && percent <= 80;
  }

  private void clearance(
      HoverText.Builder text, String label, ScrewThread thread, ScrewHoles.Clearance wanted) {
    tables
        .screwHoles()
        .clearance(thread, wanted)
        .ifPresent(
            hole -> {
              Drill nearest = tables.drills().nearest(hole.diameter());
              boolean exact = nearest.diameter().equals(hole.diameter());
              text.fact(label, hole.diameter() + (exact ? "" : ", nearest " + nearest.words()));
            });
  }

  /** An ISO 286 class on a nominal size. */
  public Optional<HoverText> fit(String code, Length nominal) {
    Optional<LengthRange> limits = tables.fits().limits(nominal, code);
    Optional<LengthRange> deviations = tables.fits().deviations(nominal, code);
    if (limits.isEmpty() || deviations.isEmpty()) {
      return Optional.empty();
    }
    HoverText.Builder text = HoverText.titled(nominal + " " + code);
    text.fact("Limits", limits.get().toString());
    text.fact("Deviations", deviations.get().toString());
    text.fact("Middle", limits.get().middle().toString());
    if (Character.isUpperCase(code.charAt(0))) {
      LengthRange drilled = Reaming.drilledForMachine(nominal);
      text.fact("Drill before reaming", drilled + drills(drilled));
      text.formula("left for a machine reamer: 0.005 to 0.010 in (War Department TM 1-420)");
    }
    tables.fits().provenance(code).ifPresent(known -> text.formula("ISO 286: " + known));
    return Optional.of(text.build());
  }

  private String drills(LengthRange range) {
    String names =
        tables.drills().all().stream()
            .filter(drill -> range.contains(drill.diameter()))
            .map(Drill::words)
            .collect(Collectors.joining(", "));
    return names.isEmpty() ? "" : ": " + names;
  }

  /** A drill by its designation, in both units. */
  public Optional<HoverText> drill(String designation) {
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
              text.fact(
                  "Point",
                  DrillPoint.GENERAL.length(drill.diameter())
                      + " long at 118 deg, "
                      + DrillPoint.TOUGH.length(drill.diameter())
                      + " at 135 deg");
              tables
                  .drilling()
                  .jobberLength(drill.diameter())
                  .ifPresent(overall -> text.fact("Jobber length", overall + " over all"));
              String tapping =
                  tables.threads().all().stream()
                      .filter(thread -> thread.tapDrill().equals(drill))
                      .map(ScrewThread::designation)
                      .collect(Collectors.joining(", "));
              if (!tapping.isEmpty()) {
                text.fact("Tapping drill of", tapping);
              }
              text.formula("length of a point = diameter / (2 tan(angle/2))");
              text.formula("Diameter: " + drill.provenance());
              return text.build();
            });
  }

  /** A material by its name. */
  public Optional<HoverText> material(String name) {
    return tables.materials().find(name).map(StandardHover::material);
  }

  private static HoverText material(Material material) {
    HoverText.Builder text = HoverText.titled(material.name() + ": " + material.words());
    text.fact("Group", "ISO 513 " + material.isoGroup() + ", " + material.isoGroup().words());
    text.fact("Cutting speed, high-speed steel", speeds(material.speeds().highSpeedSteel()));
    text.fact("Cutting speed, carbide", speeds(material.speeds().carbide()));
    text.fact("Cutting speed, drill", speeds(material.drilling().speeds()));
    text.fact(
        "Feed a tooth",
        "end mill of 6 mm "
            + material.feed().endMill(Length.mm("6"))
            + ", of 16 mm "
            + material.feed().endMill(Length.mm("16"))
            + "; face mill "
            + material.feed().faceMill());
    text.fact(
        "Cutting force",
        "kc1.1 "
            + QuantityText.number(material.force().kc11(), 0)
            + " N/mm2, mc "
            + QuantityText.number(material.force().mc(), 2));
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
    text.formula("Drilling: " + material.drilling().provenance());
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
