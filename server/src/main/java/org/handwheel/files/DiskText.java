package org.handwheel.files;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;

/**
 * The files below a root on disk. What lies outside it, also through a link, or is written in other
 * capitals than on disk is refused.
 */
public record DiskText(WorkspaceRoot root) implements TextSource {
  @Override
  public TextFile.Result read(String path) {
    try {
      Path file = root.file(path);
      Path real = file.toRealPath();
      Path realRoot = root.real();
      if (!real.startsWith(realRoot)) {
        return new TextFile.Refused("a link leads outside the workspace");
      }
      String written = WorkspaceRoot.slashed(realRoot.relativize(real));
      if (written.equalsIgnoreCase(path) && !written.equals(path)) {
        // It opens here, but not on a system that tells capitals apart.
        return new TextFile.Refused("on disk its name is written \"" + written + "\"");
      }
      return TextFile.read(file);
    } catch (InvalidPathException e) {
      return new TextFile.Refused("no file can have this name here");
    } catch (IOException e) {
      return new TextFile.Refused(TextFile.reason(e));
    }
  }
}
