package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A real child process is killed while it files, corrects or takes out a photograph with crop and
 * frame; afterwards everything must be as if nothing had happened, also if the settings were
 * changed in between. These are steps picked so that each kind is among them; {@code
 * conformance/long/kills} does all of them.
 */
class KillTest {

  @TempDir private Path folder;

  @ParameterizedTest
  @CsvSource({
    "INGEST, 4, false", "INGEST, 8, true", "INGEST, 9, false", "INGEST, 14, true",
    "INGEST, 17, false", "INGEST, 19, true", "INGEST, 21, true", "INGEST, 23, false",
    "INGEST, 38, false", "MOVE, 2, false", "MOVE, 7, true", "MOVE, 14, false",
    "MOVE, 17, true", "REJECT, 1, false", "REJECT, 2, false", "REJECT, 8, true"
  })
  void theNextRunCompletesWhatAKilledOneBegan(KillScenario scenario, int step, boolean changed)
      throws Exception {
    Path home = folder.resolve("home");
    scenario.layOut(home);
    assertThat(scenario.child(home, step)).as("the child must be killed").isEqualTo(137);
    scenario.afterwards(home, changed);
  }
}
