package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** The list of what waits, in words and as a page. */
class WaitingCommandTest {

  @TempDir private static Path folder;

  private static TestHome home;
  private static String noEdge;
  private static String nobody;

  @BeforeAll
  static void layOut() throws IOException {
    home = TestHome.in(folder);
    noEdge = home.put("a.jpg", Scene.UPPER_OCCLUSAL, 1);
    nobody = home.put("b & <b>.jpg", Scene.FRONTAL, 2);
    home.manifest(
        """
        file,visit,view,mirror
        a.jpg,V1,upper occlusal,as shot
        """);
    assertThat(home.ingest().waiting()).hasSize(2);
  }

  @Test
  void eachIsListedWithWhatIsKnownWhyAndWhatToDo() {
    Asked asked = Asked.of(home, "waiting");
    assertThat(asked.err()).isEmpty();
    assertThat(asked.code()).isEqualTo(1);
    assertThat(asked.out())
        .startsWith("2 photographs for a person to decide:\n")
        .contains(
            "\n"
                + noEdge
                + "  a.jpg, taken 2026-03-12 09:01\n"
                + "  Known: mirror as shot, patient P1, view ")
        .contains("  Why: nobody said where the incisors lie in this Upper occlusal.\n")
        .contains("  What to do: say incisors: top, bottom, left or right, as the look sheet")
        .contains(nobody + "  b & <b>.jpg, taken 2026-03-12 09:02\n");
  }

  @Test
  void theSheetShowsEachPictureAndItsNameAsText() throws IOException {
    Asked asked = Asked.of(home, "waiting", "--sheet", "w.html");
    assertThat(asked.out()).startsWith("Wrote w.html: open it in a browser.\n");
    String page = Files.readString(home.folder().resolve("w.html"));
    assertThat(page).contains(noEdge, nobody, "b &amp; &lt;b&gt;.jpg");
    assertThat(page).doesNotContain("<b>.jpg");
    assertThat(page.split("base64,", -1)).hasSize(3);
    assertThat(Asked.of(home, "waiting", "--sheet", "w.html").code())
        .as("an older sheet is replaced")
        .isEqualTo(1);
  }

  @Test
  void theSheetReplacesNothingElse() throws IOException {
    Path list = home.inbox().resolve("manifest.csv");
    byte[] before = Files.readAllBytes(list);
    Asked asked = Asked.of(home, "waiting", "--sheet", "inbox/manifest.csv");
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err())
        .isEqualTo(
            """
            vestibule: manifest.csv is already there and isn't a sheet that this program wrote.
              What to do: name another file.
            """);
    assertThat(list).hasBinaryContent(before);
  }

  @Test
  void aSheetThatCannotBeWrittenLeavesNothingBehind() {
    Asked asked = Asked.of(home, "waiting", "--sheet", "nowhere/w.html");
    assertThat(asked.code()).isEqualTo(6);
    assertThat(asked.err()).startsWith("vestibule: there is no such file or folder (w.html");
    assertThat(home.folder().resolve("nowhere")).doesNotExist();
  }
}
