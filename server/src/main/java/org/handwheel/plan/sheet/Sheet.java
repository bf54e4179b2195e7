package org.handwheel.plan.sheet;

import java.util.List;
import org.handwheel.model.LogSection;
import org.handwheel.model.PartDimension;
import org.handwheel.plan.picture.Drawing;
import org.handwheel.units.Length;
import org.handwheel.units.LengthRange;
import org.handwheel.units.LengthUnit;
import org.handwheel.work.DialMove;
import org.handwheel.work.DialMove.Stop;
import org.handwheel.work.hole.CoordinateTable;
import org.jspecify.annotations.Nullable;

/**
 * What a sheet says, before anything is laid out. Sizes and dials are those of the engine, as they
 * are; only their words are made here.
 *
 * @param title the plan's, or its file's name
 * @param revision what the plan says behind {@code rev}, if it does
 * @param path the plan's file
 * @param piece the piece whose readings count, or nothing for the plan as planned
 * @param about machine, material and the like
 * @param stock what to saw
 * @param warnings what a check finds, and what is missing from the sheet
 */
public record Sheet(
    String title,
    @Nullable String revision,
    String path,
    @Nullable String piece,
    List<Fact> about,
    List<Fact> stock,
    List<Tool> tools,
    List<SetupPage> setups,
    List<Check> checks,
    List<String> warnings) {
  public Sheet {
    about = List.copyOf(about);
    stock = List.copyOf(stock);
    tools = List.copyOf(tools);
    setups = List.copyOf(setups);
    checks = List.copyOf(checks);
    warnings = List.copyOf(warnings);
  }

  /** The sheet with one of its setups alone. */
  public Sheet only(int number) {
    return new Sheet(
        title,
        revision,
        path,
        piece,
        about,
        stock,
        tools,
        setups.stream().filter(setup -> setup.number() == number).toList(),
        List.of(),
        warnings);
  }

  /** Something named and what it is. */
  public record Fact(String label, String value) {}

  /**
   * A thing to lay out.
   *
   * @param name as the plan names it
   * @param words what it is
   */
  public record Tool(String name, String words) {}

  /**
   * One setup.
   *
   * @param number from 1
   * @param name its name in the plan, if it has one
   * @param drawing its picture, or nothing where it is not known how the work lies
   */
  public record SetupPage(
      int number,
      @Nullable String name,
      String title,
      @Nullable Drawing drawing,
      List<Fact> facts,
      List<SheetStep> steps,
      List<CoordinateTable> holes,
      List<OutlineTable> outlines) {
    public SetupPage {
      facts = List.copyOf(facts);
      steps = List.copyOf(steps);
      holes = List.copyOf(holes);
      outlines = List.copyOf(outlines);
    }
  }

  /**
   * One thing to do and to tick off.
   *
   * @param number from 1 in its setup
   * @param line the plan's line, from 1
   * @param action what to do, as a sentence without its full stop
   * @param dial how the dial of a cut's depth is set, if it is counted
   * @param expected the size after it, for a cut
   * @param ifRead what to wind for what is read, before a finishing cut
   * @param measure what to write down, for a measurement
   */
  public record SheetStep(
      int number,
      int line,
      String action,
      List<Fact> facts,
      @Nullable DialMove dial,
      @Nullable Expected expected,
      @Nullable IfRead ifRead,
      @Nullable ToMeasure measure) {
    public SheetStep {
      facts = List.copyOf(facts);
    }
  }

  /**
   * A size that is expected.
   *
   * @param size what it may be, over all pieces, or by the readings of this one
   * @param limits what the drawing allows, if this step makes it the finished size
   */
  public record Expected(PartDimension dimension, LengthRange size, @Nullable LengthRange limits) {}

  /**
   * What to write down.
   *
   * @param expected what it should be, if that is known
   * @param limits what the drawing allows, if the size is the finished one by now
   * @param with the instrument
   * @param reading what the log has for it already
   */
  public record ToMeasure(
      PartDimension dimension,
      @Nullable LengthRange expected,
      @Nullable LengthRange limits,
      String with,
      LogSection.@Nullable Reading reading) {}

  /**
   * What to wind for what is read.
   *
   * @param unit the unit the instrument is read in
   * @param step between two rows
   */
  public record IfRead(PartDimension dimension, LengthUnit unit, Length step, List<Row> rows) {
    public IfRead {
      rows = List.copyOf(rows);
    }

    /**
     * One reading.
     *
     * @param wind turns and divisions from where the last cut was made, or nothing where nothing is
     *     to come off
     * @param stop where the dial stands then, counted from its zero, if the plan can know it
     */
    public record Row(Length read, Verdict verdict, @Nullable Stop wind, @Nullable Stop stop) {}

    /** What a reading means. */
    public enum Verdict {
      /** More than the drawing allows: cut. */
      CUT,
      /** Within the limits already: leave it. */
      IN_SIZE,
      /** Less than the drawing allows. */
      UNDER_SIZE
    }
  }

  /**
   * The way round an outline, or through a slot, a pocket or a step.
   *
   * @param title what is cut and the cutter
   * @param none why there is no table, or nothing if there is one
   */
  public record OutlineTable(
      String title, @Nullable String none, List<Fact> facts, List<Station> stations) {
    public OutlineTable {
      facts = List.copyOf(facts);
      stations = List.copyOf(stations);
    }

    /**
     * A place to stop, counted from where the facts say.
     *
     * @param turnsX whole turns away from zero; negative where the count runs down
     * @param markX the mark to stop at
     * @param first the handle to turn first, X or Y, or empty at the first station
     * @param turnsRound axes whose handle turns the other way from here on
     */
    public record Station(
        Length x,
        Length y,
        String turnsX,
        String markX,
        String turnsY,
        String markY,
        String first,
        String turnsRound) {}
  }

  /**
   * One line of the inspection.
   *
   * @param what is looked at
   * @param demand what the drawing asks, in words
   * @param limits what a size may be, for a size
   * @param with the instrument, or empty where the plan names none
   */
  public record Check(String what, String demand, @Nullable LengthRange limits, String with) {}
}
