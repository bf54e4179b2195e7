package org.handwheel.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonParser;
import java.util.Set;
import org.handwheel.ide.HintSettings;
import org.handwheel.ide.HintSettings.Kind;
import org.junit.jupiter.api.Test;

/** Settings of hints as editors send them. */
final class HintSettingsTests {
  private static Set<Kind> read(String json) {
    return HintAnswers.read(JsonParser.parseString(json), HintSettings.ALL).shown();
  }

  @Test
  void withOrWithoutTheNameAround() {
    assertThat(read("{\"handwheel\":{\"hints\":{\"size\":false}}}"))
        .containsExactlyInAnyOrder(Kind.DIAL, Kind.DIRECTION);
    assertThat(read("{\"hints\":{\"dial\":false,\"direction\":false,\"size\":true}}"))
        .containsExactly(Kind.SIZE);
  }

  @Test
  void whatIsNotSaidOrNoTruthStays() {
    assertThat(read("null")).hasSize(3);
    assertThat(read("[]")).hasSize(3);
    assertThat(read("{}")).hasSize(3);
    assertThat(read("{\"handwheel\":null}")).hasSize(3);
    assertThat(read("{\"handwheel\":{\"hints\":{\"size\":\"no\",\"dial\":0,\"direction\":null}}}"))
        .hasSize(3);
    assertThat(HintAnswers.read(null, HintSettings.ALL).shown()).hasSize(3);
  }
}
