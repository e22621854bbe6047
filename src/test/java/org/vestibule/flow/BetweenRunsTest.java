package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.intake.LeftOut;
import org.vestibule.intake.LeftOutKind;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.SeenFile;

/** What people do to an inbox from one run to the next. */
class BetweenRunsTest {

  private static final String MANIFEST =
      """
      file,visit,view,mirror
      a.jpg,V1,frontal,none
      """;

  @TempDir Path folder;

  private TestHome home;
  private String filed;

  @BeforeEach
  void aFirstRun() throws IOException {
    home = TestHome.in(folder);
    filed = home.put("a.jpg", Scene.FRONTAL, 1);
    home.manifest(MANIFEST);
    assertThat(home.ingest().filed()).hasSize(1);
  }

  @Test
  void aSecondRunAddsNothingToObjectsAndIndex() throws IOException {
    Map<String, String> objects = TestHome.everything(folder.resolve("objects"));
    Map<String, String> index = TestHome.everything(folder.resolve("index"));
    IngestReport again = home.ingest();
    assertThat(again.filed()).isEmpty();
    assertThat(again.knownAlready()).isEqualTo(1);
    assertThat(TestHome.everything(folder.resolve("objects"))).isEqualTo(objects);
    assertThat(TestHome.everything(folder.resolve("index"))).isEqualTo(index);
  }

  @Test
  void anotherPhotographUnderTheNameOfAFiledOneIsAPhotographOfItsOwn() throws IOException {
    String other = home.put("a.jpg", Scene.FRONTAL, 2);
    assertThat(home.ingest().filed()).extracting(FiledPhoto::id).containsExactly(other);
    try (Practice practice = home.open()) {
      assertThat(practice.store().objects().list()).hasSize(2);
      assertThat(new KeptPhoto(practice).object(filed)).isNotInstanceOf(Refused.class);
      assertThat(new SourceFiles(practice).bytes(TestHome.hash(practice, filed)))
          .as("the name is not the photograph")
          .isInstanceOf(Refused.class);
      assertThat(Verify.run(practice)).isEmpty();
    }
  }

  @Test
  void aFileThatWentAwayTakesNothingWithIt() throws IOException {
    String waits = home.put("w.jpg", Scene.FRONTAL, 3);
    assertThat(home.ingest().waiting()).hasSize(1);
    Files.delete(home.inbox().resolve("a.jpg"));
    Files.delete(home.inbox().resolve("w.jpg"));
    IngestReport report = home.ingest();
    assertThat(report.knownAlready()).isZero();
    assertThat(report.waiting()).isEmpty();
    try (Practice practice = home.open()) {
      assertThat(Verify.run(practice)).isEmpty();
      assertThat(new WaitingPhotos(practice).all())
          .as("it still waits: nobody decided about it")
          .extracting(WaitingPhoto::id)
          .containsExactly(waits);
      var file =
          new Corrections(practice)
              .file(
                  waits, ByPerson.says("Ada", "visit", "V1", "view", "frontal", "mirror", "none"));
      assertThat(((Refused<FiledPhoto>) file).sentence())
          .isEqualTo(
              "the file of this photograph (w.jpg) is no longer where it was: put it back into the"
                  + " inbox and run ingest, then try again");
    }
    home.put("elsewhere.jpg", Scene.FRONTAL, 3);
    home.ingest();
    try (Practice practice = home.open()) {
      new Corrections(practice)
          .file(waits, ByPerson.says("Ada", "visit", "V1", "view", "frontal", "mirror", "none"))
          .orThrow();
    }
  }

  @Test
  void onePhotographUnderTwoNamesIsFiledOnceAndKnownByBoth() throws IOException {
    Path twin = home.inbox().resolve("z copy.jpg");
    Files.copy(home.inbox().resolve("a.jpg"), twin);
    IngestReport report = home.ingest();
    assertThat(report.filed()).isEmpty();
    assertThat(report.leftOut())
        .filteredOn(file -> file.kind() == LeftOutKind.DUPLICATE)
        .extracting(LeftOut::name)
        .containsExactly("z copy.jpg");
    Files.delete(home.inbox().resolve("a.jpg"));
    assertThat(home.ingest().knownAlready()).isEqualTo(1);
    try (Practice practice = home.open()) {
      var hash = TestHome.hash(practice, filed);
      assertThat(practice.store().objects().list()).hasSize(1);
      assertThat(practice.store().ledger().arrivals().of(hash))
          .extracting(SeenFile::name)
          .containsExactlyInAnyOrder("a.jpg", "z copy.jpg");
      assertThat(new SourceFiles(practice).bytes(hash)).isNotInstanceOf(Refused.class);
    }
  }

  @Test
  void anEditedCopyAndItsOriginalWaitTogetherAndOneIsFiledByAPerson() throws IOException {
    String original = home.put("IMG_0007.JPG", Scene.UPPER_ANTERIOR, 7);
    String edited =
        home.put(
            "IMG_E0007.JPG",
            TestHome.photo(Scene.UPPER_ANTERIOR, 7).orientation(1).software("Retoucher 3").bytes());
    home.manifest(
        MANIFEST + "IMG_0007.JPG,V1,upper anterior,none\nIMG_E0007.JPG,V1,upper anterior,none\n");
    assertThat(home.ingest().waiting())
        .extracting(WaitingPhoto::id)
        .containsExactlyInAnyOrder(original, edited);
    try (Practice practice = home.open()) {
      new Corrections(practice).file(original, ByPerson.says("Ada")).orThrow();
    }
    IngestReport after = home.ingest();
    assertThat(after.filed()).as("the other is never filed by itself").isEmpty();
    assertThat(after.waiting()).extracting(WaitingPhoto::id).containsExactly(edited);
  }

  @Test
  void aFileThatIsStillChangingIsTakenOnceItHasSettled() throws IOException {
    String fresh = home.put("fresh.jpg", Scene.FRONTAL, 4);
    Path file = home.inbox().resolve("fresh.jpg");
    Files.setLastModifiedTime(file, FileTime.from(TestHome.CLOCK.instant().minusSeconds(9)));
    IngestReport early = settled();
    assertThat(early.leftOut())
        .filteredOn(left -> left.name().equals("fresh.jpg"))
        .extracting(LeftOut::kind)
        .containsExactly(LeftOutKind.NOT_SETTLED);
    try (Practice practice = home.open()) {
      assertThat(practice.store().ids().find(fresh)).isInstanceOf(Refused.class);
    }
    Files.setLastModifiedTime(file, FileTime.from(TestHome.CLOCK.instant().minusSeconds(10)));
    assertThat(settled().waiting()).extracting(WaitingPhoto::id).contains(fresh);
  }

  private IngestReport settled() throws IOException {
    Path inbox = home.inbox();
    IngestRequest request =
        new IngestRequest(inbox, inbox.resolve("manifest.csv"), "nightly job", false, true);
    try (Practice practice = home.open()) {
      return Ingest.run(practice, request, Progress.NONE).orThrow();
    }
  }
}
