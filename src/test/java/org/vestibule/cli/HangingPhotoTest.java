package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.Death;
import org.vestibule.flow.Practice;
import org.vestibule.flow.SmallPractice;
import org.vestibule.store.steps.WriteStep;

/** What was begun and can't be finished is said and counted, never passed over with code 0. */
class HangingPhotoTest {

  @TempDir private Path home;

  private final ByteArrayOutputStream said = new ByteArrayOutputStream();

  @Test
  void aPhotographThatHangsIsCountedAndNeedsAPerson() throws IOException {
    SmallPractice small = SmallPractice.layOut(home);
    try (Practice practice =
        small.open(small.settings(), Death.at(WriteStep.OBJECT_TEMP_CREATED, 1))) {
      assertThatThrownBy(() -> small.ingest(practice)).isInstanceOf(Death.class);
    }
    byte[] arch = Files.readAllBytes(small.inbox().resolve("a.jpg"));
    Files.delete(small.inbox().resolve("a.jpg"));
    Files.delete(small.inbox().resolve("c.jpg"));

    assertThat(run("ingest", "--by", "nightly job", "--at-once")).isEqualTo(1);
    assertThat(said.toString(StandardCharsets.UTF_8))
        .contains("Begun and not finished", "no longer where it was")
        .contains("1 photograph filed, 0 waiting, 1 begun and not finished, 0 known from before");
    assertThat(run("waiting")).isEqualTo(1);
    assertThat(said.toString(StandardCharsets.UTF_8))
        .contains("1 photograph begun and not finished:", "a.jpg");

    Files.write(small.inbox().resolve("a.jpg"), arch);
    assertThat(run("ingest", "--by", "nightly job", "--at-once")).isZero();
    assertThat(run("waiting")).isZero();
  }

  private int run(String... args) {
    said.reset();
    PrintStream out = new PrintStream(said, true, StandardCharsets.UTF_8);
    Surroundings surroundings =
        new Surroundings(
            new Console(out, out, false),
            Map.of("VESTIBULE_HOME", home.toString()),
            home,
            Clock.fixed(Instant.parse("2026-03-14T06:00:00Z"), ZoneOffset.UTC),
            ZoneId.of("Europe/Vienna"));
    return new Launcher(surroundings).run(args);
  }
}
