package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.vestibule.jpeg.Assembled.bytes;
import static org.vestibule.jpeg.Assembled.join;
import static org.vestibule.jpeg.Assembled.segment;
import static org.vestibule.jpeg.Assembled.withComponentIds;
import static org.vestibule.jpeg.Assembled.withSegments;
import static org.vestibule.jpeg.Assembled.withoutJfif;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/** Pictures that are built oddly but soundly, and each refusal by its exact words. */
final class OddJpegTest {

  private final byte[] plain = Assembled.plain(48, 32);
  private final byte[] bare = Transcoder.transcode(plain, TranscodePlan.AS_IS).orThrow().bytes();

  @Test
  void keepsTheCodedBytesOfAnUprightPicture() {
    byte[] dressed =
        join(withSegments(plain, segment(0xFE, new byte[9]), segment(0xE7, new byte[5])), plain);

    byte[] result = Transcoder.transcode(dressed, TranscodePlan.AS_IS).orThrow().bytes();

    assertThat(coded(result)).isEqualTo(coded(plain));
    assertThat(result).isEqualTo(bare);
    assertThat(JpegStructure.read(result).orThrow().segments())
        .extracting(JpegSegment::name)
        .containsOnly("DQT", "SOF0", "DHT", "SOS");
    assertThat(Proof.of(dressed, TranscodePlan.AS_IS, result)).isInstanceOf(Outcome.Done.class);
  }

  @Test
  void keepsRestartMarkersOfAnUprightPicture() {
    Peer peer = new Peer();
    byte[] source = peer.compress(Peer.picture(64, 40, false, 5), "-restart", "2B");

    byte[] result = Transcoder.transcode(source, TranscodePlan.AS_IS).orThrow().bytes();

    assertThat(coded(result)).isEqualTo(coded(source));
    assertThat(peer.pixels(result)).isEqualTo(peer.pixels(source));
  }

  @Test
  void givesComponentsTheirUsualIds() {
    byte[] odd = withComponentIds(withoutJfif(plain), 0, 'q', 255);
    byte[] alike = withComponentIds(plain, 7, 7, 7);

    assertThat(Transcoder.transcode(odd, TranscodePlan.AS_IS).orThrow().bytes()).isEqualTo(bare);
    assertThat(Transcoder.transcode(alike, TranscodePlan.AS_IS).orThrow().bytes()).isEqualTo(bare);
  }

  @Test
  void keepsColoursWithoutTheMarkersThatStatedThem() {
    Peer peer = new Peer();
    byte[] adobe = segment(0xEE, join(Assembled.latin("Adobe"), bytes(0, 100, 0, 0, 0, 0, 1)));
    byte[] source = withSegments(withComponentIds(withoutJfif(plain), 'R', 'G', 'B'), adobe);

    byte[] result = Transcoder.transcode(source, TranscodePlan.AS_IS).orThrow().bytes();

    assertThat(peer.pixels(result)).isEqualTo(peer.pixels(source));
  }

  @Test
  void readsTheHeightFromItsOwnSegment() {
    byte[] open = plain.clone();
    int frame = find(open, 0xC0).dataStart();
    open[frame + 1] = 0;
    open[frame + 2] = 0;
    byte[] lines =
        join(Arrays.copyOf(open, open.length - 2), segment(0xDC, bytes(0, 32)), bytes(0xFF, 0xD9));

    assertThat(Transcoder.transcode(lines, TranscodePlan.AS_IS).orThrow().bytes()).isEqualTo(bare);
  }

  @Test
  void writesWideTablesNarrowWhereTheyFit() {
    JpegSegment dqt = find(plain, 0xDB);
    byte[] wide = new byte[129];
    wide[0] = (byte) (0x10 | plain[dqt.dataStart()]);
    for (int i = 0; i < 64; i++) {
      wide[2 + 2 * i] = plain[dqt.dataStart() + 1 + i];
    }
    byte[] source =
        join(
            Arrays.copyOf(plain, (int) dqt.offsetBytes()),
            segment(0xDB, wide),
            Arrays.copyOfRange(plain, dqt.dataStart() + 65, plain.length));
    if (dqt.dataLength() > 65) {
      source =
          join(
              Arrays.copyOf(plain, (int) dqt.offsetBytes()),
              segment(0xDB, wide),
              segment(0xDB, Arrays.copyOfRange(plain, dqt.dataStart() + 65, dqt.dataEnd())),
              Arrays.copyOfRange(plain, dqt.dataEnd(), plain.length));
    }
    source[(int) find(source, 0xC0).offsetBytes() + 1] = (byte) 0xC1;

    assertThat(Transcoder.transcode(source, TranscodePlan.AS_IS).orThrow().bytes()).isEqualTo(bare);
  }

  @Test
  void recodesWhereBytesWereLeftOver() {
    byte[] source = join(Arrays.copyOf(plain, plain.length - 2), bytes(1, 2, 3, 0xFF, 0xD9));

    Transcoded result = Transcoder.transcode(source, TranscodePlan.AS_IS).orThrow();

    assertThat(Proof.of(plain, TranscodePlan.AS_IS, result.bytes()))
        .isInstanceOf(Outcome.Done.class);
    assertThat(Coefficients.decode(source).orThrow().warnings())
        .singleElement()
        .asString()
        .startsWith("stray bytes in the data of the scan that starts with SOS at byte ");
  }

  @Test
  void refusesWhatItDoesNotCarry() {
    Peer peer = new Peer();
    byte[] picture = Peer.picture(32, 32, false, 4);
    assertThat(refusal(peer.compress(picture, "-rgb")))
        .isEqualTo("the picture's colours are RGB components, gray or YCbCr were expected");
    assertThat(refusal(peer.compress(picture, "-arithmetic")))
        .isEqualTo(
            "the picture is coded as arithmetic-coded sequential JPEG; baseline, extended"
                + " sequential and progressive Huffman coding are read");
    // Quality 5 multiplies T.81 Table K.1 by ten; 40 is its first step, in zigzag order, above 25.
    assertThat(refusal(peer.compress(picture, "-quality", "5")))
        .isEqualTo(
            "the picture uses a quantisation step of 400, a baseline JPEG carries at most 255");
    assertThat(refusal(frame(0xC0, 8, 16, 16, 5)))
        .isEqualTo("the picture has 5 components, at most 4 are read");
    assertThat(refusal(frame(0xC1, 12, 16, 16, 3)))
        .isEqualTo("the picture has 12 bits per sample, 8 are read");
    assertThat(refusal(frame(0xC3, 8, 16, 16, 3)))
        .startsWith("the picture is coded as lossless JPEG");
    assertThat(refusal(frame(0xC5, 8, 16, 16, 3)))
        .startsWith("the picture is coded as hierarchical (differential sequential) JPEG");
  }

  @Test
  void refusesHugePicturesBeforeMakingRoomForThem() {
    assertThat(refusal(frame(0xC0, 8, 60000, 60000, 3)))
        .isEqualTo(
            "the picture is 60000 x 60000 samples, more than the 200 million that are taken for a"
                + " baseline JPEG");
    assertThat(refusal(frame(0xC2, 8, 8000, 8000, 1)))
        .isEqualTo(
            "the picture is 8000 x 8000 samples, more than the 50 million that are taken for a"
                + " progressive JPEG");
    assertThat(refusal(frame(0xC0, 8, 8000, 8000, 1)))
        .isEqualTo(
            "the picture's data ends too early: 9 bytes are there, its 1000000 blocks take at least"
                + " 250000");
    assertThat(memoryRefusal(500L << 20, 400L << 20))
        .isEqualTo("the picture needs 500 MB of memory, 400 MB may be used for pictures");
  }

  @Test
  void refusesEveryCutThatLosesABlock() {
    int scan = find(plain, 0xDA).dataEnd();
    int end = plain.length - 2;
    for (int cut = scan; cut < end - 1; cut++) {
      Outcome<Coefficients> outcome = Coefficients.decode(Arrays.copyOf(plain, cut));
      assertThat(outcome).as("cut at %d of %d", cut, end).isInstanceOf(Outcome.Refused.class);
      assertThat(((Outcome.Refused<Coefficients>) outcome).reason()).contains("ends too early");
    }
    assertThat(Coefficients.decode(Arrays.copyOf(plain, end)).orThrow().warnings())
        .containsExactly("the file ends without an end marker (EOI)");
  }

  @Test
  void refusesDamagedTables() {
    byte[] overfull = plain.clone();
    overfull[find(plain, 0xC4).dataStart() + 1] = 3;
    overfull[find(plain, 0xC4).dataStart() + 3] = 2;
    assertThat(refusal(overfull))
        .isEqualTo("a Huffman table has more codes of 1 bits than there can be");
    byte[] zero = plain.clone();
    zero[find(plain, 0xDB).dataStart() + 9] = 0;
    assertThat(refusal(zero)).isEqualTo("DQT at byte 20 has a quantisation step of 0");
    byte[] missing = plain.clone();
    missing[(int) find(plain, 0xC4).offsetBytes() + 1] = (byte) 0xE9;
    assertThat(refusal(missing)).isEqualTo("Huffman table DC 0 is used but not defined");
  }

  @Test
  void refusesAMissingRestartMarker() {
    Peer peer = new Peer();
    byte[] source = peer.compress(Peer.picture(64, 40, false, 5), "-restart", "2B");
    int scan = find(source, 0xDA).dataEnd();
    int at = scan;
    while (source[at] != (byte) 0xFF || source[at + 1] != (byte) 0xD1) {
      at++;
    }
    source[at + 1] = (byte) 0xD3;

    assertThat(refusal(source))
        .isEqualTo(
            "restart marker 1 was expected near byte "
                + at
                + " but 3 was found; the first 16 of its 40 rows (40 %) are sound");
  }

  private static byte[] coded(byte[] jpeg) {
    JpegSegment scan = find(jpeg, 0xDA);
    return Arrays.copyOfRange(jpeg, scan.dataEnd(), scan.codedEnd());
  }

  private static JpegSegment find(byte[] jpeg, int marker) {
    return JpegStructure.read(jpeg).orThrow().segments().stream()
        .filter(segment -> segment.marker() == marker)
        .findFirst()
        .orElseThrow();
  }

  /** A file of a frame header and a scan of a few bytes. */
  private static byte[] frame(int marker, int precision, int width, int height, int components) {
    byte[] parts = new byte[3 * components];
    byte[] scan = new byte[2 * components];
    for (int i = 0; i < components; i++) {
      parts[3 * i] = (byte) (i + 1);
      parts[3 * i + 1] = 0x11;
      scan[2 * i] = (byte) (i + 1);
    }
    return join(
        bytes(0xFF, 0xD8),
        segment(
            marker,
            join(
                bytes(precision, height >> 8, height & 255, width >> 8, width & 255, components),
                parts)),
        segment(0xDA, join(bytes(components), scan, bytes(0, 63, 0))),
        new byte[9],
        bytes(0xFF, 0xD9));
  }

  private static String refusal(byte[] jpeg) {
    Outcome<Transcoded> outcome =
        Transcoder.transcode(jpeg, TranscodePlan.turned(Turn.FLIP_VERTICAL));
    assertThat(outcome).isInstanceOf(Outcome.Refused.class);
    return ((Outcome.Refused<Transcoded>) outcome).reason();
  }

  private static String memoryRefusal(long needed, long budget) {
    try {
      return new MemoryBudget(budget).within(needed, () -> "taken");
    } catch (JpegFault fault) {
      Outcome<Object> refusal = fault.refusal();
      return ((Outcome.Refused<Object>) refusal).reason();
    }
  }
}
