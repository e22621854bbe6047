package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** A dry run says what would be done, and no byte and no time of change differs afterwards. */
class DryRunTest {

  private static final String MANIFEST =
      """
      file,visit,view,mirror
      a.jpg,V1,frontal,none
      """;

  @TempDir Path folder;

  private TestHome home;
  private String known;
  private String waits;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder.resolve("home"));
    known = home.put("a.jpg", Scene.FRONTAL, 1);
    waits = home.put("b.jpg", Scene.FRONTAL, 2);
    home.manifest(MANIFEST);
  }

  @Test
  void aPracticeNotYetBegunStaysSo() throws IOException {
    Map<String, String> before = TestHome.everything(folder);
    Asked asked = dryRun();
    assertThat(asked.err()).isEmpty();
    assertThat(asked.code()).isEqualTo(1);
    assertThat(asked.out())
        .contains("Would be filed\n")
        .contains(
            known
                + "  a.jpg  Orla Tallgrass  V1 of 2026-03-12  Frontal, teeth together  -      as it was")
        .contains(waits + "  b.jpg\n")
        .endsWith(
            """
            1 photograph would be filed, 1 waiting, 0 known from before, 1 other file.
            "vestibule waiting" shows again what waits.
            """);
    assertThat(TestHome.everything(folder)).isEqualTo(before);
  }

  @Test
  void noFolderIsMadeForAHomeThatIsNotThere() throws IOException {
    Map<String, String> before = TestHome.everything(folder);
    Asked asked =
        Asked.in(folder, Map.of("VESTIBULE_HOME", "nowhere"), "ingest", "--dry-run", "--by", "Ada");
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err())
        .isEqualTo(
            """
            vestibule: there is no folder inbox.
              What to do: check the name, and that the drive is connected.
            """);
    assertThat(TestHome.everything(folder)).isEqualTo(before);
  }

  @Test
  void afterEarlierRunsNothingIsChangedEither() throws IOException {
    home.ingest();
    home.put("c.jpg", Scene.LEFT_BUCCAL, 3);
    home.manifest(MANIFEST + "b.jpg,V1,frontal,none\n");
    Map<String, String> before = TestHome.everything(folder);
    Asked asked = dryRun();
    assertThat(asked.out()).contains("1 photograph would be filed, 1 waiting, 1 known from before");
    assertThat(TestHome.everything(folder)).isEqualTo(before);
  }

  @Test
  void aListThatCannotBeUsedIsRefusedAsInARealRun() throws IOException {
    home.manifest(MANIFEST + "a.jpg,V2,frontal,none\n");
    Asked dry = dryRun();
    assertThat(dry.code()).isEqualTo(3);
    assertThat(dry.err()).startsWith("vestibule: the manifest, row 3, column file: ");
    assertThat(Asked.by("Ada", home, "ingest", "--at-once")).isEqualTo(dry);
  }

  private Asked dryRun() {
    return Asked.by("Ada Example", home, "ingest", "--dry-run", "--at-once");
  }
}
