package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.ContentHash;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.KeptObject;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/** However many pictures are made beside one another, what is filed is the same. */
class FilingLineTest {

  private static final int PHOTOS = 7;
  private static final int BROKEN = 3;
  private static final int CROPS = 4;

  @TempDir private Path folder;

  private TestHome home;
  private final List<String> ids = new ArrayList<>();

  /** Seven photographs, the fourth of which has zeros where its lower half should be. */
  private void layOut(String name) throws IOException {
    home = TestHome.in(Files.createDirectory(folder.resolve(name)));
    ids.clear();
    StringBuilder manifest = new StringBuilder("file,visit,view,mirror,crop\n");
    for (int i = 0; i < PHOTOS; i++) {
      byte[] jpeg = TestHome.photo(Scene.FRONTAL, i + 1).orientation(1 + 5 * (i % 2)).bytes();
      if (i == BROKEN) {
        Arrays.fill(jpeg, jpeg.length / 2, jpeg.length - 2, (byte) 0);
      }
      ids.add(home.put("p" + i + ".jpg", jpeg));
      String crop = i % 2 == 0 ? "0.25 0.25 0.75 0.75" : "";
      manifest.append("p" + i + ".jpg,V1,frontal,none," + crop + "\n");
    }
    home.manifest(manifest.toString());
  }

  private IngestRequest beside(int width) {
    IngestRequest request = home.request();
    return new IngestRequest(
        request.folder(), request.manifest(), request.by(), false, false, width);
  }

  private IngestReport ingest(int width, WriteSteps steps) throws IOException {
    try (Practice practice = home.open(steps)) {
      return Ingest.run(practice, beside(width), Progress.NONE).orThrow();
    }
  }

  private List<String> sound() {
    List<String> sound = new ArrayList<>(ids);
    sound.remove(BROKEN);
    return sound;
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 5, 20})
  void filesTheSameInTheRollsOrder(int width) throws IOException {
    layOut("line");
    IngestReport report = ingest(width, WriteSteps.PASS);
    assertThat(report.filed()).extracting(FiledPhoto::id).containsExactlyElementsOf(sound());
    assertThat(report.waiting()).extracting(WaitingPhoto::id).containsExactly(ids.get(BROKEN));
    assertThat(report.waiting().get(0).reasons().get(0).kind()).isEqualTo(Setback.PICTURE);
    List<String> line = pictures();
    layOut("one after another");
    ingest(0, WriteSteps.PASS);
    assertThat(line).hasSize(sound().size() + CROPS).isEqualTo(pictures());
  }

  /** Hashes of the pictures, in the order of the photographs' names. */
  private List<String> pictures() throws IOException {
    try (Practice practice = home.open()) {
      TreeMap<String, String> pictures = new TreeMap<>();
      for (KeptObject object : practice.store().ledger().kept().all().toList()) {
        ContentHash hash =
            practice.store().ledger().intents().find(object.sopUid()).orElseThrow().hash();
        int at = ids.indexOf(practice.store().ids().of(hash));
        pictures.put(at + " " + object.pixelHash(), "");
      }
      assertThat(Verify.run(practice)).noneMatch(finding -> finding.isSerious());
      return List.copyOf(pictures.keySet());
    }
  }

  /**
   * The disk fails at any object: what is begun is completed by the next run, the rest is filed.
   */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 5, 8})
  void aDiskThatFailsLosesNothing(int object) throws IOException {
    layOut("disk");
    int[] written = {0};
    WriteSteps full =
        step -> {
          if (step == WriteStep.OBJECT_HALF_WRITTEN && ++written[0] == object) {
            throw new FileSystemException("object", null, "No space left on device");
          }
        };
    assertThatThrownBy(() -> ingest(2, full)).isInstanceOf(FileSystemException.class);
    IngestReport next = ingest(2, WriteSteps.PASS);
    assertThat(next.waiting()).extracting(WaitingPhoto::id).containsExactly(ids.get(BROKEN));
    assertThat(pictures()).hasSize(sound().size() + CROPS);
  }

  /** The program fails on one photograph: that one waits, and no other. */
  @ParameterizedTest
  @ValueSource(ints = {1, 4, 7})
  void aDefectStopsNoOther(int object) throws IOException {
    layOut("defect");
    int[] written = {0};
    WriteSteps poison =
        step -> {
          if (step == WriteStep.OBJECT_TEMP_CREATED && ++written[0] == object) {
            throw new IndexOutOfBoundsException("made to fail");
          }
        };
    IngestReport report = ingest(2, poison);
    assertThat(report.filed()).hasSize(sound().size() - 1);
    assertThat(report.defects()).hasSize(1);
    assertThat(report.waiting()).hasSize(2);
  }
}
