package org.vestibule.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;

/** A valid object passes here and at an independent validator. */
class PhotographicCheckerTest {

  @TempDir Path folder;

  @Test
  void aValidObjectHasNoFindings() {
    assertThat(PhotographicChecker.check(SamplePhotograph.file())).isEmpty();
    assertThat(CheckReport.of("a.dcm", SamplePhotograph.file()).words())
        .isEqualTo("a.dcm: a conformant VL Photographic Image\n");
  }

  /** dciodvfy of 2022 knows no view modifier yet (CP-1570 of 2025): a warning, not an error. */
  @Test
  void anIndependentValidatorFindsNoErrorEither() throws Exception {
    Path file = Files.write(folder.resolve("a.dcm"), SamplePhotograph.file());
    ExternalTool.Result result =
        ExternalTool.require("dciodvfy", "dicom3tools").run(file.toString());
    assertThat(result.errors() + result.text())
        .contains("VLPhotographicImage")
        .doesNotContain("Error");
  }
}
