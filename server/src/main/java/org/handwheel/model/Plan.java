package org.handwheel.model;

import java.util.List;
import org.handwheel.syntax.Finding;
import org.handwheel.syntax.Origin;
import org.jspecify.annotations.Nullable;

/**
 * A whole plan with everything it refers to.
 *
 * @param revision what stands behind {@code rev}, if anything does
 * @param header the plan's header line, or its first line
 * @param machine the machine it is for, if it can be told
 * @param usedFiles workspace paths of the shop files it rests on, read or not
 * @param findings what is wrong with its meaning: values, names, places of lines
 */
public record Plan(
    String path,
    String title,
    @Nullable String revision,
    Origin header,
    Owned.@Nullable Machine machine,
    Shop shop,
    @Nullable Part part,
    @Nullable Stock stock,
    List<Setup> setups,
    List<LogSection> logs,
    List<Inspection> inspections,
    Names names,
    List<String> usedFiles,
    List<Finding> findings) {
  public Plan {
    setups = List.copyOf(setups);
    logs = List.copyOf(logs);
    inspections = List.copyOf(inspections);
    usedFiles = List.copyOf(usedFiles);
    findings = List.copyOf(findings);
  }
}
