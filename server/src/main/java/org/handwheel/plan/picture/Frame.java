package org.handwheel.plan.picture;

import org.handwheel.plan.picture.Picture.View;
import org.locationtech.jts.geom.Envelope;

/** A view on the paper. */
record Frame(View view, Envelope box, double left, double top, double scale) {
  double x(double x) {
    return left + (x - box.getMinX()) * scale;
  }

  double y(double y) {
    return top + (box.getMaxY() - y) * scale;
  }

  double right() {
    return left + box.getWidth() * scale;
  }

  double bottom() {
    return top + box.getHeight() * scale;
  }
}
