package org.vestibule.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class FileBytesTest {

  @TempDir Path folder;

  @Test
  void readsAFileAndTellsIfItIsShorterOrLonger() throws IOException {
    Path file = Files.write(folder.resolve("file"), new byte[] {1, 2, 3, -1, 5});

    assertThat(FileBytes.all(file)).containsExactly(1, 2, 3, -1, 5);
    assertThat(FileBytes.upTo(file, 5)).containsExactly(1, 2, 3, -1, 5);
    assertThat(FileBytes.upTo(file, 9)).containsExactly(1, 2, 3, -1, 5);
    assertThat(FileBytes.upTo(file, 3)).containsExactly(1, 2, 3, -1);
    assertThat(FileBytes.upTo(file, 0)).containsExactly(1);
  }

  @Test
  void readsAnEmptyFileAndMissesOneThatIsNotThere() throws IOException {
    assertThat(FileBytes.all(Files.createFile(folder.resolve("empty")))).isEmpty();
    assertThatThrownBy(() -> FileBytes.all(folder.resolve("none")))
        .isInstanceOf(NoSuchFileException.class);
  }
}
