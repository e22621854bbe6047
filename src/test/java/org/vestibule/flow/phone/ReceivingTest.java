package org.vestibule.flow.phone;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.flow.TestHome;
import org.vestibule.store.ledger.PhoneLinkRow;

/** How much one page takes, and that no slow file holds another one up. */
class ReceivingTest {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-14T06:00:00Z"), ZoneOffset.UTC);
  private static final byte[] START = {-1, -40, -1};

  @TempDir private Path home;
  private Practice practice;
  private PhoneLinkRow page;

  @BeforeEach
  void open() throws Exception {
    practice = Practice.open(home, Settings.defaults(home, TestHome.ZONE), CLOCK, true).orThrow();
    page =
        practice
            .store()
            .ledger()
            .phoneLinks()
            .open("mark", "V-1", "baseline", "B. Rook", CLOCK.instant().plus(Duration.ofHours(9)));
  }

  @AfterEach
  void close() throws Exception {
    practice.close();
  }

  private static UploadRules rules(long largest, int files, long bytes, long free) {
    return new UploadRules(largest, files, bytes, free);
  }

  private Outcome<Receiving.State> begin(Receiving receiving, int number, long size)
      throws Exception {
    return receiving.begin(
        page, String.format(Locale.ROOT, "%032x", number), "a" + number + ".jpg", size, "");
  }

  @Test
  void aSlowFileHoldsNoOtherOneUp() throws Exception {
    Receiving receiving = new Receiving(practice, UploadRules.DEFAULT);
    // More files than there are locks: some share one.
    List<String> ids =
        IntStream.range(0, 130)
            .mapToObj(number -> String.format(Locale.ROOT, "%032x", number))
            .toList();
    for (String id : ids) {
      receiving.begin(page, id, id + ".jpg", 10, "").orThrow();
    }
    CountDownLatch asked = new CountDownLatch(1);
    CountDownLatch goOn = new CountDownLatch(1);
    InputStream hanging =
        new InputStream() {
          private int at;

          @Override
          public int read() {
            asked.countDown();
            try {
              goOn.await();
            } catch (InterruptedException e) {
              throw new IllegalStateException(e);
            }
            return at < START.length ? START[at++] & 0xFF : -1;
          }

          @Override
          public int read(byte[] into, int from, int most) {
            int one = read();
            if (one < 0) {
              return -1;
            }
            into[from] = (byte) one;
            return 1;
          }
        };
    CompletableFuture<Outcome<Receiving.State>> slow =
        CompletableFuture.supplyAsync(() -> add(receiving, ids.get(0), hanging));
    asked.await();
    CompletableFuture<Void> others =
        CompletableFuture.runAsync(
            () ->
                ids.subList(1, ids.size())
                    .forEach(
                        id ->
                            assertThat(
                                    add(receiving, id, new ByteArrayInputStream(START))
                                        .orThrow()
                                        .receivedBytes())
                                .isEqualTo(3)));
    try {
      others.get(20, TimeUnit.SECONDS);
    } finally {
      goOn.countDown();
    }
    assertThat(slow.get(20, TimeUnit.SECONDS).orThrow().receivedBytes()).isEqualTo(3);
  }

  private Outcome<Receiving.State> add(Receiving receiving, String id, InputStream piece) {
    try {
      return receiving.add(page, id, 0, piece);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** As after a restored backup, which holds no inbox, or where somebody moved it away. */
  @Test
  void aFileThatIsGoneFromTheInboxIsNotCalledSafe() throws Exception {
    Receiving receiving = new Receiving(practice, UploadRules.DEFAULT);
    byte[] photo = Files.readAllBytes(Path.of("samples", "roll", "IMG_0002.JPG"));
    String id = begin(receiving, 1, photo.length).orThrow().id();
    for (int from = 0; from < photo.length; from += Receiving.LONGEST_PIECE_BYTES) {
      int end = Math.min(photo.length, from + Receiving.LONGEST_PIECE_BYTES);
      InputStream piece = new ByteArrayInputStream(Arrays.copyOfRange(photo, from, end));
      receiving.add(page, id, from, piece).orThrow();
    }
    String hash = ContentHash.of(photo).hex();
    assertThat(receiving.end(page, id, hash).orThrow().confirmed()).isTrue();
    assertThat(receiving.find(page, id).orElseThrow().hash()).isEqualTo(hash);

    Files.delete(home.resolve("inbox/phone/" + page.number() + "/a1.jpg"));

    Receiving.State gone = receiving.find(page, id).orElseThrow();
    assertThat(gone.confirmed()).isFalse();
    assertThat(gone.hash()).isEmpty();
    assertThat(gone.receivedBytes()).isZero();
    assertThat(receiving.all(page)).containsExactly(gone);
    assertThat(receiving.end(page, id, hash).orThrow().confirmed()).isFalse();
  }

  @Test
  void aPageTakesThreeHundredFiles() throws Exception {
    Receiving receiving = new Receiving(practice, UploadRules.DEFAULT);
    for (int number = 0; number < 300; number++) {
      begin(receiving, number, 10).orThrow();
    }
    assertThat(begin(receiving, 300, 10))
        .isEqualTo(
            Outcome.refused(
                "this page took as much as it may: 300 files or 4000 MB",
                "have another page opened for the visit"));
    // One that was begun goes on.
    assertThat(begin(receiving, 7, 10).orThrow().receivedBytes()).isZero();
  }

  @Test
  void aPageTakesFourGigabytesInFilesOfAHundredMegabytesAtMost() throws Exception {
    UploadRules rules = rules(100_000_000L, 300, 4_000_000_000L, 0);
    // What a file will have is counted from its beginning; nothing of it has to be here.
    assertThat(UploadRules.DEFAULT.mostBytes()).isEqualTo(rules.mostBytes());
    UploadLimits limits = new UploadLimits(rules);
    long room = 10_000_000_000L;
    assertThat(limits.allows(List.of(), 100_000_000L, room, room))
        .isEqualTo(Outcome.done(100_000_000L));
    assertThat(limits.allows(List.of(), 100_000_001L, room, room))
        .isEqualTo(
            Outcome.refused("the file has more than 100 MB", "bring it into the inbox by cable"));
    assertThat(limits.allows(List.of(), 0, room, room))
        .isEqualTo(
            Outcome.refused("the file is empty", "choose another, or take the photograph again"));
    Receiving receiving = new Receiving(practice, rules);
    for (int number = 0; number < 40; number++) {
      assertThat(begin(receiving, number, 99_999_999L).orThrow().sizeBytes())
          .isEqualTo(99_999_999L);
    }
    assertThat(begin(receiving, 40, 41)).isInstanceOf(Outcome.Refused.class);
    assertThat(begin(receiving, 40, 40).orThrow().sizeBytes()).isEqualTo(40);
  }

  @Test
  void aDiskThatWouldBeNearlyFullTakesNothing() throws Exception {
    long free = Files.getFileStore(home).getUsableSpace();
    Outcome<Receiving.State> refused =
        begin(new Receiving(practice, rules(100, 300, 1000, free + 1_000_000_000L)), 0, 10);
    assertThat(refused)
        .isEqualTo(
            Outcome.refused(
                "the practice's disk is nearly full",
                "leave the photographs on the phone, and tell whoever looks after Vestibule"));
    assertThat(home.resolve("uploads")).isEmptyDirectory();
  }
}
