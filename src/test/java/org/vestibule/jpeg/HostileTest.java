package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.vestibule.jpeg.Assembled.bytes;
import static org.vestibule.jpeg.Assembled.join;
import static org.vestibule.jpeg.Assembled.segment;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/** Files made to hurt, each refused by its exact words; and odd ones that must not be. */
final class HostileTest {

  private static final byte[] START = bytes(0xFF, 0xD8);
  private static final byte[] END = bytes(0xFF, 0xD9);

  /** DC: one code of one bit, size 0. AC: 0 for the end of a block, 10 and 110 as given. */
  private static byte[] tables(int second, int third) {
    byte[] dc = new byte[18];
    dc[1] = 1;
    byte[] ac = new byte[20];
    ac[0] = 0x10;
    ac[1] = 1;
    ac[2] = 1;
    ac[3] = 1;
    ac[18] = (byte) second;
    ac[19] = (byte) third;
    byte[] steps = new byte[65];
    Arrays.fill(steps, 1, 65, (byte) 1);
    return join(segment(0xDB, steps), segment(0xC4, dc), segment(0xC4, ac));
  }

  private static byte[] frame(int marker, int width, int height) {
    return segment(
        marker, bytes(8, height >> 8, height & 255, width >> 8, width & 255, 1, 1, 0x11, 0));
  }

  private static byte[] scan(int start, int end, int bits, byte[] data) {
    return join(segment(0xDA, bytes(1, 1, 0, start, end, bits)), data);
  }

  private static byte[] one(int second, int third, int... data) {
    return join(START, tables(second, third), frame(0xC0, 8, 8), scan(0, 63, 0, bytes(data)), END);
  }

  @Test
  void refusesRunsPastTheEndOfABlock() {
    // DC 0, then 10 (fifteen zeros and a value of one bit) five times: 0 10 1 10 1 10 1 10 1 10 1.
    assertThat(refusal(one(0xF1, 0xF0, 0b01011011, 0b01101101)))
        .isEqualTo(
            "the picture's data is damaged near byte 142 (a run goes past the end of a block); none"
                + " of its 8 rows is sound");
    // 110 is a run of sixteen zeros: four of them and a value, five of them.
    assertThat(refusal(one(0xF1, 0xF0, 0b01101101, 0b10110101, 0xFF)))
        .contains("a run goes past the end of a block");
    assertThat(refusal(one(0xF1, 0xF0, 0b01101101, 0b10110110, 0x7F)))
        .contains("a run goes past the end of a block");
  }

  @Test
  void refusesCodesThatAreNone() {
    assertThat(refusal(one(0x01, 0x02, 0b01111111)))
        .endsWith("(no such code); none of its 8 rows is sound");
    assertThat(refusal(one(0x50, 0x02, 0b01011111)))
        .endsWith("(no such run); none of its 8 rows is sound");
  }

  @Test
  void takesZeroRunsThatSayNothing() {
    // 0, then 110 (sixteen zeros) twice, then the end of the block.
    byte[] result =
        Transcoder.transcode(
                one(0x01, 0xF0, 0b01101100, 0b11111111, 0), TranscodePlan.turned(Turn.ROTATE_180))
            .orThrow()
            .bytes();

    assertThat(ReferenceDecoder.decode(result).parts().get(0).blocks()[0][0])
        .isEqualTo(new int[64]);
  }

  @Test
  void refusesTooManyScans() {
    byte[] scans = new byte[0];
    byte[] dc = scan(0, 0, 0, bytes(0x7F));
    for (int i = 0; i < 500; i++) {
      scans = join(scans, dc);
    }
    assertThat(refusal(join(START, tables(1, 2), frame(0xC2, 8, 8), scans, END)))
        .isEqualTo("the picture comes in 500 scans, at most 400 are taken");
    byte[] more = scans;
    for (int i = 0; i < 7; i++) {
      more = join(more, more);
    }
    assertThat(refusal(join(START, tables(1, 2), frame(0xC2, 8, 8), more, END)))
        .startsWith("more than 20000 segments before byte ");
  }

  /** A scan in which one code ends the band of 32767 blocks costs next to nothing to send. */
  @Test
  void survivesAProgressiveBomb() {
    int blocksWide = 875;
    int size = 8 * blocksWide;
    byte[] data = new byte[blocksWide * blocksWide / 8 + 1];
    byte[] scans = scan(0, 0, 0, data);
    // 10 is the symbol E0: 14 bits more, for 16384 to 32767 blocks; 24 of them are enough.
    StringBuilder run = new StringBuilder();
    for (int i = 0; i < 24; i++) {
      run.append("10").append("1".repeat(14));
    }
    byte[] band = new byte[run.length() / 8];
    for (int i = 0; i < run.length(); i++) {
      band[i / 8] |= (byte) ((run.charAt(i) - '0') << (7 - i % 8));
    }
    byte[] stuffed = new byte[0];
    for (byte next : band) {
      stuffed = join(stuffed, next == (byte) 0xFF ? bytes(0xFF, 0) : new byte[] {next});
    }
    for (int k = 1; k < 64; k++) {
      scans = join(scans, scan(k, k, 13, stuffed));
      for (int low = 12; low >= 8; low--) {
        scans = join(scans, scan(k, k, (low + 1) << 4 | low, stuffed));
      }
    }
    byte[] bomb = join(START, tables(0xE0, 2), frame(0xC2, size, size), scans, END);
    assertThat(JpegStructure.read(bomb).orThrow().scans()).isEqualTo(379);
    assertThat(bomb.length).isLessThan(140_000);

    Outcome<Transcoded> outcome = Transcoder.transcode(bomb, TranscodePlan.AS_IS);

    if (outcome instanceof Outcome.Refused<Transcoded> refused) {
      // Where the heap is small, the picture waits for more of it.
      assertThat(refused.reason()).contains("MB of memory");
    } else {
      assertThat(outcome.orThrow().width()).isEqualTo(size);
    }
  }

  @Test
  void takesFillBytesAndSkipsJunk() {
    Random random = new Random(4);
    PlainJpeg source = PlainJpeg.random(40, 30, new int[][] {{2, 2}, {1, 1}, {1, 1}}, random);
    ReferenceCoder tidy = new ReferenceCoder(source);
    ReferenceCoder odd = new ReferenceCoder(source);
    odd.fill = 5;
    odd.junk = bytes(1, 2, 3);
    odd.ids = new int[] {9, 9, 9};

    byte[] expected = Transcoder.transcode(tidy.code(), TranscodePlan.AS_IS).orThrow().bytes();

    assertThat(Transcoder.transcode(odd.code(), TranscodePlan.AS_IS).orThrow().bytes())
        .isEqualTo(expected);
    assertThat(JpegStructure.read(odd.code()).orThrow().warnings())
        .isNotEmpty()
        .allMatch(warning -> warning.startsWith("8 stray bytes between segments at byte "));
  }

  /** An extended picture may have four tables of a kind, a baseline one two (T.81 B.2.4.2). */
  @Test
  void recodesWhatHasMoreTablesThanBaselineAllows() {
    PlainJpeg source =
        PlainJpeg.random(40, 30, new int[][] {{1, 1}, {1, 1}, {1, 1}}, new Random(5));
    ReferenceCoder coder = new ReferenceCoder(source);
    coder.frameMarker = 0xC1;
    coder.ownTables = true;

    byte[] result = Transcoder.transcode(coder.code(), TranscodePlan.AS_IS).orThrow().bytes();

    PlainJpeg read = ReferenceDecoder.decode(result);
    for (int c = 0; c < 3; c++) {
      assertThat(read.parts().get(c).blocks()).isDeepEqualTo(source.parts().get(c).blocks());
    }
  }

  @Test
  void admitsWorkByMemory() throws Exception {
    MemoryBudget budget = new MemoryBudget(100L << 20);
    CountDownLatch holds = new CountDownLatch(1);
    CountDownLatch mayEnd = new CountDownLatch(1);
    ExecutorService threads = Executors.newFixedThreadPool(2);
    try {
      Future<String> large =
          threads.submit(
              () ->
                  budget.within(
                      80L << 20,
                      () -> {
                        holds.countDown();
                        await(mayEnd);
                        return "large";
                      }));
      holds.await();
      assertThat(budget.within(20L << 20, () -> "small")).isEqualTo("small");
      Future<String> next = threads.submit(() -> budget.within(30L << 20, () -> "next"));
      while (budget.waiting() == 0) {
        assertThat(next.isDone()).isFalse();
        Thread.onSpinWait();
      }
      mayEnd.countDown();
      assertThat(List.of(large.get(), next.get())).containsExactly("large", "next");
      assertThat(budget.within(100L << 20, () -> "all")).isEqualTo("all");
    } finally {
      threads.shutdownNow();
    }
  }

  @Test
  void stripsWithoutDecoding() {
    byte[] photo = Assembled.withSegments(Assembled.plain(64, 48), segment(0xFE, new byte[9]));

    assertThat(MetadataStrip.of(photo).orThrow().bytes())
        .isEqualTo(Transcoder.transcode(photo, TranscodePlan.AS_IS).orThrow().bytes());
    ReferenceCoder scans =
        new ReferenceCoder(
            PlainJpeg.random(9, 9, new int[][] {{1, 1}, {1, 1}, {1, 1}}, new Random(1)));
    scans.scans = List.of(new int[] {0}, new int[] {1, 2});
    assertThat(((Outcome.Refused<?>) MetadataStrip.of(scans.code())).reason())
        .isEqualTo("the picture's coded bytes can't be kept as they are");
  }

  @Test
  void saysWhetherEveryCodeCanBeRead() {
    byte[] sound = Assembled.plain(200, 100);
    assertThat(SoundScan.check(sound).orThrow()).isEqualTo(JpegStructure.read(sound).orThrow());
    byte[] odd = join(Arrays.copyOf(sound, sound.length - 2), bytes(1, 2, 3, 0xFF, 0xD9));
    assertThat(SoundScan.check(odd)).isInstanceOf(Outcome.Done.class);
    assertThat(SoundScan.check(Arrays.copyOf(sound, sound.length / 2)))
        .isInstanceOf(Outcome.Refused.class);
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static String refusal(byte[] jpeg) {
    Outcome<Transcoded> outcome =
        Transcoder.transcode(jpeg, TranscodePlan.turned(Turn.FLIP_VERTICAL));
    assertThat(outcome).isInstanceOf(Outcome.Refused.class);
    return ((Outcome.Refused<Transcoded>) outcome).reason();
  }
}
