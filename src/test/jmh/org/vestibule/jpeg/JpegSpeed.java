package org.vestibule.jpeg;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.vestibule.base.Turn;

/**
 * The engine's operations under JMH, each in a JVM of its own, on one thread and on the picture of
 * {@code conformance/bench-jpeg}; with jpegtran as a process beside them. Started by {@code
 * conformance/bench-jpeg-jmh}. The times are by the clock: on a loaded machine the ratios of {@code
 * conformance/bench-jpeg} say more.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(value = 2, jvmArgs = "-Xmx1g")
public class JpegSpeed {

  private byte[] base = new byte[0];
  private byte[] progressive = new byte[0];
  private Path folder = Path.of("");

  @Setup
  public void make() throws IOException {
    Peer peer = new Peer();
    byte[] picture = JpegBench.picture();
    base = peer.compress(picture, "-quality", "92", "-sample", "2x2");
    progressive = peer.compress(picture, "-quality", "92", "-sample", "2x2", "-progressive");
    folder = Files.createTempDirectory("jpeg-speed");
    Files.write(folder.resolve("base.jpg"), base);
    Files.write(folder.resolve("progressive.jpg"), progressive);
  }

  @TearDown
  public void forget() throws IOException {
    Files.delete(folder.resolve("base.jpg"));
    Files.delete(folder.resolve("progressive.jpg"));
    Files.delete(folder);
  }

  @Benchmark
  public Object strip() {
    return MetadataStrip.of(base);
  }

  @Benchmark
  public Object check() {
    return SoundScan.check(base).orThrow();
  }

  @Benchmark
  public Object upright() {
    return transcode(base, TranscodePlan.AS_IS);
  }

  @Benchmark
  public Object mirrored() {
    return transcode(base, TranscodePlan.turned(Turn.FLIP_HORIZONTAL));
  }

  @Benchmark
  public Object upsideDown() {
    return transcode(base, TranscodePlan.turned(Turn.FLIP_VERTICAL));
  }

  @Benchmark
  public Object turned() {
    return transcode(base, TranscodePlan.turned(Turn.ROTATE_90));
  }

  @Benchmark
  public Object cropped() {
    return transcode(base, new TranscodePlan(Turn.NONE, new CropBox(0, 0, 4032, 1504), false));
  }

  @Benchmark
  public Object progressiveToBaseline() {
    return transcode(progressive, TranscodePlan.AS_IS);
  }

  @Benchmark
  public int jpegtranMirrored() throws InterruptedException {
    return jpegtran("base.jpg", "-flip", "horizontal");
  }

  @Benchmark
  public int jpegtranTurned() throws InterruptedException {
    return jpegtran("base.jpg", "-rotate", "90");
  }

  @Benchmark
  public int jpegtranCropped() throws InterruptedException {
    return jpegtran("base.jpg", "-crop", "4032x1504+0+0");
  }

  @Benchmark
  public int jpegtranProgressiveToBaseline() throws InterruptedException {
    return jpegtran("progressive.jpg");
  }

  private static Object transcode(byte[] jpeg, TranscodePlan plan) {
    return Transcoder.transcode(jpeg, plan).orThrow();
  }

  private int jpegtran(String file, String... options) throws InterruptedException {
    List<String> command =
        new ArrayList<>(List.of("jpegtran", "-copy", "none", "-trim", "-outfile", "/dev/null"));
    command.addAll(List.of(options));
    command.add(folder.resolve(file).toString());
    try {
      int exit = new ProcessBuilder(command).inheritIO().start().waitFor();
      if (exit != 0) {
        throw new IllegalStateException("jpegtran ended with exit code " + exit);
      }
      return exit;
    } catch (IOException e) {
      throw new UncheckedIOException("jpegtran did not start", e);
    }
  }
}
