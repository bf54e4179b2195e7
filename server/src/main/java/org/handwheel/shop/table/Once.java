package org.handwheel.shop.table;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * A value that is worked out when it is first asked for, once, whichever threads ask. If that
 * fails, the next to ask tries again.
 */
public final class Once<T> {
  private final Supplier<T> source;
  private volatile @Nullable T value;

  public Once(Supplier<T> source) {
    this.source = source;
  }

  public T get() {
    T known = value;
    return known != null ? known : first();
  }

  private synchronized T first() {
    T known = value;
    if (known == null) {
      known = source.get();
      value = known;
    }
    return known;
  }
}
