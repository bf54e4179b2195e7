package org.handwheel.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.handwheel.work.PlanRun.SetupRun;
import org.jspecify.annotations.Nullable;

/**
 * What is taken from the runs of single setups, by its type, and looks at nothing but the run: so
 * it holds as long as the run is there, whatever else changes, and a question about the whole plan
 * does not go through every line again.
 */
final class Gathered {
  private final Map<Class<?>, IdentityHashMap<SetupRun, Object>> before;
  private final Map<Class<?>, IdentityHashMap<SetupRun, Object>> now = new HashMap<>();

  /**
   * @param earlier of an earlier check, or nothing
   */
  Gathered(@Nullable Gathered earlier) {
    this.before = earlier == null ? Map.of() : earlier.now;
  }

  /** Of each of the setups, in order; those of an earlier check are taken over. */
  <T> List<T> of(List<SetupRun> setups, Class<T> type, Function<SetupRun, T> gather) {
    IdentityHashMap<SetupRun, Object> known = before.getOrDefault(type, new IdentityHashMap<>());
    IdentityHashMap<SetupRun, Object> kept =
        now.computeIfAbsent(type, key -> new IdentityHashMap<>(setups.size()));
    List<T> all = new ArrayList<>(setups.size());
    for (SetupRun setup : setups) {
      Object one = known.get(setup);
      T value = one == null ? gather.apply(setup) : type.cast(one);
      kept.put(setup, value);
      all.add(value);
    }
    return all;
  }
}
