package org.vestibule.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.PhoneJpeg;
import org.vestibule.samples.Scene;

/** What leads to one camera and one place, as exiftool reads it too. */
class TracesTest {

  @TempDir Path folder;

  private static PhoneJpeg.Builder photo() {
    return TestHome.photo(Scene.FRONTAL, 1);
  }

  @Test
  void serialNumberAndPlaceAreThoseThatAnotherProgramReads() throws Exception {
    byte[] file = photo().bodySerial("QX-0917-A").position(47.5125, -30.2575, 3).bytes();
    Path at = Files.write(folder.resolve("photo.jpg"), file);
    List<String> theirs =
        ExternalTool.require("exiftool", "libimage-exiftool-perl")
            .run("-s3", "-n", "-SerialNumber", "-GPSLatitude", "-GPSLongitude", at.toString())
            .text()
            .lines()
            .map(line -> line.replace("-30", "30"))
            .toList();
    assertThat(theirs).containsExactly("QX-0917-A", "47.5125", "30.2575");
    assertThat(Traces.of(file)).containsAll(theirs);
    assertThat(Traces.of(file))
        .contains("47 deg 30' 45", "30\u00b015'27", "47\u00b0 30' 45")
        .hasSizeLessThan(12);
  }

  @Test
  void paddingAndAFileWithoutExifHaveNone() throws IOException {
    assertThat(Traces.of(photo().bodySerial("0000000").bytes())).isEmpty();
    assertThat(Traces.of(new byte[] {1, 2, 3})).isEmpty();
  }
}
