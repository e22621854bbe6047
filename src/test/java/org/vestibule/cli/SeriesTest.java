package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** A visit that names its series is told of until it has all views, while retakes are possible. */
class SeriesTest {

  /** The orthodontic series: three of the face, five intraoral (American Board of Orthodontics). */
  private static final String VISITS =
      """
      visit,patient id,name,birth date,sex,start,end,series
      V1,P1,"Tallgrass, Orla",1990-01-02,F,2026-03-12 09:00,2026-03-12 10:00,orthodontic
      V2,P2,"Brightwater, Ned",1971-05-06,M,2026-03-12 11:00,2026-03-12 12:00,
      """;

  @TempDir private Path folder;

  @Test
  void whatIsMissingAndDoubledIsSaid() throws IOException {
    TestHome home = TestHome.in(folder);
    Files.writeString(folder.resolve("visits.csv"), VISITS);
    String one = home.put("a.jpg", Scene.FRONTAL, 1);
    home.put("b.jpg", Scene.FRONTAL, 2);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\nb.jpg,V1,frontal,none\n");
    assertThat(plain(Asked.by("nightly job", home, "ingest", "--at-once")))
        .contains("What a series still lacks")
        .contains("Visit V1, series orthodontic: missing ")
        .contains("more than once: Frontal, teeth together.")
        .doesNotContain("missing Frontal");
    assertThat(plain(Asked.of(home, "waiting"))).contains("Visit V1, series orthodontic: missing ");
    Asked.of(home, "move", one, "--visit", "V2", "--why", "another visit's", "--by", "Ada");
    assertThat(plain(Asked.of(home, "waiting"))).doesNotContain("more than once");
  }

  @Test
  void aVisitWithoutASeriesIsNotTold() throws IOException {
    TestHome home = TestHome.in(folder);
    home.put("a.jpg", Scene.FRONTAL, 1);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\n");
    assertThat(plain(Asked.by("nightly job", home, "ingest", "--at-once")))
        .doesNotContain("series");
  }

  private static String plain(Asked asked) {
    return asked.out().replaceAll("[\\s-]+", " ");
  }
}
