package org.handwheel.rules.name;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.handwheel.model.Located;
import org.handwheel.model.OwnKind;
import org.handwheel.model.Part;
import org.handwheel.model.Stock;
import org.handwheel.rules.Checkup;
import org.handwheel.rules.SimpleRule;
import org.handwheel.shop.material.Material;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Finding.Fix;
import org.handwheel.syntax.Nearest;
import org.handwheel.syntax.Severity;
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
        || checkup.tables().materials().find(material.value()).isPresent()
        || checkup.plan().shop().findPiece(OwnKind.MATERIAL, material.value()).isPresent()) {
      return;
    }
    List<String> names = checkup.tables().materials().all().stream().map(Material::name).toList();
    Optional<String> near = Nearest.to(material.value(), names);
    String message = "no material `" + material.value() + "` is known";
    if (near.isEmpty()) {
      out.accept(
          finding(
              material.origin(),
              message + "; describe it in the shop: `own material " + material.value() + "`"));
      return;
    }
    out.accept(
        finding(material.origin(), message + "; did you mean `" + near.get() + "`?")
            .withFix(Fix.replace("Write `" + near.get() + "`", material.origin(), near.get())));
  }
}
