package org.vestibule.flow.phone;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.store.faults.FaultyFileSystem;

/** When a file has its place in the inbox, a power cut takes nothing of its path. */
class InboxPlaceTest {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-14T06:00:00Z"), ZoneOffset.UTC);

  @TempDir private Path home;

  /** A name is on the disk when its folder was forced (fsync(2)): file, page, "phone". */
  @Test
  void everyNameOfThePathIsForcedBeforeTheFileIsCalledSafe() throws Exception {
    FaultyFileSystem unix = new FaultyFileSystem(Jimfs.newFileSystem(Configuration.unix()));
    Path inbox = Files.createDirectories(unix.getPath("/inbox"));
    Path part = Files.write(unix.getPath("/0a.part"), new byte[] {1, 2, 3});
    try (Practice practice =
        Practice.open(home, Settings.defaults(home, ZoneOffset.UTC), CLOCK, true).orThrow()) {
      InboxPlace places = new InboxPlace(inbox, practice.store().ledger().uploads());
      unix.forgetDeeds();
      places.move(part, places.free(7, "IMG_0001.jpg"));
    }
    assertThat(inbox.resolve("phone/7/IMG_0001.jpg")).hasBinaryContent(new byte[] {1, 2, 3});
    assertThat(unix.deeds())
        .containsSubsequence(
            "link IMG_0001.jpg", "force 7", "force phone", "force inbox", "delete 0a.part");
  }
}
