package org.handwheel.syntax;

import static org.assertj.core.api.Assertions.assertThat;

class MessageTests {
  static void assertPlain(String message) {
    assertThat(message)
        .doesNotContain("<EOF>")
        .doesNotContain("extraneous")
        .doesNotContain("mismatched")
        .doesNotContain("no viable")
        .doesNotContain("missing ")
        .doesNotContain("null")
        .doesNotEndWith(".")
        .isNotBlank();
  }
}
