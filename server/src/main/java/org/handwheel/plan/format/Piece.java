package org.handwheel.plan.format;

/**
 * Something on a line that stays, and what comes before it.
 *
 * @param start where it is in the file now
 * @param end one past its last unit
 * @param gap what is to stand between the piece before, or the line's start, and this
 * @param text how it is to be written
 */
record Piece(int start, int end, String gap, String text) {}
