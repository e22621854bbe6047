package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.samples.Scene;

/** However many ask, only so many pictures are made, and only so much is kept. */
class MadePicturesTest {

  private static final Outcome<byte[]> ONE = Outcome.done(new byte[] {1, 2, 3});

  @Test
  void onlySoManyAreMadeAtOnceAndWhoWaitsTooLongIsToldSo() throws Exception {
    MadePictures made = new MadePictures(2, Duration.ZERO, 1000);
    CountDownLatch working = new CountDownLatch(2);
    CountDownLatch goOn = new CountDownLatch(1);
    ExecutorService askers = Executors.newFixedThreadPool(2);
    List<Future<Outcome<byte[]>>> busy = new ArrayList<>();
    for (int i = 0; i < 2; i++) {
      busy.add(
          askers.submit(
              () ->
                  made.within(
                      () -> {
                        working.countDown();
                        goOn.await();
                        return ONE;
                      })));
    }
    working.await();
    AtomicInteger begun = new AtomicInteger();
    for (int i = 0; i < 10; i++) {
      assertThat(
              made.within(
                  () -> {
                    begun.incrementAndGet();
                    return ONE;
                  }))
          .isEqualTo(
              Outcome.refused(
                  Outcome.Kind.BUSY,
                  "too many pictures are being made at once",
                  "try again in a moment"));
    }
    assertThat(begun).hasValue(0);
    goOn.countDown();
    for (Future<Outcome<byte[]>> one : busy) {
      assertThat(one.get()).isEqualTo(ONE);
    }
    askers.shutdown();
    assertThat(made.within(() -> ONE)).isEqualTo(ONE);
  }

  @Test
  void whoFailsMakesRoomAllTheSame() throws Exception {
    MadePictures made = new MadePictures(1, Duration.ZERO, 1000);
    for (int i = 0; i < 3; i++) {
      try {
        made.within(
            () -> {
              throw new OutOfMemoryError("none is left");
            });
      } catch (OutOfMemoryError expected) {
        assertThat(expected).hasMessage("none is left");
      }
    }
    assertThat(made.within(() -> ONE)).isEqualTo(ONE);
  }

  @Test
  void theLatestAreKeptInSoManyBytes() {
    MadePictures made = new MadePictures(1, Duration.ZERO, 100);
    List<String> work = new ArrayList<>();
    for (String key : List.of("a", "b", "a", "c", "a", "b")) {
      Outcome<byte[]> picture =
          made.kept(
              key,
              () -> {
                work.add(key);
                return Outcome.done(new byte[40]);
              });
      assertThat(picture.orThrow()).hasSize(40);
    }
    // Two fit: c took the place of b, which was used longer ago than a.
    assertThat(work).containsExactly("a", "b", "c", "b");
    // What is larger than all room is made and not kept; a refusal is not kept either.
    for (int i = 0; i < 2; i++) {
      made.kept("large", () -> Outcome.done(new byte[101])).orThrow();
      work.clear();
      made.kept("no", () -> refused(work));
    }
    assertThat(work).hasSize(1);
    assertThat(made.keptBytes()).isLessThanOrEqualTo(100);
  }

  @Test
  void whatAPersonIsAskedAboutIsMadeInTurnAndKept(@TempDir Path folder) throws Exception {
    TestHome home = TestHome.in(folder);
    home.put("a.jpg", Scene.FRONTAL, 1);
    home.ingest();
    Settings settings = Settings.defaults(folder, TestHome.ZONE);
    try (Practice practice = Practice.open(folder, settings, TestHome.CLOCK, false).orThrow()) {
      ContentHash photo = new WaitingPhotos(practice).all().get(0).hash();
      PersonWords words =
          PersonWords.by("B. Rook").with(PhotoFact.VIEW, "frontal").with(PhotoFact.MIRROR, "none");
      MadePictures made = new MadePictures(1, Duration.ZERO, 10_000_000);
      FilingPreview preview = new FilingPreview(practice, made);
      byte[] asked = preview.asked(photo, 440).orThrow();
      byte[] shown = preview.shown(photo, words).orThrow();
      assertThat(preview.asked(photo, 440).orThrow()).isSameAs(asked);
      assertThat(preview.shown(photo, words).orThrow()).isSameAs(shown);
      assertThat(made.keptBytes()).isEqualTo(asked.length + shown.length);
      FilingPreview crowded = new FilingPreview(practice, new MadePictures(0, Duration.ZERO, 1000));
      assertThat(crowded.asked(photo, 440)).isInstanceOf(Outcome.Refused.class);
      assertThat(crowded.shown(photo, words)).isInstanceOf(Outcome.Refused.class);
    }
  }

  private static Outcome<byte[]> refused(List<String> work) {
    work.add("no");
    return Outcome.refused("it can't be made", "choose another");
  }
}
