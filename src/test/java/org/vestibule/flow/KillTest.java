package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.samples.PhoneJpeg;
import org.vestibule.samples.SampleRoll;
import org.vestibule.samples.Scene;

/**
 * A real child process is killed at each kind of write step while it files a photograph with crop
 * and frame, one without, and one that waits; the next run must end where an undisturbed one ends.
 */
class KillTest {

  private static final String VISITS =
      """
      visit,patient id,name,birth date,sex,start,end
      V1,P1,"Tallgrass, Orla",1990-01-02,F,2026-03-12 09:00,2026-03-12 10:00
      """;

  private static final String MANIFEST =
      """
      file,visit,view,teeth,mirror,incisors,crop
      a.jpg,V1,upper occlusal,16,as shot,top,0.1 0.1 0.9 0.9
      b.jpg,V1,frontal,,none,,
      c.jpg,V1,upper occlusal,,as shot,,
      """;

  @TempDir private Path home;

  @ParameterizedTest
  @CsvSource({
    "OBJECT_TEMP_CREATED, 1", "OBJECT_HALF_WRITTEN, 1", "OBJECT_WRITTEN, 2", "OBJECT_SYNCED, 2",
    "OBJECT_NAMING, 1", "OBJECT_NAMED, 1", "OBJECT_NAMED, 2", "OBJECT_PROVED, 2",
    "LEDGER_COMMITTING, 6", "LEDGER_COMMITTED, 8", "INDEX_COMMITTING, 1", "INDEX_COMMITTED, 1"
  })
  void theNextRunCompletesWhatAKilledOneBegan(String step, int time) throws Exception {
    layOut();
    assertThat(child(step, time)).as("the child must be killed").isEqualTo(137);
    assertThat(child("none", 0)).isZero();
    try (Practice practice = open()) {
      assertThat(Verify.run(practice)).isEmpty();
      assertThat(practice.store().ledger().kept().all()).hasSize(3);
      assertThat(new WaitingPhotos(practice).all()).hasSize(1);
      assertThat(new TreeSet<>(practice.store().objects().list())).hasSize(3);
      assertThat(practice.store().objects().strays()).isEmpty();
    }
    assertThat(Files.readAllBytes(home.resolve("inbox").resolve("a.jpg")))
        .isEqualTo(photo(Scene.UPPER_OCCLUSAL, 5));
  }

  private void layOut() throws IOException {
    Path inbox = Files.createDirectories(home.resolve("inbox"));
    Files.write(inbox.resolve("a.jpg"), photo(Scene.UPPER_OCCLUSAL, 5));
    Files.write(inbox.resolve("b.jpg"), photo(Scene.FRONTAL, 6));
    Files.write(inbox.resolve("c.jpg"), photo(Scene.UPPER_OCCLUSAL, 7));
    Files.writeString(inbox.resolve("manifest.csv"), MANIFEST, StandardCharsets.UTF_8);
    Files.writeString(home.resolve("visits.csv"), VISITS, StandardCharsets.UTF_8);
  }

  private static byte[] photo(Scene scene, int minute) {
    return PhoneJpeg.builder(SampleRoll.picture(scene, 160, 128))
        .camera("Lumo", "Lumo P1")
        .takenAt(LocalDateTime.of(2026, 3, 12, 9, minute))
        .offset(ZoneOffset.ofHours(1))
        .orientation(1)
        .bytes();
  }

  private int child(String step, int time) throws Exception {
    Process process =
        new ProcessBuilder(
                List.of(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-XX:+UseSerialGC",
                    "-XX:TieredStopAtLevel=1",
                    "-cp",
                    System.getProperty("java.class.path"),
                    KilledIngest.class.getName(),
                    home.toString(),
                    step,
                    Integer.toString(time)))
            .redirectErrorStream(true)
            .redirectOutput(home.resolve("child.txt").toFile())
            .start();
    if (!process.waitFor(120, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError("the child did not end");
    }
    return process.exitValue();
  }

  private Practice open() throws IOException {
    Settings settings = Settings.defaults(home, ZoneId.of("Europe/Vienna"));
    return Practice.open(home, settings, Clock.systemUTC(), true).orThrow();
  }
}
