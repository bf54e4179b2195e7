package org.handwheel.cli;

import java.io.Serial;

/** Something the user can mend, in one line. */
final class UserException extends RuntimeException {
  @Serial private static final long serialVersionUID = 1;

  UserException(String message) {
    super(message);
  }
}
