package org.handwheel.model;

import org.handwheel.syntax.Origin;

/** A value and where it was said. */
public record Located<T>(T value, Origin origin) {}
