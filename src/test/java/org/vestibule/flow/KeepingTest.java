package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.samples.Scene;
import org.vestibule.store.steps.WriteStep;

/** What is kept of a photograph and how it looks stand in the ledger together or not at all. */
class KeepingTest {

  @TempDir private Path folder;

  /** Each commit waits for the disk, so that one more for each photograph is felt. */
  @Test
  void commitsOnceForEachPhotographAfterItsObjectStands() throws IOException {
    TestHome home = TestHome.in(folder);
    home.put("a.jpg", Scene.FRONTAL, 5);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\n");
    List<WriteStep> steps = new ArrayList<>();
    try (Practice practice = home.open(steps::add)) {
      assertThat(home.ingest(practice).filed()).hasSize(1);
    }
    int proved = steps.indexOf(WriteStep.OBJECT_PROVED);
    assertThat(steps.subList(proved + 1, steps.size()))
        .containsExactly(
            WriteStep.LEDGER_COMMITTING,
            WriteStep.LEDGER_COMMITTED,
            WriteStep.INDEX_COMMITTING,
            WriteStep.INDEX_COMMITTED);
  }
}
