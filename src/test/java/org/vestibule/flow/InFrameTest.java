package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.store.index.UsualFrame;

/** How large a part of the mouth a view shows (common practice, no source). */
class InFrameTest {

  @ParameterizedTest
  @CsvSource({
    "palatal-right, segment",
    "lingual-front, segment",
    "upper-anterior, segment",
    "upper-right-occlusal, side",
    "lower-left-occlusal, side",
    "right-buccal, side",
    "left-buccal, side",
    "upper-occlusal, arch",
    "lower-occlusal, arch",
    "smile, arch",
    "frontal, mouth",
    "lips, nothing",
    "face-rest, nothing",
  })
  void aViewCountsForThePartItShows(String key, String part) {
    UsualFrame frame = InFrame.of(ViewCatalogue.standard().byKey(key).orElseThrow());
    assertThat(frame.segment().isEmpty()).isEqualTo(!part.equals("segment"));
    assertThat(frame.quadrant().isEmpty()).isEqualTo(!part.equals("side"));
    assertThat(frame.arch().isEmpty()).isEqualTo(!part.equals("arch"));
    assertThat(frame.mouth().isEmpty()).isEqualTo(!part.equals("mouth"));
  }
}
