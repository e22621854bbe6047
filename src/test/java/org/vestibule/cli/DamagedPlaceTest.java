package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/**
 * A night in which an object could not be kept does not look like a night in which all was well.
 */
class DamagedPlaceTest {

  @TempDir Path folder;

  @Test
  void whatLiesInAnObjectsPlaceIsLeftAndSaid() throws IOException {
    TestHome home = TestHome.in(folder);
    home.put("a.jpg", Scene.FRONTAL, 1);
    home.manifest(
        """
        file,visit,view,mirror
        a.jpg,V1,frontal,none
        """);
    Path objects = Files.writeString(home.folder().resolve("objects"), "a file in the way");
    Asked stopped = Asked.by("nightly job", home, "ingest", "--at-once");
    assertThat(stopped.code()).as(stopped.err()).isEqualTo(6);
    assertThat(stopped.err())
        .matches(
            "vestibule: a file lies where a folder is needed \\([0-9a-f]{2}\\)\\. Move it away, or"
                + " name another folder\\.\n");
    Files.delete(objects);
    Path place;
    try (Practice practice = home.open()) {
      String uid = practice.store().ledger().intents().unfinished().get(0).sopUid();
      place = practice.store().objects().path(uid).orElseThrow();
    }
    Files.createDirectories(place.getParent());
    Files.writeString(place, "another file");
    Asked again = Asked.by("nightly job", home, "ingest", "--at-once");
    assertThat(again.code()).as(again.err()).isZero();
    assertThat(again.out()).contains("under a new identity, since another file already had");
    assertThat(place).hasContent("another file");
    Asked verified = Asked.of(home, "verify");
    assertThat(verified.code()).isZero();
    assertThat(verified.out())
        .contains("Everything that counts is as it was kept.")
        .contains("belongs to a filing that was given up");
  }
}
