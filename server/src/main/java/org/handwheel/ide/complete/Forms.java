package org.handwheel.ide.complete;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.antlr.v4.runtime.Token;
import org.handwheel.grammar.HandwheelParser;
import org.handwheel.ide.Explanation;
import org.handwheel.syntax.Expectations.Expected;
import org.handwheel.syntax.Vocabulary;

/** The written form that goes with a keyword, by where it stands, and what it is for. */
final class Forms {
  /** Rules that give their keywords a meaning of their own. */
  private static final List<Integer> CLAUSES =
      List.of(
          HandwheelParser.RULE_header,
          HandwheelParser.RULE_statement,
          HandwheelParser.RULE_ownKind,
          HandwheelParser.RULE_holeClause,
          HandwheelParser.RULE_patternClause,
          HandwheelParser.RULE_holdClause,
          HandwheelParser.RULE_rest,
          HandwheelParser.RULE_seatClause,
          HandwheelParser.RULE_toolClause,
          HandwheelParser.RULE_touchWith,
          HandwheelParser.RULE_zeroClause,
          HandwheelParser.RULE_cutClause,
          HandwheelParser.RULE_holeCutClause,
          HandwheelParser.RULE_featureClause);

  private static final Map<String, List<Form>> FORMS = read();

  private Forms() {}

  /**
   * A written form.
   *
   * @param text with places to fill in: {@code at {depth}}
   * @param about what it is for
   */
  record Form(String text, String about) {}

  /** The forms of a keyword; one of nothing but the word itself where none are set down. */
  static List<Form> of(Expected expected, List<Token> before) {
    String keyword = Vocabulary.keyword(expected.tokenType());
    // In the middle of a statement only its first words have forms of their own.
    String clause = clause(expected);
    boolean statement = clause.equals("statement") || clause.equals("header");
    boolean middle = statement && !before.isEmpty();
    // The pass of `one pass` is not the one of `pass 0.5`: a form is that of a clause's first word.
    boolean begins = !beginning(expected).isEmpty();
    List<Form> forms = middle || !begins ? null : FORMS.get(clause + " " + keyword);
    return forms == null ? List.of(new Form(keyword, "")) : forms;
  }

  /** The clause or statement a keyword is in; empty if in none. */
  static String clause(Expected expected) {
    return innermost(expected.rules());
  }

  /** The clause or statement that begins with a keyword; empty if none does. */
  private static String beginning(Expected expected) {
    return innermost(expected.begun());
  }

  private static String innermost(List<Integer> rules) {
    for (int i = rules.size() - 1; i >= 0; i--) {
      if (CLAUSES.contains(rules.get(i))) {
        return HandwheelParser.ruleNames[rules.get(i)];
      }
    }
    return "";
  }

  static String topic(Expected expected) {
    return "word " + beginning(expected) + " " + Vocabulary.keyword(expected.tokenType());
  }

  /** What a keyword is for; empty if nothing is set down. */
  static Explanation about(String key) {
    List<Form> forms = FORMS.get(key);
    if (forms == null) {
      return Explanation.NONE;
    }
    StringBuilder out = new StringBuilder();
    for (Form form : forms) {
      out.append(out.isEmpty() ? "" : "\n\n")
          .append('`')
          .append(form.text().replaceAll("[{}]", "").replaceAll("\\s*\n\\s*", "; "))
          .append("`\n")
          .append(form.about());
    }
    return Explanation.of(out.toString());
  }

  private static Map<String, List<Form>> read() {
    Map<String, List<Form>> forms = new LinkedHashMap<>();
    String clause = "";
    for (String line : TABLE.lines().toList()) {
      if (line.isBlank()) {
        continue;
      }
      if (line.endsWith(":") && !line.contains("|")) {
        clause = line.substring(0, line.length() - 1);
        continue;
      }
      String[] parts = line.split("\\|", 2);
      String text = parts[0].strip().replace("\\n", "\n");
      String keyword = text.split("[ \n]", 2)[0];
      forms
          .computeIfAbsent(clause + " " + keyword, key -> new ArrayList<>())
          .add(new Form(text, parts[1].strip()));
    }
    Map<String, List<Form>> fixed = new LinkedHashMap<>();
    forms.forEach((key, list) -> fixed.put(key, List.copyOf(list)));
    return Map.copyOf(fixed);
  }

  private static final String TABLE =
      """
      header:
      plan "{title}" | Begins a plan: its title, and its revision with `rev`.
      shop "{title}" | Begins a shop file: what the shop owns.
      part\\n  material {material}\\n  length {length}\\n  width {width}\\n  height {height} | The part as the drawing has it: sizes with tolerances, datums, holes and features.
      stock\\n  size {length} x {width} x {height}\\n  sawn {faces} | The piece to start from: its size and how each face was made.
      setup {name} "{title}"\\n  hold in {vise}, up {up}, fixed {fixed}, on pair {parallels} | One holding of the work and what is done in it.
      own {kind} {name} | A thing of the shop with its properties.
      log "{title}"\\n  in {setup}: read {dimension} {reading} with {instrument} | What was measured while making one piece.
      inspect\\n  check {dimension} with {instrument} | What is measured when the part is done.
      statement:
      language 1 | The level of the language the file is written in; the first line.
      units {units} | What a number without a unit means in this file: mm, in or thou.
      use "{file}" | A shop file whose things this file may name.
      let {name} = {value} | A value with a name.
      note "{text}" | A remark that goes onto the sheet.
      material {material} | What the work is made of.
      machine {machine} | The machine the plan is for.
      length {size} +-{tolerance} | The size from left to right.
      width {size} +-{tolerance} | The size from front to back.
      height {size} +-{tolerance} | The size from bottom to top.
      datum A {face} | Names a face as a datum of the drawing.
      square {face} to {reference} {zone} | How square one face is to be to another (ISO 1101).
      square all {zone} | All six faces square and parallel within a zone.
      parallel {face} to {reference} {zone} | How parallel a face is to be to the opposite one (ISO 1101).
      flat {face} {zone} | How flat a face is to be (ISO 1101).
      tolerance ISO 2768 m | The general tolerance for sizes that have none of their own.
      tolerance 0.0 +-{one}, 0.00 +-{two} | The title block's tolerance by the places a size is written with.
      surface {faces} Ra {roughness} | The roughness of faces.
      break edges {size} | How much to break sharp edges by.
      hole {name} in {face}, dia {size}, at ({x}, {y}) from left front, through | A hole of the drawing.
      hole {name} in {face}, {thread}, thread {depth}, drill {drill}, at ({x}, {y}) from left front | A tapped hole.
      pattern {name} of {hole}, circle dia {size}, count {count}, first at {angle} deg, about ({x}, {y}) | Repeats a hole on a circle.
      pattern {name} of {hole}, row, count {count}, at ({x}, {y}), by ({dx}, {dy}) | Repeats a hole in a row.
      size {length} x {width} x {height} | The sizes of the stock, along the part's own length, width and height.
      sawn {faces} | Faces as the saw left them.
      rolled {faces} | Faces of black bar, with scale.
      cast {faces} | Faces with the skin of a casting.
      drawn {faces} | Faces of bright bar.
      milled {faces} | Faces that were milled before.
      ground {faces} | Faces that were ground before.
      kerf {width} | How much the saw takes.
      wander {distance} | How far the saw may run off.
      make {count} | How many pieces to make.
      hold in {vise}, up {up}, fixed {fixed}, on pair {parallels} | How the work is held: which face is up, which lies against the fixed jaw, what is underneath.
      hold on {rest}, up {up}, clamp {clamp} at ({x}, {y}) | Clamped to the table or a plate.
      seat tapped, both parallels tight | Tap the work down; parallels that do not move prove that it sits.
      true {vise} with {instrument}, {error} over {length} | Sets the fixed jaw true to the table.
      tram head {error} over {length} | Sets the head square to the table.
      cutter {cutter} | Puts a cutter in the spindle; a zero touched with another is lost.
      touch {face} with paper {thickness}, zero {axis} | Brings the cutter to touch a face and sets the dial to zero.
      find {face} from {place} with finder {finder}, zero {axis} at edge | Finds an edge with a finder.
      find centre of {hole} with {instrument}, zero x y | Finds the middle of a hole.
      zero {axis} | Sets a dial to zero where the machine stands.
      set {axis} {depth} below {face} | Sets an axis to a depth below a face.
      lock {axes} | Locks axes that must not move.
      unlock {axes} | Frees axes again.
      move head {direction} {distance} | Moves the head on its column; on a round column X and Y are lost.
      clean {face} at {depth}, at most {most} | Skims a face until its marks are gone.
      rough {face} to {dimension} leaving {allowance}, pass {depth} | Takes a face down to near its size.
      finish {face} to {dimension} | Takes a face to size in one light cut.
      spot {hole} with {tool} | Starts a hole where it is to be.
      drill {hole} {size} | Drills holes; sizes in turn with `then`.
      ream {hole} with {tool} | Reams a drilled hole to size.
      tap {hole} by hand, guide in spindle | Cuts the thread of a hole.
      bore {hole} with {tool} | Bores a hole to size.
      counterbore {hole} with {tool} | Makes room for a screw's head.
      countersink {hole} with {tool} | Countersinks a hole.
      slot {name} | A slot.
      pocket {name} | A pocket.
      profile {name} | A profile.
      step {name} | A step.
      chamfer {name} | A chamfer.
      outline {name} | An outline: ellipse, obround, circle, or free of lines and arcs.
      window {name} | A cut-out that goes right through: ellipse, obround, circle, or free of lines and arcs.
      corner {name} | A rounded corner.
      deburr edges of {faces} | Takes the burrs off the edges of faces, before they are measured or lie on anything.
      deburr all edges | Takes the burrs off all twelve edges.
      wipe {what} | Wipes chips off faces, jaws, parallels or the table.
      measure {dimension} with {instrument} | Says that a size is measured here; what is read goes into a log.
      check {dimension} with {instrument} | A size to inspect.
      check square {face} to {reference} with {instrument} | A squareness to inspect.
      in {setup}: read {dimension} {reading} with {instrument} | What was read in a setup; several readings may follow each other.
      holeClause:
      dia {size} | The bore; a fit (H7) or a tolerance may follow.
      at ({x}, {y}) from left front | Where it is, from a corner of the face or its centre.
      through | It goes right through.
      depth {depth} | How deep it is at full diameter.
      thread {depth} | How deep the full thread goes.
      drill {depth} | How deep the tapping drill goes.
      spotface dia {size} | A flat round the hole.
      counterbore dia {size} depth {depth} | Room for a screw's head.
      countersink dia {size} | A cone for a screw's head.
      patternClause:
      circle dia {size} | Equally spaced on a circle.
      row | Equally spaced in a line.
      grid {columns} x {rows} | Rows and columns.
      count {count} | How many.
      first at {angle} deg | Where the first one is, counter-clockwise from +x.
      about ({x}, {y}) | The middle of the circle.
      at ({x}, {y}) | Where the first one is.
      by ({dx}, {dy}) | From one to the next.
      mirrored left to right | All places once more on the other side of the part's middle.
      mirrored about ({x1}, {y1}) to ({x2}, {y2}) | All places once more on the other side of a line.
      holdClause:
      up {up} | The face that looks up.
      fixed {fixed} | The face against the fixed jaw.
      on pair {parallels} | On two parallels of a set.
      on one {parallels} | On one parallel.
      on bed | On the bed of the vise.
      on soft-strip {thickness} | On a strip of soft metal or card, which lets a raw face settle.
      bar {dia} at mid-grip | A round bar at the moving jaw, so that the fixed jaw alone rules.
      beside {packing} | A second parallel or a packing piece beside the work, at the moving jaw.
      spacer {width} at {place} | A piece as wide as the work at the other end of the jaws.
      overhang {side} {length} | How far one end stands out beyond the jaws.
      at {place} | At which end of the jaws the work is.
      stop at {place} | At which end a work stop is.
      clamp {clamp} at ({x}, {y}) | A clamp and where it bears.
      seatClause:
      tapped | Tapped down with a soft hammer.
      both parallels tight | Neither parallel can be moved: the work sits.
      grip light | Gripped lightly first.
      upright on {face} with {instrument} | Set upright by a square.
      toolClause:
      speed {speed} rpm | The spindle speed.
      feed {feed} mm/tooth | The feed of a tooth.
      touchWith:
      paper {thickness} | A slip of paper of known thickness between cutter and work.
      zeroClause:
      zero {axis} | Sets the dial to zero there.
      cutClause:
      at {depth} | The depth of each skim.
      at most {most} | The most that may come off in all.
      leaving {allowance} | What is left for the finishing pass.
      pass {depth} | The deepest a pass may be; they are made equal.
      by {count} passes of {depth} | So many passes of a depth.
      one pass | All in one pass.
      conventional | The teeth come up against the feed: safe with backlash.
      climb | The teeth go with the feed: only light cuts where the table has backlash.
      travel {from} to {to} | Which way the cutter travels over the work.
      offset {distance} toward {side} | How far the cutter's axis is off the middle of the face.
      step over {distance} | From one pass to the next beside it.
      speed {speed} rpm | The spindle speed.
      feed {feed} mm/tooth | The feed of a tooth.
      repeat | Goes over it once more without a new depth.
      holeCutClause:
      with {tool} | The tool.
      by hand | By hand.
      guide in spindle | With the tap guided by the spindle.
      depth {depth} | How deep.
      peck {depth} | How deep before the drill is drawn out to clear chips.
      speed {speed} rpm | The spindle speed.
      feed {feed} mm/rev | The feed.
      featureClause:
      in {face} | The face it is in.
      seen from {face} | The face it is seen from.
      at ({x}, {y}) from left front | Where it is.
      width {size} | Its width.
      length {size} | Its length.
      depth {depth} | Its depth.
      through | It goes right through.
      size {length} x {width} | Its two sizes.
      radius {radius} | Its radius.
      ellipse {length} x {width} | An ellipse with these axes.
      obround {length} x {width} | A slot's shape: two half circles and two straight sides.
      circle dia {size} | A circle.
      corner ({x}, {y}) | A corner of a free outline.
      corner ({x}, {y}) blend {radius} | A rounded corner.
      corner ({x}, {y}) tangent | A place where two sides meet smoothly.
      boss ({x}, {y}) radius {radius} | A round about a place; the sides run off it tangent.
      arc radius {radius} | The next side stands out as an arc.
      hollow radius {radius} | The next side is hollow as an arc.
      tolerance +-{tolerance} | How far it may be off.
      with {cutter} | The cutter.
      leaving {allowance} | What is left for the finishing pass.
      pass {depth} | The deepest a pass may be.
      cusp {height} | How high the ridges between steps may be.
      conventional | The teeth come up against the feed.
      climb | The teeth go with the feed.
      speed {speed} rpm | The spindle speed.
      feed {feed} mm/tooth | The feed of a tooth.
      """;
}
