package org.handwheel.files;

/** Where the texts of a workspace come from. */
@FunctionalInterface
public interface TextSource {
  /** The text at a workspace path, or why there is none. */
  TextFile.Result read(String path);
}
