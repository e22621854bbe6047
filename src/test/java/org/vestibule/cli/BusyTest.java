package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.flow.LockHolder;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** While another process works in the home folder, what files or corrects ends with 5. */
class BusyTest {

  @TempDir private static Path folder;

  private static TestHome home;
  private static String filed;
  private static String waits;
  private static Process other;

  @BeforeAll
  static void anotherProcessIsAtWork() throws Exception {
    home = TestHome.in(folder);
    filed = home.put("a.jpg", Scene.FRONTAL, 1);
    waits = home.put("b.jpg", Scene.FRONTAL, 2);
    home.manifest(
        """
        file,visit,view,mirror
        a.jpg,V1,frontal,none
        """);
    home.ingest();
    other =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                LockHolder.class.getName(),
                folder.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    assertThat(other.getInputStream().read()).as("it says when it holds the lock").isEqualTo('!');
  }

  @AfterAll
  static void endIt() throws Exception {
    other.getOutputStream().close();
    if (!other.waitFor(20, TimeUnit.SECONDS)) {
      other.destroyForcibly();
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "ingest --at-once",
        "file WAITS --visit V1 --view frontal --mirror none",
        "move FILED --visit V2 --why wrong",
        "reject FILED --why wrong",
        "reject WAITS --why wrong"
      })
  void whatWritesEndsWithFiveAndChangesNothing(String line) throws IOException {
    Map<String, String> before = TestHome.everything(folder);
    String[] words = line.replace("FILED", filed).replace("WAITS", waits).split(" ");
    Asked asked = Asked.by("Ada Example", home, words);
    assertThat(asked.code()).isEqualTo(5);
    assertThat(asked.out()).isEmpty();
    assertThat(asked.err())
        .contains("vestibule: another run is at work: a test, process " + other.pid() + " on ")
        .contains(
            "  What to do: wait until it has ended, or end that process; nothing was changed.\n");
    before.keySet().removeIf(file -> file.startsWith("ledger.sqlite-"));
    Map<String, String> after = TestHome.everything(folder);
    after.keySet().removeIf(file -> file.startsWith("ledger.sqlite-"));
    assertThat(after).isEqualTo(before);
  }

  @Test
  void lookingAndFindingGoOn() {
    for (List<String> words :
        List.of(
            List.of("find", "frontal"),
            List.of("show", filed),
            List.of("verify"),
            List.of("reindex"),
            List.of("visits", "list"))) {
      assertThat(Asked.of(home, words.toArray(String[]::new)).code()).as("%s", words).isZero();
    }
    assertThat(Asked.of(home, "waiting").code()).isEqualTo(1);
    assertThat(Asked.by("Ada", home, "ingest", "--dry-run", "--at-once").code()).isEqualTo(1);
  }
}
