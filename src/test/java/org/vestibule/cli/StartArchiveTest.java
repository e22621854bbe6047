package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The words about the machine are what OpenJDK 17 says in {@code java -version}. */
class StartArchiveTest {

  @TempDir Path folder;
  private Path archive;

  @BeforeEach
  void anArchive() throws IOException {
    archive = Files.writeString(folder.resolve("classes.jsa"), "an archive");
  }

  @Test
  void anArchiveThatJavaPassedOverIsTakenAway() {
    StartArchive.dropIfOfNoUse(archive.toString(), "mixed mode");

    assertThat(archive).doesNotExist();
  }

  @Test
  void anArchiveInUseStays() {
    StartArchive.dropIfOfNoUse(archive.toString(), "mixed mode, emulated-client, sharing");

    assertThat(archive).exists();
  }

  @Test
  void withoutTheStartScriptNothingIsTouched() {
    StartArchive.dropIfOfNoUse(null, "mixed mode");

    assertThat(archive).exists();
  }
}
