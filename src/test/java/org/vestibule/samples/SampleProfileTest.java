package org.vestibule.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.color.ICC_ColorSpace;
import java.awt.color.ICC_Profile;
import org.junit.jupiter.api.Test;
import org.vestibule.ExternalTool;

/** The hand-written profile works in the JDK's colour engine and reads well in exiftool. */
class SampleProfileTest {

  @Test
  void theColourEngineUsesIt() {
    ICC_ColorSpace space = new ICC_ColorSpace(ICC_Profile.getInstance(SampleProfile.bytes()));
    // sRGB white is the profile connection space's white, D50 (IEC 61966-2-1, from memory).
    float[] white = space.toCIEXYZ(new float[] {1, 1, 1});
    assertThat(white[0]).isCloseTo(0.9642f, within(0.002f));
    assertThat(white[1]).isCloseTo(1.0f, within(0.002f));
    assertThat(white[2]).isCloseTo(0.8249f, within(0.002f));
    // Middle gray with a gamma of 2.2 by hand: 0.5^2.2 = 0.2176.
    assertThat(space.toCIEXYZ(new float[] {0.5f, 0.5f, 0.5f})[1])
        .isCloseTo(0.2176f, within(0.002f));
  }

  @Test
  void anIndependentReaderFindsNothingWrong() throws Exception {
    ExternalTool tool = ExternalTool.require("exiftool", "libimage-exiftool-perl");
    String read = tool.run(SampleProfile.bytes(), "-s", "-validate", "-warning", "-a", "-").text();
    assertThat(read).contains("Validate").contains(": OK");
    assertThat(SampleProfile.bytes().length).isLessThan(600);
  }
}
