package org.handwheel.rules.name;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.handwheel.model.Located;
import org.handwheel.model.Owned;
import org.handwheel.model.Part;
import org.handwheel.model.Shop;
import org.handwheel.model.Stock;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.shop.StandardTables;
import org.handwheel.shop.material.Material;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Nearest;
import org.handwheel.syntax.Severity;
import org.handwheel.work.KnownMaterial;
import org.jspecify.annotations.Nullable;

/** A material that neither the shop nor the tables know. */
public final class MaterialUnknown extends SimpleRule {
  public MaterialUnknown() {
    super("material-unknown", Severity.WARNING);
  }

  @Override
  public void check(Checkup checkup, Consumer<Finding> out) {
    Part part = checkup.plan().part();
    Stock stock = checkup.plan().stock();
    check(checkup, part == null ? null : part.material(), out);
    check(checkup, stock == null ? null : stock.material(), out);
  }

  private void check(Checkup checkup, @Nullable Located<String> material, Consumer<Finding> out) {
    if (material == null
        || KnownMaterial.find(material.value(), checkup.plan().shop(), checkup.tables())
            .isPresent()) {
      return;
    }
    List<String> names = new ArrayList<>(names(checkup.tables()));
    checkup.plan().shop().all(Owned.Material.class).forEach(own -> names.add(own.name()));
    out.accept(
        unknown(
            material, names, "; describe it in the shop: `own material " + material.value() + "`"));
  }

  /** The materials of a shop that are said to be like one that the tables do not know. */
  public List<Finding> check(Shop shop, StandardTables tables) {
    return shop.all(Owned.Material.class).stream()
        .flatMap(own -> Stream.ofNullable(own.like()))
        .filter(like -> tables.materials().find(like.value()).isEmpty())
        .map(like -> unknown(like, names(tables), "; `like` names a material of the tables"))
        .toList();
  }

  private static List<String> names(StandardTables tables) {
    return tables.materials().all().stream().map(Material::name).toList();
  }

  private Finding unknown(Located<String> material, List<String> names, String remedy) {
    String message = "no material `" + material.value() + "` is known";
    Optional<String> near = Nearest.to(material.value(), names);
    return near.isEmpty()
        ? finding(material.origin(), message + remedy)
        : finding(material.origin(), message + "; did you mean `" + near.get() + "`?")
            .withFix(Fix.replace("Write `" + near.get() + "`", material.origin(), near.get()));
  }
}
