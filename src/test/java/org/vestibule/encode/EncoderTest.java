package org.vestibule.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.assign.Crop;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.samples.PhoneJpeg;
import org.vestibule.samples.SampleRoll;
import org.vestibule.samples.Scene;

class EncoderTest {

  private static final byte[] UPPER =
      PhoneJpeg.builder(SampleRoll.picture(Scene.UPPER_OCCLUSAL, 640, 480))
          .position(48.2, 16.4, 170)
          .bodySerial("SN-12345")
          .comment("a comment")
          .bytes();

  @TempDir private Path folder;

  /** dciodvfy (dicom3tools) as an independent reading of PS3.3. */
  @Test
  void anIndependentValidatorFindsNoError() throws Exception {
    ExternalTool validator = ExternalTool.require("dciodvfy", "dicom3tools");
    List<EncodedObject> objects =
        encode(
            Filed.request(
                Filed.decision(
                    "upper-occlusal",
                    "16",
                    Mirror.AS_SHOT,
                    Incisors.TOP,
                    new Crop(0.1, 0.1, 0.8, 0.9)),
                1));
    for (EncodedObject object : objects) {
      ExternalTool.Result result = validator.run(write(object).toString());
      System.out.println(result.errors());
      assertThat(result.errors()).doesNotContain("Error");
    }
  }

  private static List<EncodedObject> encode(EncodeRequest request) {
    return new Encoder(CameraFacts.standard()).encode(UPPER, request).orThrow();
  }

  private Path write(EncodedObject object) throws IOException {
    return Files.write(folder.resolve(object.role() + ".dcm"), object.toByteArray());
  }
}
