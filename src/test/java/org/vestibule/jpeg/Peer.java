package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.vestibule.ExternalTool;
import org.vestibule.base.Turn;

/** The independent JPEG programs of libjpeg-turbo, and pictures to try on them. */
final class Peer {

  private static final String PACKAGE = "libjpeg-turbo-progs";

  private final ExternalTool compressor = ExternalTool.require("cjpeg", PACKAGE);
  private final ExternalTool decompressor = ExternalTool.require("djpeg", PACKAGE);
  private final ExternalTool transformer = ExternalTool.require("jpegtran", PACKAGE);

  /** A gradient with noise as a binary PPM or PGM. */
  static byte[] picture(int width, int height, boolean gray, long seed) {
    Random random = new Random(seed);
    String head = (gray ? "P5" : "P6") + "\n" + width + " " + height + "\n255\n";
    int channels = gray ? 1 : 3;
    byte[] samples = new byte[width * height * channels];
    for (int i = 0; i < samples.length; i++) {
      int pixel = i / channels;
      int x = pixel % width;
      int y = pixel / width;
      int smooth = (x * (3 + i % channels) + y * (5 - i % channels)) / 3 % 256;
      samples[i] = (byte) Math.max(0, Math.min(255, smooth + random.nextInt(61) - 30));
    }
    return Assembled.join(head.getBytes(StandardCharsets.US_ASCII), samples);
  }

  byte[] compress(byte[] picture, String... options) {
    return run(compressor, picture, options);
  }

  byte[] transform(byte[] jpeg, List<String> options) {
    return run(transformer, jpeg, options.toArray(new String[0]));
  }

  /** The pixels as a binary PPM or PGM, without smoothing between colour samples. */
  byte[] pixels(byte[] jpeg) {
    return run(decompressor, jpeg, "-dct", "int", "-nosmooth", "-pnm");
  }

  byte[] decompress(byte[] jpeg, String... options) {
    return run(decompressor, jpeg, options);
  }

  /** The transforming program's option for a turn. */
  static List<String> options(Turn turn) {
    List<String> options = new ArrayList<>(List.of("-copy", "none"));
    switch (turn) {
      case NONE -> {}
      case FLIP_HORIZONTAL -> options.addAll(List.of("-flip", "horizontal"));
      case FLIP_VERTICAL -> options.addAll(List.of("-flip", "vertical"));
      case ROTATE_90 -> options.addAll(List.of("-rotate", "90"));
      case ROTATE_180 -> options.addAll(List.of("-rotate", "180"));
      case ROTATE_270 -> options.addAll(List.of("-rotate", "270"));
      case TRANSPOSE -> options.add("-transpose");
      case TRANSVERSE -> options.add("-transverse");
    }
    return options;
  }

  /** Asserts that two pictures have the same frame, tables and coefficients. */
  static void assertSame(Coefficients ours, Coefficients theirs, String what) {
    assertThat(ours.frame().size()).as(what).isEqualTo(theirs.frame().size());
    assertThat(ours.frame().samplingWords())
        .as(what)
        .isEqualTo(theirs.componentCount() == 1 ? "1x1" : theirs.frame().samplingWords());
    for (int c = 0; c < theirs.componentCount(); c++) {
      assertThat(ours.components().get(c).quantisation)
          .as(what)
          .isEqualTo(theirs.components().get(c).quantisation);
      for (int row = 0; row < theirs.blocksHigh(c); row++) {
        for (int column = 0; column < theirs.blocksWide(c); column++) {
          for (int i = 0; i < 64; i++) {
            if (ours.value(c, row, column, i / 8, i % 8)
                != theirs.value(c, row, column, i / 8, i % 8)) {
              throw new AssertionError(
                  what + ": component " + c + " block " + row + "," + column + " coefficient " + i);
            }
          }
        }
      }
    }
  }

  private static byte[] run(ExternalTool tool, byte[] input, String... options) {
    try {
      ExternalTool.Result result = tool.run(input, options);
      assertThat(result.exitCode()).as(result.errors()).isZero();
      return result.output();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
