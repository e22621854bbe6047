package org.vestibule.jpeg;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.vestibule.base.Turn;

/**
 * The long run of {@code conformance/long/jpeg-large}: the largest pictures that are taken, in the
 * heap that was given. A sequential one is put together from the restart intervals of a smaller
 * one, which must have one to a row of MCUs.
 */
final class JpegLarge {

  private JpegLarge() {}

  /** {@code HEIGHT FILE}: repeats the rows of the file's picture to that height. 0: as it is. */
  public static void main(String[] arguments) throws IOException {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    int height = Integer.parseInt(arguments[0]);
    byte[] file = Files.readAllBytes(Path.of(arguments[1]));
    byte[] jpeg = height == 0 ? file : repeated(file, height);
    FrameSize size = JpegStructure.read(jpeg).orThrow().frame().size();
    out.println(
        size
            + ", "
            + jpeg.length
            + " bytes, heap "
            + (Runtime.getRuntime().maxMemory() >> 20)
            + " MB");
    for (Turn turn : List.of(Turn.NONE, Turn.FLIP_HORIZONTAL, Turn.ROTATE_90)) {
      TranscodePlan plan = new TranscodePlan(turn, null, true);
      byte[] made = Transcoder.transcode(jpeg, plan).orThrow().bytes();
      out.println(turn + ": " + made.length + " bytes");
      out.println("  " + Proof.of(jpeg, plan, made).orThrow());
    }
    out.println("preview " + Preview.of(jpeg, 440, Turn.ROTATE_90).orThrow().width());
  }

  private static byte[] repeated(byte[] file, int height) {
    JpegStructure structure = JpegStructure.read(file).orThrow();
    List<JpegSegment> segments = structure.segments();
    JpegSegment scan = segments.get(segments.size() - 1);
    List<byte[]> rows = new ArrayList<>();
    int from = scan.dataEnd();
    for (int at = from; at < scan.codedEnd() - 1; at++) {
      if (file[at] == (byte) 0xFF && Markers.isRestart(Bytes.u8(file, at + 1))) {
        rows.add(Arrays.copyOfRange(file, from, at));
        from = at + 2;
      }
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 26);
    out.write(file, 0, scan.dataEnd());
    int wanted = height / structure.frame().unitHeight();
    for (int row = 0; row < wanted; row++) {
      out.writeBytes(rows.get(row % rows.size()));
      if (row < wanted - 1) {
        out.write(0xFF);
        out.write(Markers.RST0 + row % 8);
      }
    }
    out.write(0xFF);
    out.write(Markers.EOI);
    byte[] jpeg = out.toByteArray();
    for (JpegSegment segment : segments) {
      if (Markers.isFrame(segment.marker())) {
        jpeg[segment.dataStart() + 1] = (byte) (height >> 8);
        jpeg[segment.dataStart() + 2] = (byte) height;
      }
    }
    return jpeg;
  }
}
