package org.handwheel.ide;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.antlr.v4.runtime.ParserRuleContext;

/**
 * The statements and clauses of the language: how each is written and what it means, by the name of
 * its alternative in the grammar. A slot to be filled stands in braces.
 */
final class WrittenForms {
  private static final String HEADERS =
      """
      planHeader | plan "{title}" rev {revision} | Begins a plan file and names the part.
      shopHeader | shop "{title}" | Begins a shop file: what the shop owns.
      partHeader | part {name} | The part as the drawing has it; its faces keep their names however it is held.
      stockHeader | stock {name} | The piece to start from.
      setupHeader | setup {name} "{title}" | One holding of the work and what is done in it, in order.
      ownHeader | own {kind} {name} "{title}" | A thing the shop owns; its properties follow, one a line.
      logHeader | log "{title}" | What was measured on one piece; later cuts are worked out from the readings.
      inspectHeader | inspect | What is checked on the finished part.
      """;

  private static final String COMMON =
      """
      languageLine | language {level} | The level of the language the file is written in.
      unitsLine | units {mm or in or thou} | The unit of every number in this file that has none.
      useLine | use "{file}" | Takes the things of a shop file; the path is relative to this file.
      letLine | let {name} = {value} | Gives a value a name, for use below this line.
      noteLine | note "{text}" | A remark that is printed with the plan.
      """;

  private static final String PART =
      """
      materialLine | material {material} | What it is made of: speeds, feeds, forces and weight follow.
      machineLine | machine {machine} | The machine the plan is for, if the shop has several.
      dimensionLine | {dimension} {size} {tolerance} | A size of the part, with +-a, +a/-b or limits a / b.
      datumLine | datum {letter} {face} | Names faces as datums.
      squareAllLine | square all {zone} | Every two faces that meet square, and opposite ones parallel, within the zone.
      relationLine | square {face} to {face} {zone} | How far a face may be from square or parallel to another (ISO 1101).
      flatLine | flat {face} {zone} | How far a face may be from flat (ISO 1101).
      generalToleranceLine | tolerance ISO 2768 {class} | The limits of sizes that have no tolerance of their own.
      placesToleranceLine | tolerance 0.0 +-{deviation}, 0.00 +-{deviation} | The limits of sizes without a tolerance, by the places they are written with.
      surfaceLine | surface {faces} Ra {roughness} | The roughness asked for.
      breakLine | break edges {size} | All edges without a chamfer are broken by this much.
      holeLine | hole {name} in {face}, dia {diameter} {fit}, at ({x}, {y}) from {corner}, through | A hole; a thread such as M6 may stand for the diameter.
      patternLine | pattern {name} of {hole}, circle dia {diameter}, count {count}, first at {angle}, about ({x}, {y}) | Repeats a hole on a circle, in a row or in a grid, or mirrored.
      sizeLine | size {length} x {width} x {height} | The stock's size, in the order of the part's own.
      skinLine | sawn {faces} | How faces of the stock are to begin with: sawn, rolled, cast, drawn, milled or ground.
      kerfLine | kerf {width} | How much the saw turns into chips at each cut.
      wanderLine | wander {distance} | How far the saw may run off.
      makeLine | make {count} | How many pieces are made.
      holeDia | dia {diameter} {fit} | Its diameter, with a fit such as H7 or a tolerance.
      holeThread | {thread} | A thread: the tapping drill comes from the tables.
      holeAt | at ({x}, {y}) from {corner} | Where its middle is, from a corner or from the centre of the face.
      holeThrough | through | It goes through the part.
      holeDepth | depth {depth} | The depth of the full diameter.
      holeThreadDepth | thread {depth} | The depth of full thread.
      holeDrillDepth | drill {depth} | How deep the tapping drill goes.
      holeSpotface | spotface dia {diameter} | A flat seat cut round the hole.
      holeCounterbore | counterbore dia {diameter} depth {depth} | A flat-bottomed larger hole for a screw's head.
      holeCountersink | countersink dia {diameter} | A cone for a flat head, measured at the surface.
      patternCircle | circle dia {diameter} | Equally spaced on a circle.
      patternRow | row | In a straight line, by steps.
      patternGrid | grid {columns} x {rows} | In columns and rows, by steps.
      patternCount | count {count} | How many holes.
      patternFirst | first at {angle} | Where the first hole is, counter-clockwise from the first coordinate.
      patternAbout | about ({x}, {y}) from {corner} | The middle of the circle.
      patternAt | at ({x}, {y}) from {corner} | The first hole of a row or grid.
      patternBy | by ({x}, {y}) | The step to the next hole.
      patternMirrored | mirrored {face} to {face} | All places once more on the other side of the part's middle.
      patternMirroredAbout | mirrored about ({x}, {y}) to ({x}, {y}) from {corner} | All places once more on the other side of a line.
      """;

  private static final String HOLDING =
      """
      holdInViseLine | hold in {vise}, up {face}, fixed {face}, on pair {parallels}, bar {diameter} at {height}, overhang {side} {length}, spacer {width} at {place}, stop at {place} | How the work sits in the vise.
      holdOnLine | hold on {table or plate}, up {face}, fixed {face}, clamp {clamp} at ({x}, {y}) | How the work is clamped down.
      holdUp | up {face} | The face that looks up.
      holdFixed | fixed {face} | The face against the fixed jaw; that jaw does not move and is the reference.
      holdOnPair | on pair {parallels} | Two parallels under the work, one at each jaw.
      holdOnOne | on one {parallels} | A single parallel under the work: it carries, but it rules nothing.
      holdOnBed | on bed | The work sits on the bed of the vise.
      holdOnSoftStrip | on soft-strip {thickness} | A soft strip under the work lets a raw face settle against the fixed jaw.
      holdBar | bar {diameter} at {height} | A round bar at the moving jaw presses the work flat against the fixed jaw.
      holdBeside | beside {packing} | Packing or a second parallel beside the work, at the moving jaw.
      holdSpacer | spacer {width} at {place} | A piece as wide as the work at the other end keeps the moving jaw straight.
      holdOverhang | overhang {side} {length} | How far an end stands out beyond the jaws.
      holdAt | at {place} | At which end of the jaws the work sits.
      holdStop | stop at {place} | A work stop at that end, so that the next piece comes to the same place.
      holdClamp | clamp {clamp} at ({x}, {y}) | A clamp and the point it bears on, from the left front corner as the work lies.
      seatLine | seat tapped, both parallels tight, grip light, upright on {face} with {square} | Tapping the work down and proving that it sits.
      seatTapped | tapped | Tapped down with a soft hammer.
      seatTight | both parallels tight | Neither parallel can be moved by hand: the work sits on both.
      seatLight | grip light | Gripped lightly first.
      seatUpright | upright on {face} with {square} | Set upright by a square held to a face.
      trueLine | true {vise} with {indicator}, {error} over {length} | Setting the fixed jaw true to the table's travel.
      tramLine | tram head {error} over {length} | Setting the head square to the table.
      """;

  private static final String TOOL =
      """
      cutterLine | cutter {cutter}, speed {speed}, feed {feed} | Puts a cutter in the spindle; Z zeroes are lost by it.
      toolSpeed | speed {speed} | The spindle speed to use with this cutter.
      toolFeed | feed {feed} | The feed to use with this cutter.
      touchLine | touch {face} with paper {thickness}, zero {axis} | Brings the cutter to a face until it just touches.
      findLine | find {face} from {place} with finder {finder}, zero {axis} at {edge or touch or centre} | Finds an edge or the middle of a hole.
      zeroLine | zero {axis} at {edge or touch or centre} | Sets the dial to zero where the machine stands.
      zeroClause | zero {axis} at {edge or touch or centre} | Sets the dial to zero there.
      setLine | set {axis} {depth} below {face} | Sets an axis to a depth below a face.
      lockLine | lock {axis} | Locks axes, so that cutting cannot move them.
      unlockLine | unlock {axis} | Frees axes.
      moveHeadLine | move head up {distance} | Moves the head on its column; on a round column X and Y are lost too.
      cleanLine | clean {face} at {depth}, at most {depth}, travel {side} to {side} | Skims a face until its marks are gone.
      roughLine | rough {face} to {size}, leaving {allowance}, pass {depth} | Takes a face near to a size and leaves metal for finishing.
      finishLine | finish {face} to {size}, one pass | Takes a face to its size; a size of the drawing means the middle of its limits.
      cutAt | at {depth} | The depth of the first and each further skim.
      cutAtMost | at most {depth} | The most that may come off.
      cutLeaving | leaving {allowance} | What stays on for finishing; about 0.25 mm (10 thou) is usual.
      cutPass | pass {depth} | The deepest pass.
      cutPasses | by {count} passes of {depth} | So many passes of so much.
      cutOnePass | one pass | All at once.
      cutConventional | conventional | The teeth cut against the feed: backlash does no harm.
      cutClimb | climb | The teeth cut with the feed and can pull the table by its backlash: light cuts only.
      cutTravel | travel {side} to {side} | The way the cutter goes along the work; the table goes the other way.
      cutOffset | offset {distance} toward {side} | Moves the cutter's middle off the middle of the face.
      cutStepOver | step over {distance} | The distance between lanes where one does not cover the face.
      cutSpeed | speed {speed} | The spindle speed for this cut.
      cutFeed | feed {feed} | The feed for this cut.
      cutRepeat | repeat | The last pass once more without a new depth, to take out the spring.
      holeCutLine | drill {hole}, {size} then {size}, with {tool}, depth {depth}, peck {depth} | Works on holes of the part: spot, drill, ream, tap, bore, counterbore, countersink.
      holeCutWith | with {tool} | The tool to use.
      holeCutByHand | by hand | Turned by hand, the spindle stopped.
      holeCutGuide | guide in spindle | A guide in the spindle keeps the tap upright.
      holeCutDepth | depth {depth} | How deep.
      holeCutPeck | peck {depth} | Drill so deep at a time, then draw back to clear the chips.
      holeCutSpeed | speed {speed} | The spindle speed.
      holeCutFeed | feed {feed} | The feed.
      featureLine | slot {name}, with {cutter}, leaving {allowance}, pass {depth}, conventional | Cuts a feature of the part.
      featureIn | in {face} | The face it is in.
      featureSeenFrom | seen from {face} | The face its outline is looked at from.
      featureAt | at ({x}, {y}) from {corner} | Where its middle is.
      featureWidth | width {width} {tolerance} | How wide.
      featureLength | length {length} {tolerance} | How long.
      featureDepth | depth {depth} | How deep.
      featureThrough | through | It goes through.
      featureSize | size {length} x {width} | Its size.
      featureRadius | radius {radius} | The radius of its corners.
      featureEllipse | ellipse {length} x {width} | An oval with these axes.
      featureObround | obround {length} x {width} | Straight sides with half-round ends.
      featureCircle | circle dia {diameter} {tolerance} | A round outline.
      featureCorner | corner ({x}, {y}) blend {radius} | A corner of a free outline: sharp, rounded by `blend`, or smooth where it says `tangent`.
      featureBoss | boss ({x}, {y}) radius {radius} | A round about a place; the sides of the outline run off it tangent.
      featureArc | arc radius {radius} | The next side is an arc that stands out.
      featureHollow | hollow radius {radius} | The next side is an arc that is hollow.
      featureTolerance | tolerance {tolerance} | How far the outline may be off.
      featureWith | with {cutter} | The cutter to use.
      featureLeaving | leaving {allowance} | What stays on for finishing.
      featurePass | pass {depth} | The deepest pass.
      featureCusp | cusp {height} | The highest ridge that may stay between steps.
      featureConventional | conventional | The teeth cut against the feed.
      featureClimb | climb | The teeth cut with the feed.
      featureSpeed | speed {speed} | The spindle speed for this cut.
      featureFeed | feed {feed} | The feed for this cut.
      deburrLine | deburr edges of {faces} | Takes the burrs off; a burr under the work lifts it.
      wipeLine | wipe {face or jaws or parallels or table} | Wipes chips away; a chip under the work lifts it.
      measureLine | measure {dimension} with {instrument} | What to measure here; later cuts build on it.
      readLine | in {setup}: read {dimension} {readings} with {instrument} | What was measured; several readings show how parallel it is.
      logNoteLine | in {setup}: note "{text}" | A remark about this piece.
      checkRelationLine | check square {face} to {face} with {instrument} | Checks how two faces lie.
      checkFlatLine | check flat {face} with {instrument} | Checks a face for flatness.
      checkLine | check {what} with {instrument} | Checks sizes, holes or features of the finished part.
      propertyLine | {property}: {value} | A property of the thing.
      """;

  /** Features as a part has them; in a setup the same words cut them. */
  private static final String FEATURES =
      """
      slot | slot {name} in {face}, at ({x}, {y}) from {corner}, width {width}, length {length}, depth {depth} | A groove of a width.
      pocket | pocket {name} in {face}, at ({x}, {y}) from {corner}, size {length} x {width}, radius {radius}, depth {depth} | A sunk area.
      step | step {name} in {face}, at ({x}, {y}) from {corner}, size {length} x {width}, depth {depth} | A lowered edge.
      profile | profile {name} seen from {face}, radius {radius} | A shape round the part's edge.
      outline | outline {name} in {face}, at ({x}, {y}) from {corner}, ellipse {length} x {width}, tolerance +-{tolerance} | An oval or round form: an ellipse, an obround or a circle.
      corner | corner {name} seen from {face}, at ({x}, {y}) from {corner}, radius {radius} | A rounded corner; all four without a place.
      chamfer | chamfer {name} in {face}, width {width} | A sloped edge.
      """;

  private static final Pattern SLOT = Pattern.compile("\\{([^}]*)}");
  private static final Map<String, Form> FORMS = read(HEADERS + COMMON + PART + HOLDING + TOOL);
  private static final Map<String, Form> OF_PART = read(FEATURES);

  private WrittenForms() {}

  /**
   * A statement or a clause.
   *
   * @param pattern as written, slots in braces
   * @param meaning one sentence
   */
  record Form(String pattern, String meaning) {
    /** As shown: slots of one word in capitals, others without their braces. */
    String shown() {
      return SLOT.matcher(pattern)
          .replaceAll(
              slot ->
                  slot.group(1).contains(" ")
                      ? slot.group(1)
                      : slot.group(1).toUpperCase(Locale.ROOT));
    }

    /** A form that several words share, under the word that was written. */
    Form under(String first) {
      int blank = pattern.indexOf(' ');
      return blank < 0 || pattern.startsWith("{")
          ? this
          : new Form(first + pattern.substring(blank), meaning);
    }
  }

  /** The forms of statements that begin with one of several words. */
  private static final Set<String> SHARED =
      Set.of("relationLine", "skinLine", "holeCutLine", "featureLine");

  private static Map<String, Form> read(String table) {
    Map<String, Form> forms = new HashMap<>();
    for (String line : table.lines().toList()) {
      int first = line.indexOf(" | ");
      int second = line.indexOf(" | ", first + 3);
      Form form = new Form(line.substring(first + 3, second), line.substring(second + 3));
      if (forms.put(line.substring(0, first), form) != null) {
        throw new IllegalStateException("two forms of " + line.substring(0, first));
      }
    }
    return Map.copyOf(forms);
  }

  /** The form of an alternative of the grammar, such as {@code cutLeaving}. */
  static Optional<Form> named(String alternative) {
    return Optional.ofNullable(FORMS.get(alternative));
  }

  /** How a feature is described in a part, by its first word. */
  static Optional<Form> ofPart(String word) {
    return Optional.ofNullable(OF_PART.get(word));
  }

  /** The form of a node of the tree, under the word it begins with. */
  static Optional<Form> of(ParserRuleContext context) {
    String alternative = alternative(context.getClass());
    String first = context.getStart() == null ? "" : context.getStart().getText();
    return named(alternative)
        .map(
            form ->
                SHARED.contains(alternative) ? form.under(first.toLowerCase(Locale.ROOT)) : form);
  }

  /** The name of a generated node class in the grammar. */
  static String alternative(Class<?> node) {
    String name = node.getSimpleName().replaceFirst("Context$", "");
    return name.substring(0, 1).toLowerCase(Locale.ROOT) + name.substring(1);
  }
}
