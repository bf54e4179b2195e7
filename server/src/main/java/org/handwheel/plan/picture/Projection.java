package org.handwheel.plan.picture;

/** How views stand to one another on the sheet. Source: ISO 5456-2. */
public enum Projection {
  /** Each view lies on the far side: the plan below, the view from the left at the right. */
  FIRST,
  /** Each view lies on the near side: the plan above, the view from the right at the right. */
  THIRD
}
