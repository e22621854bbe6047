package org.vestibule.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ContentHashTest {

  /** FIPS 180-4 example "abc"; from memory. */
  private static final String ABC =
      "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

  @Test
  void isTheSha256OfTheBytes(@TempDir Path folder) throws IOException {
    byte[] bytes = "abc".getBytes(StandardCharsets.US_ASCII);
    Path file = Files.write(folder.resolve("abc.jpg"), bytes);
    assertThat(ContentHash.of(bytes).hex()).isEqualTo(ABC);
    assertThat(ContentHash.of(file).hex()).isEqualTo(ABC);
    assertThat(ContentHash.of(file).brief()).isEqualTo("ba7816bf8f");
  }

  @Test
  void refusesWhatIsNoHash() {
    assertThatThrownBy(() -> new ContentHash("BA78"))
        .hasMessage("a content hash has 64 lower-case hexadecimal digits but this has 4");
  }
}
