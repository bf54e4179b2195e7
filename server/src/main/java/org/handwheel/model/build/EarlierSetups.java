package org.handwheel.model.build;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import org.handwheel.model.Part;
import org.handwheel.model.Setup;
import org.handwheel.model.Shop;
import org.handwheel.syntax.Section;
import org.jspecify.annotations.Nullable;

/**
 * Setups taken over from an earlier reading where neither their text nor what it rests on has
 * changed, and those of this reading for the next.
 */
final class EarlierSetups {
  private final FileBuilder file;
  private final Shop shop;
  private final @Nullable Part part;
  private final Map<Section, SetupRead> earlier;
  private final Map<Section, SetupRead> now = new HashMap<>();
  private @Nullable SetupGround ground;
  private int groundAt;

  /** Earlier grounds compared with the one here: most setups of a file share one. */
  private final IdentityHashMap<SetupGround, Boolean> compared = new IdentityHashMap<>();

  EarlierSetups(FileBuilder file, Shop shop, @Nullable Part part, Map<Section, SetupRead> earlier) {
    this.file = file;
    this.shop = shop;
    this.part = part;
    this.earlier = earlier;
  }

  /** The ground a setup stands on that is read next. */
  SetupGround ground() {
    SetupGround known = ground;
    if (known != null && groundAt == file.commonLines()) {
      return known;
    }
    SetupGround next = SetupGround.of(file, shop, part);
    ground = next;
    groundAt = file.commonLines();
    compared.clear();
    return next;
  }

  /** The setup a section was read as earlier; its header still says the same. */
  @Nullable Setup setupOf(Section section) {
    SetupRead read = earlier.get(section);
    return read == null ? null : read.setup();
  }

  /** The earlier reading of a section, if it still holds. */
  @Nullable SetupRead find(Section section) {
    SetupRead read = earlier.get(section);
    if (read == null) {
      return null;
    }
    SetupGround here = ground();
    boolean doubtsHold =
        read.doubts() == SetupRead.Doubts.NOT_ASKED || read.ground().doubts().equals(here.doubts());
    if (!doubtsHold || !compared.computeIfAbsent(read.ground(), here::saysTheSame)) {
      return null;
    }
    now.put(section, read);
    return read;
  }

  void keep(Section section, SetupRead read) {
    now.put(section, read);
  }

  Map<Section, SetupRead> forNext() {
    return now;
  }
}
