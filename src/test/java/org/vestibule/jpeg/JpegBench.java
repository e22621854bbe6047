package org.vestibule.jpeg;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;
import org.vestibule.base.Turn;

/**
 * The engine's half of {@code conformance/bench-jpeg}: makes the picture that is measured, and runs
 * one operation after another as it is told, saying how long each took.
 */
final class JpegBench {

  private static final int WIDTH = 4032;
  private static final int HEIGHT = 3024;
  private static final long SEED = 12;

  /** One operation on a picture; what it returns keeps it from being optimised away. */
  private interface Step {
    Object run(byte[] jpeg);
  }

  private JpegBench() {}

  /**
   * {@code picture FILE} writes a PPM. {@code serve} reads lines of a step and a file, separated by
   * a tab, runs each once and answers with three numbers: the nanoseconds that its thread took of a
   * processor, those that all threads of the process took, and one that depends on what was made.
   */
  public static void main(String[] arguments) throws IOException {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    if (arguments[0].equals("picture")) {
      Files.write(Path.of(arguments[1]), picture());
      return;
    }
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    Map<String, Step> steps = steps();
    Map<String, byte[]> files = new HashMap<>();
    for (String line = in.readLine(); line != null; line = in.readLine()) {
      int tab = line.indexOf('\t');
      String file = line.substring(tab + 1);
      if (!files.containsKey(file)) {
        files.put(file, Files.readAllBytes(Path.of(file)));
      }
      out.println(measure(steps.get(line.substring(0, tab)), files.get(file)));
    }
  }

  private static Map<String, Step> steps() {
    Map<String, Step> steps = new LinkedHashMap<>();
    steps.put("copy", byte[]::clone);
    steps.put("strip", jpeg -> MetadataStrip.of(jpeg));
    steps.put("check", jpeg -> SoundScan.check(jpeg).orThrow());
    steps.put("upright", jpeg -> transcode(jpeg, TranscodePlan.AS_IS));
    steps.put("flip-h", jpeg -> transcode(jpeg, TranscodePlan.turned(Turn.FLIP_HORIZONTAL)));
    steps.put("flip-v", jpeg -> transcode(jpeg, TranscodePlan.turned(Turn.FLIP_VERTICAL)));
    steps.put("rotate", jpeg -> transcode(jpeg, TranscodePlan.turned(Turn.ROTATE_90)));
    steps.put(
        "crop", jpeg -> transcode(jpeg, new TranscodePlan(Turn.NONE, upperHalf(jpeg), false)));
    steps.put("plain-decode", jpeg -> Coefficients.decode(jpeg).orThrow());
    TranscodePlan flip = TranscodePlan.turned(Turn.FLIP_HORIZONTAL);
    steps.put("all-in-one", jpeg -> PictureReading.of(jpeg, flip, 440).orThrow());
    steps.put(
        "proof",
        jpeg -> Proof.of(jpeg, flip, Transcoder.transcode(jpeg, flip).orThrow().bytes()).orThrow());
    steps.put("preview", jpeg -> Preview.of(jpeg, 440, Turn.NONE).orThrow());
    return steps;
  }

  private static CropBox upperHalf(byte[] jpeg) {
    FrameSize size = JpegStructure.read(jpeg).orThrow().frame().size();
    return new CropBox(0, 0, size.width(), size.height() / 32 * 16);
  }

  private static Object transcode(byte[] jpeg, TranscodePlan plan) {
    return Transcoder.transcode(jpeg, plan).orThrow();
  }

  private static long processCpuNanos() {
    return ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO).toNanos();
  }

  private static String measure(Step step, byte[] jpeg) {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long all = processCpuNanos();
    long before = threads.getCurrentThreadCpuTime();
    int made = step.run(jpeg).hashCode();
    long took = threads.getCurrentThreadCpuTime() - before;
    return took + " " + (processCpuNanos() - all) + " " + made;
  }

  /**
   * Octaves of smooth noise, each finer one weaker, as photographs have; the weights were tuned so
   * that quality 92 with 4:2:0 colour takes about 2.85 MB.
   */
  static byte[] picture() {
    Random random = new Random(SEED);
    float[][] planes = new float[3][WIDTH * HEIGHT];
    for (int octave = 2; octave <= 1024; octave *= 2) {
      for (int channel = 0; channel < 3; channel++) {
        double weight = (channel == 0 ? 1 : 0.35) * weight(octave);
        octave(planes[channel], octave, weight, random);
      }
    }
    byte[] rgb = new byte[3 * WIDTH * HEIGHT];
    for (int i = 0; i < WIDTH * HEIGHT; i++) {
      for (int channel = 0; channel < 3; channel++) {
        float value = 120 + planes[0][i] + planes[channel == 0 ? 1 : 2][i] * (channel - 1);
        rgb[3 * i + channel] = (byte) Math.max(0, Math.min(255, Math.round(value)));
      }
    }
    String head = "P6\n" + WIDTH + " " + HEIGHT + "\n255\n";
    return Assembled.join(head.getBytes(StandardCharsets.US_ASCII), rgb);
  }

  private static double weight(int octave) {
    return Double.parseDouble(System.getProperty("w", "4.0")) * Math.pow(octave, 0.3);
  }

  private static void octave(float[] plane, int cell, double weight, Random random) {
    int across = WIDTH / cell + 3;
    float[] grid = new float[across * (HEIGHT / cell + 3)];
    for (int i = 0; i < grid.length; i++) {
      grid[i] = (float) (weight * random.nextGaussian());
    }
    for (int y = 0; y < HEIGHT; y++) {
      float v = y % cell / (float) cell;
      for (int x = 0; x < WIDTH; x++) {
        float u = x % cell / (float) cell;
        int at = y / cell * across + x / cell;
        float top = grid[at] + u * (grid[at + 1] - grid[at]);
        float bottom = grid[at + across] + u * (grid[at + across + 1] - grid[at + across]);
        plane[y * WIDTH + x] += top + v * (bottom - top);
      }
    }
  }
}
