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
  void anObjectThatCannotBeKeptEndsTheRunWithFour() throws IOException {
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
    Asked damaged = Asked.by("nightly job", home, "ingest", "--at-once");
    assertThat(damaged.code()).isEqualTo(4);
    assertThat(damaged.out().replaceAll("\\s+", " "))
        .contains(
            "Note: a.jpg: the object already there (12 bytes) differs from the one to be kept")
        .contains("nothing was overwritten; run verify, and restore the object from a backup.");
    Files.delete(place);
    assertThat(Asked.by("nightly job", home, "ingest", "--at-once").code()).isZero();
    assertThat(Asked.of(home, "verify").code()).isZero();
  }
}
