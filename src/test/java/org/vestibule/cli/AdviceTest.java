package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** What could be better is said when a photograph is filed, kept, and found again. */
class AdviceTest {

  @TempDir private Path folder;

  /** Digital zoom above 2 (common practice, no source) and a frame below 5 million pixels. */
  @Test
  void isSaidWithItsMeasureAndFoundAgain() throws IOException {
    TestHome home = TestHome.in(folder);
    String zoomed =
        home.put(
            "zoomed.jpg",
            TestHome.photo(Scene.FRONTAL, 1).orientation(1).digitalZoom(3, 1).bytes());
    String plain = home.put("plain.jpg", Scene.FRONTAL, 2);
    home.manifest(
        "file,visit,view,mirror\nzoomed.jpg,V1,frontal,none\nplain.jpg,V1,frontal,none\n");
    Asked asked = Asked.by("nightly job", home, "ingest", "--at-once");
    assertThat(asked.out().replaceAll("\\s+", " "))
        .contains("Filed, and could be better")
        .contains("Digital zoom: zoomed.jpg (3.0x). What to do: Go nearer, or use the phone's")
        .contains("Few pixels: plain.jpg (0.0 million), zoomed.jpg (0.0 million).");
    assertThat(Asked.of(home, "find", "digital zoom").out()).contains(zoomed).doesNotContain(plain);
    assertThat(Asked.of(home, "find", "few pixels").out()).contains(zoomed).contains(plain);
    assertThat(Asked.of(home, "find", "blurred frontal").out()).doesNotContain(zoomed);
    assertThat(Asked.of(home, "verify").code()).as("the index agrees with the ledger").isZero();
  }
}
