package org.vestibule.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.encode.Role;
import org.vestibule.store.ledger.SeenFile;

/** What people call photographs by, and what is said when an id names none or several. */
class PhotoIdsTest {

  private static final ContentHash ONE = new ContentHash("abcdef0123".repeat(6) + "0001");
  private static final ContentHash TWIN = new ContentHash("abcdef0123".repeat(6) + "0002");

  @TempDir private Path home;
  private Store store;

  @BeforeEach
  void open() throws IOException {
    store = StoreFixture.open(home).orThrow();
    store.ledger().arrivals().seen(new SeenFile(ONE, "one.jpg", 9, StoreFixture.NOW));
  }

  @AfterEach
  void close() throws IOException {
    store.close();
  }

  @Test
  void tenDigitsWillDoUnlessTwoBeginAlike() {
    assertThat(store.ids().of(ONE)).isEqualTo("abcdef0123");
    store.ledger().arrivals().seen(new SeenFile(TWIN, "twin.jpg", 9, StoreFixture.NOW));
    assertThat(store.ids().of(ONE)).isEqualTo(ONE.hex());
    assertThat(store.ids().of(TWIN)).isEqualTo(TWIN.hex());
  }

  @Test
  void sixDigitsOrMoreInAnyCaseFindIt() {
    PhotoRef whole = new PhotoRef(ONE, Role.FRAME);
    for (String id : new String[] {"abcdef", " ABCDEF0123 ", ONE.hex()}) {
      assertThat(store.ids().find(id)).isEqualTo(Outcome.done(whole));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"abcde", "", "ghijkl", "%bcdef", "abcdef0123-crop", "-frame"})
  void whatIsNoIdIsRefused(String id) {
    assertThat(store.ids().find(id))
        .isEqualTo(
            Outcome.refused(
                "\"" + id + "\" is not the id of a photograph",
                "give the id that find and waiting print, at least its first 6 digits, with"
                    + " -frame for the whole frame of a cropped photograph"));
  }

  @Test
  void anIdOfNoPhotographIsRefused() {
    assertThat(store.ids().find("ffffff"))
        .isEqualTo(
            Outcome.refused(
                "no photograph has the id ffffff", "give the id that find and waiting print"));
  }

  @Test
  void anIdOfSeveralIsRefusedWithAllOfThem() {
    store.ledger().arrivals().seen(new SeenFile(TWIN, "twin.jpg", 9, StoreFixture.NOW));
    assertThat(store.ids().find("abcdef"))
        .isEqualTo(
            Outcome.refused(
                "several photographs have ids that begin with abcdef",
                "say which: " + ONE.hex() + ", " + TWIN.hex()));
  }

  @Test
  void theFrameOfACroppedPhotographHasAnIdOfItsOwn() throws IOException {
    StoreFixture.file(store, "cropped.jpg", Role.FRAME, Role.CROP);
    ContentHash hash = StoreFixture.photo("cropped.jpg");
    assertThat(store.ids().find(hash.brief()))
        .isEqualTo(Outcome.done(new PhotoRef(hash, Role.CROP)));
    assertThat(store.ids().find(hash.brief() + "-frame"))
        .isEqualTo(Outcome.done(new PhotoRef(hash, Role.FRAME)));
    assertThat(store.ledger().intents().of(hash))
        .extracting(intent -> store.ids().of(intent))
        .containsExactly(hash.brief() + "-frame", hash.brief());
  }

  @Test
  void aPhotographThatIsNotCroppedHasNoFrameApart() throws IOException {
    StoreFixture.file(store, "whole.jpg");
    String id = StoreFixture.photo("whole.jpg").brief();
    assertThat(store.ids().find(id + "-frame"))
        .isEqualTo(
            Outcome.refused(
                "photograph " + id + " is not cropped, so it has no frame apart", "ask for " + id));
  }
}
