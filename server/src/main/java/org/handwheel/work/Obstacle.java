package org.handwheel.work;

import java.util.List;
import org.handwheel.syntax.Origin;

/**
 * Why a cut does not make a face square or parallel to another.
 *
 * @param why in words, without a full stop
 * @param origin the line to look at
 */
public record Obstacle(Kind kind, String why, Origin origin) {
  /** The kinds, each with the rule that reports it where it happens, or none. */
  public enum Kind {
    RAW_FIXED("raw-reference"),
    NO_BAR("bar-missing"),
    BAR_NOT_NEEDED("bar-not-needed"),
    SEAT_NOT_PROVED("seat-not-proved"),
    BURR("burr-under-work"),
    LOW_GRIP("too-low-grip"),
    LOOSE("grips-parallels"),
    COCKED("jaw-cocks"),
    NOT_TRUED("vise-not-trued"),
    MARKS_LEFT("face-not-cleaned", "stock-too-small"),
    JAWS_NOT_PARALLEL("not-parallel"),
    RAW_UNDER,
    CONFLICT,
    OTHER;

    @SuppressWarnings("ImmutableEnumChecker") // a list that cannot change
    private final List<String> rules;

    Kind(String... rules) {
      this.rules = List.of(rules);
    }

    /** Whether another rule already reports the cause. */
    public boolean isReportedElsewhere() {
      return !rules.isEmpty();
    }

    /** The rules that report it where it happens. */
    public List<String> rules() {
      return rules;
    }
  }
}
