package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.Outcome;
import org.vestibule.samples.Scene;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

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

  /** The intent and what is kept; what was seen when they came in is written for many at once. */
  @Test
  void commitsTwiceForEachPhotographMore() throws IOException {
    long commitsOfOne = commits(1);
    assertThat(commits(4) - commitsOfOne).isEqualTo(2 * 3);
  }

  private long commits(int photographs) throws IOException {
    TestHome home = TestHome.in(folder.resolve("of" + photographs));
    StringBuilder manifest = new StringBuilder("file,visit,view,mirror\n");
    for (int i = 0; i < photographs; i++) {
      home.put(i + ".jpg", Scene.FRONTAL, 5 + i);
      manifest.append(i).append(".jpg,V1,frontal,none\n");
    }
    home.manifest(manifest.toString());
    List<WriteStep> steps = new ArrayList<>();
    try (Practice practice = home.open(steps::add)) {
      steps.clear();
      assertThat(home.ingest(practice).filed()).hasSize(photographs);
    }
    return steps.stream().filter(step -> step == WriteStep.LEDGER_COMMITTED).count();
  }

  @Test
  void looksAtNoPhotographWhereAListCanNotBeUsed() throws IOException {
    TestHome home = TestHome.in(folder);
    home.put("a.jpg", Scene.FRONTAL, 5);
    home.manifest("visit,view\nV1,frontal\n");
    List<WriteStep> steps = new ArrayList<>();
    try (Practice practice = home.open(steps::add)) {
      steps.clear();
      Path inbox = home.inbox();
      IngestRequest request =
          new IngestRequest(inbox, inbox.resolve("manifest.csv"), "test", false, false, 0);
      assertThat(Ingest.run(practice, request, Progress.NONE)).isInstanceOf(Outcome.Refused.class);
    }
    assertThat(steps).isEmpty();
  }

  /** The file is asked for no second time: it may as well be gone when its turn comes. */
  @Test
  void readsAPhotographOnceFromItsArrivalToItsFiling() throws IOException {
    TestHome home = TestHome.in(folder);
    home.put("a.jpg", Scene.FRONTAL, 5);
    Path file = home.inbox().resolve("a.jpg");
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\n");
    List<String> steps = new ArrayList<>();
    Progress progress =
        (done, of, name) -> {
          steps.add(name);
          if (steps.size() == 2) {
            delete(file);
          }
        };
    try (Practice practice = home.open(WriteSteps.PASS)) {
      Path inbox = home.inbox();
      IngestRequest request =
          new IngestRequest(inbox, inbox.resolve("manifest.csv"), "test", false, false, 0);
      assertThat(Ingest.run(practice, request, progress).orThrow().filed()).hasSize(1);
    }
    assertThat(steps).containsExactly("a.jpg", "a.jpg");
    assertThat(file).doesNotExist();
  }

  private static void delete(Path file) {
    try {
      Files.delete(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
