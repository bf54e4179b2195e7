package org.handwheel.rules;

/**
 * Marks a rule that looks at one setup at a time: what it finds in a setup follows from the setup
 * worked through and from the part, the stock, the shop and the tables, not from other setups.
 *
 * <p>Such a rule is shown each setup alone, as a plan worked through that has no other, up to and
 * with the first that could not be read. What it found stays valid as long as none of that changes,
 * so that an edit costs the setups it touches. A rule without the mark sees the whole plan and runs
 * each time; when in doubt, leave the mark out.
 */
public interface EachSetup {}
