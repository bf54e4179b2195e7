package org.handwheel.syntax;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.atn.ATNState;
import org.antlr.v4.runtime.atn.RuleStopState;
import org.antlr.v4.runtime.atn.RuleTransition;
import org.antlr.v4.runtime.atn.Transition;
import org.antlr.v4.runtime.misc.IntervalSet;
import org.handwheel.grammar.HandwheelParser;
import org.jspecify.annotations.Nullable;

/**
 * What the grammar allows at a point of a line, found by walking the grammar's state machine over
 * the line's tokens. It serves error messages, and proposals at a cursor.
 *
 * <p>All readings of the line are followed at once, so what it says does not depend on the
 * decisions the parser had already taken when it met the error.
 */
public final class Expectations {
  private static final ATNState[] STARTS = {
    HandwheelParser._ATN.ruleToStartState[HandwheelParser.RULE_header],
    HandwheelParser._ATN.ruleToStartState[HandwheelParser.RULE_statement],
  };

  private final int position;
  private final boolean complete;
  private final List<Expected> expected;

  private Expectations(int position, boolean complete, List<Expected> expected) {
    this.position = position;
    this.complete = complete;
    this.expected = expected;
  }

  /**
   * One token that may come next.
   *
   * @param tokenType the kind of token
   * @param rules the rules that would take it, outermost first
   * @param entered how many of the rules are under way already; the others begin with this token
   */
  public record Expected(int tokenType, List<Integer> rules, int entered) {
    /** The rules that begin here, outermost first. */
    public List<Integer> begun() {
      return rules.subList(entered, rules.size());
    }

    // Written out: what a record has of its own is made at run time, which delays the first
    // finding.

    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Expected expected
          && tokenType == expected.tokenType
          && rules.equals(expected.rules)
          && entered == expected.entered;
    }

    @Override
    public int hashCode() {
      return (tokenType * 31 + rules.hashCode()) * 31 + entered;
    }
  }

  /** How many tokens of the line were understood. */
  public int position() {
    return position;
  }

  /** Whether the line could end here. */
  public boolean mayEnd() {
    return complete;
  }

  public List<Expected> expected() {
    return expected;
  }

  /** Walks over the tokens as far as any reading goes. */
  public static Expectations after(List<Token> tokens) {
    Walk walk = walk(tokens);
    return new Expectations(walk.at, walk.closure.complete, walk.closure.expected(walk.at));
  }

  /** Whether the tokens make a whole line. */
  static boolean isWhole(List<Token> tokens) {
    Walk walk = walk(tokens);
    return walk.at == tokens.size() && walk.closure.complete;
  }

  /** How many tokens can be read. */
  static int readable(List<Token> tokens) {
    return walk(tokens).at;
  }

  private record Walk(int at, Closure closure) {}

  private static Walk walk(List<Token> tokens) {
    Set<Config> configs = new LinkedHashSet<>(); // in the order of the grammar
    for (ATNState start : STARTS) {
      configs.add(new Config(start, null));
    }
    int at = 0;
    while (true) {
      Closure closure = close(configs, at);
      Set<Config> next = new LinkedHashSet<>();
      if (at < tokens.size()) {
        int type = tokens.get(at).getType();
        for (Step step : closure.steps) {
          if (step.takes.contains(type)) {
            next.add(new Config(step.target, step.stack));
          }
        }
      }
      if (next.isEmpty()) {
        return new Walk(at, closure);
      }
      configs = next;
      at++;
    }
  }

  /** A rule called, the rule it was called from, and how many tokens came before the call. */
  private record Frame(ATNState follow, int rule, int called, @Nullable Frame below, int hash) {
    Frame(ATNState follow, int rule, int called, @Nullable Frame below) {
      this(
          follow,
          rule,
          called,
          below,
          31 * (31 * follow.stateNumber + called) + (below == null ? 0 : below.hash));
    }

    /** Computed once: these are looked up by the thousand, each with the whole stack below it. */
    @Override
    public int hashCode() {
      return hash;
    }
  }

  private record Config(ATNState state, @Nullable Frame stack) {
    // Written out, as in Expected.

    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Config config
          && state.equals(config.state)
          && Objects.equals(stack, config.stack);
    }

    @Override
    public int hashCode() {
      return state.hashCode() * 31 + Objects.hashCode(stack);
    }
  }

  private record Step(IntervalSet takes, ATNState target, @Nullable Frame stack, int rule) {}

  private record Closure(List<Step> steps, boolean complete) {
    List<Expected> expected(int position) {
      Map<Expected, Boolean> found = new LinkedHashMap<>();
      for (Step step : steps) {
        List<Integer> rules = new ArrayList<>();
        rules.add(step.rule);
        int entered = position == 0 ? 0 : 1;
        for (Frame frame = step.stack; frame != null; frame = frame.below) {
          rules.add(0, frame.rule);
          entered += frame.called < position ? 1 : 0;
        }
        List<Integer> path = List.copyOf(rules);
        for (int type : step.takes.toList()) {
          found.put(new Expected(type, path, entered), true);
        }
      }
      return List.copyOf(found.keySet());
    }
  }

  private static Closure close(Set<Config> configs, int position) {
    List<Step> steps = new ArrayList<>();
    boolean complete = false;
    Set<Config> seen = new HashSet<>(configs);
    Deque<Config> open = new ArrayDeque<>(configs);
    while (!open.isEmpty()) {
      Config config = open.remove();
      if (config.state instanceof RuleStopState) {
        if (config.stack == null) {
          complete = true;
        } else {
          add(new Config(config.stack.follow, config.stack.below), seen, open);
        }
        continue;
      }
      for (Transition transition : config.state.getTransitions()) {
        if (transition instanceof RuleTransition call) {
          Frame frame = new Frame(call.followState, config.state.ruleIndex, position, config.stack);
          add(new Config(call.target, frame), seen, open);
        } else if (transition.isEpsilon()) {
          add(new Config(transition.target, config.stack), seen, open);
        } else {
          IntervalSet label = Objects.requireNonNull(transition.label());
          steps.add(new Step(label, transition.target, config.stack, config.state.ruleIndex));
        }
      }
    }
    return new Closure(steps, complete);
  }

  private static void add(Config config, Set<Config> seen, Deque<Config> open) {
    if (seen.add(config)) {
      open.add(config);
    }
  }
}
