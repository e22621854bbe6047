package org.vestibule.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.vestibule.ExternalTool;
import org.vestibule.base.Turn;
import org.vestibule.dental.Laid;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.PatientOrientation;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;

/**
 * The pixels of finished objects against libjpeg-turbo: what djpeg makes of the object's codestream
 * must equal, byte for byte, what it makes of jpegtran's lossless turn of the source.
 */
class ObjectPixelsTest {

  private static final long SEED = 611;
  private static final int WIDTH = 96;
  private static final int HEIGHT = 64;

  private static final List<String> SAMPLINGS = List.of("gray", "1x1", "2x1", "2x2", "1x2");

  static Stream<Arguments> sources() {
    return SAMPLINGS.stream()
        .flatMap(s -> Stream.of(Arguments.of(s, false), Arguments.of(s, true)));
  }

  @ParameterizedTest(name = "{0}, progressive {1}")
  @MethodSource("sources")
  void equalJpegtransTurnOfTheSource(String sampling, boolean progressive) throws Exception {
    ExternalTool jpegtran = ExternalTool.require("jpegtran", "libjpeg-turbo-progs");
    ExternalTool djpeg = ExternalTool.require("djpeg", "libjpeg-turbo-progs");
    byte[] source = photo(sampling, progressive);
    for (Turn turn : Turn.values()) {
      List<String> arguments = new ArrayList<>(List.of("-copy", "none"));
      arguments.addAll(jpegtranWords(turn));
      byte[] turned = jpegtran.run(source, arguments.toArray(String[]::new)).output();
      byte[] expected = djpeg.run(turned, "-pnm").output();
      byte[] actual = djpeg.run(codestream(source, turn), "-pnm").output();
      assertThat(expected).isNotEmpty();
      assertThat(actual).as("%s of %s, seed %d", turn, sampling, SEED).isEqualTo(expected);
    }
  }

  private static byte[] codestream(byte[] source, Turn turn) {
    EncodeRequest plain = Filed.request(Filed.decision("frontal", "", Mirror.NONE, null, null), 1);
    EncodeRequest request =
        new EncodeRequest(
            plain.facts(),
            plain.decision(),
            new Laid(turn, new PatientOrientation("L", "F"), List.of(), List.of()),
            Turn.NONE,
            plain.frame(),
            null,
            "",
            "",
            Filed.ZONE);
    EncodedObject object =
        new Encoder(CameraFacts.standard()).encode(source, request).orThrow().get(0);
    ObjectProof.prove(object.toByteArray(), source, object).orThrow();
    return Codestream.withoutPadding(
        Part10Reader.read(object.toByteArray()).orThrow().data().fragments(Tags.PixelData).get(0));
  }

  private static byte[] photo(String sampling, boolean progressive) throws Exception {
    ExternalTool cjpeg = ExternalTool.require("cjpeg", "libjpeg-turbo-progs");
    List<String> arguments = new ArrayList<>(List.of("-quality", "88"));
    arguments.addAll(
        sampling.equals("gray") ? List.of("-grayscale") : List.of("-sample", sampling));
    if (progressive) {
      arguments.add("-progressive");
    }
    return cjpeg.run(picture(), arguments.toArray(String[]::new)).output();
  }

  private static byte[] picture() {
    Random random = new Random(SEED);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(("P6 " + WIDTH + " " + HEIGHT + " 255\n").getBytes(StandardCharsets.US_ASCII));
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++) {
        out.write(x * 255 / WIDTH);
        out.write(y * 255 / HEIGHT);
        out.write(random.nextInt(256));
      }
    }
    return out.toByteArray();
  }

  private static List<String> jpegtranWords(Turn turn) {
    return switch (turn) {
      case NONE -> List.of();
      case FLIP_HORIZONTAL -> List.of("-flip", "horizontal");
      case FLIP_VERTICAL -> List.of("-flip", "vertical");
      case ROTATE_90 -> List.of("-rotate", "90");
      case ROTATE_180 -> List.of("-rotate", "180");
      case ROTATE_270 -> List.of("-rotate", "270");
      case TRANSPOSE -> List.of("-transpose");
      case TRANSVERSE -> List.of("-transverse");
    };
  }
}
